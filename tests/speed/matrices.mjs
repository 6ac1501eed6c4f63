// Matrices as circuits make them, from a seed: each with a row list `rows`, `columns`, values `re`, `im` and a right
// side `b` (re, im interleaved). Invented, and never an oracle: every solution is judged by its residual.

/** Numbers from 0 to 1 out of a seed: a Weyl sequence through a mixer of 32 bits. */
export function random(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let z = state
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad)
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97)
    return ((z ^ (z >>> 15)) >>> 0) / 4294967296
  }
}

/** Adds one cluster of `count` unknowns, from `first` on: a tree, extra branches near by, sources at the end. */
function addCluster(entries, next, first, count) {
  const sources = Math.floor(count / 12)
  const nodes = count - sources
  const put = (i, j, re, im) => entries.push([i, j, re, im])
  /** A branch; with b = -1 to earth. */
  const branch = (a, b) => {
    const g = 10 ** (-4 + 3 * next())
    const part = next()
    // a third resistive, a third capacitive, a third inductive
    const s = part < 1 / 3 ? 0 : 10 ** (-4 + 3 * next()) * (part < 2 / 3 ? 1 : -1)
    put(a, a, g, s)
    if (b < 0) return
    put(b, b, g, s)
    put(a, b, -g, -s)
    put(b, a, -g, -s)
  }
  /** A node before the i-th, most often a near one. */
  const near = (i) => {
    const low = next() < 0.01 ? 0 : Math.max(0, i - 30)
    return first + low + Math.floor(next() * (i - low))
  }
  branch(first, -1)
  for (let i = 1; i < nodes; i++) branch(first + i, near(i))
  for (let extra = 0; extra < nodes / 2; extra++) {
    const i = 1 + Math.floor(next() * (nodes - 1))
    branch(first + i, near(i))
  }
  for (let k = 0; k < nodes / 20; k++) {
    // a current at two nodes, controlled by the voltage between two others
    const [p, q, r, s] = [0, 1, 2, 3].map(() => first + Math.floor(next() * nodes))
    const g = 10 ** (-4 + 2 * next())
    put(p, r, g, 0)
    put(p, s, -g, 0)
    put(q, r, -g, 0)
    put(q, s, g, 0)
  }
  for (let k = 0; k < sources; k++) {
    // a voltage between two nodes, its current an unknown: a row and a column without diagonal
    const c = first + nodes + k
    const share = Math.floor(nodes / sources) // a node of its own for each, so that no two stand in parallel
    const p = first + k * share + Math.floor(next() * share)
    put(p, c, 1, 0)
    put(c, p, 1, 0)
    if (next() < 0.5 || p === first) continue
    put(first, c, -1, 0)
    put(c, first, -1, 0)
  }
}

/** Renames the unknowns at random, gathers doubled entries and adds a right side. */
function finish(order, entries, next) {
  const name = Int32Array.from({ length: order }, (_, k) => k)
  for (let k = order - 1; k > 0; k--) {
    const other = Math.floor(next() * (k + 1))
    const held = name[k]
    name[k] = name[other]
    name[other] = held
  }
  const sums = new Map()
  for (const [i, j, re, im] of entries) {
    const key = name[i] * order + name[j]
    const sum = sums.get(key)
    if (sum) {
      sum[0] += re
      sum[1] += im
    } else sums.set(key, [re, im])
  }
  const keys = [...sums.keys()]
  return {
    order,
    rows: Int32Array.from(keys, (key) => Math.floor(key / order)),
    columns: Int32Array.from(keys, (key) => key % order),
    re: Float64Array.from(keys, (key) => sums.get(key)[0]),
    im: Float64Array.from(keys, (key) => sums.get(key)[1]),
    b: Float64Array.from({ length: 2 * order }, () => 2 * next() - 1),
  }
}

/** One circuit of `order` unknowns. */
export function local(order, seed) {
  const next = random(seed)
  const entries = []
  addCluster(entries, next, 0, order)
  return finish(order, entries, next)
}

/** Circuits of 40 unknowns, each by a pair of lines at a hub; the hubs, one for each sixteen circuits, are a tree. */
export function building(order, seed) {
  const next = random(seed)
  const clusters = Math.floor(order / 41)
  const hubs = order - 40 * clusters
  const entries = []
  const line = (a, b) => {
    const g = 10 ** (-3 + next())
    const s = 10 ** (-5 + next())
    entries.push([a, a, g, s], [b, b, g, s], [a, b, -g, -s], [b, a, -g, -s])
  }
  for (let k = 0; k < clusters; k++) {
    addCluster(entries, next, 40 * k, 40)
    const hub = 40 * clusters + Math.floor((k * hubs) / clusters)
    line(40 * k, hub)
    line(40 * k + 1, Math.min(hub + 1, order - 1))
  }
  for (let h = 0; h < hubs; h++) {
    const a = 40 * clusters + h
    if (h === 0) entries.push([a, a, 1e-2, 0])
    else line(a, 40 * clusters + Math.floor((h - 1) / 2))
  }
  return finish(order, entries, next)
}

/** The engine of this matrix with its values; `scale` changes them, as another frequency would. */
export function filled(create, matrix, complex, scale = 1) {
  const engine = create(matrix, complex)
  refill(engine, matrix, scale)
  return engine
}

export function refill(engine, { re, im }, scale = 1) {
  engine.clear()
  const { slots } = engine
  for (let k = 0; k < slots.length; k++) engine.add(slots[k], re[k], im[k] * scale)
}

/** The right side as the engine wants it. */
export function rightSide({ order, b }, complex) {
  return complex ? b.slice() : Float64Array.from({ length: order }, (_, k) => b[2 * k])
}

/** What the contract of the engines calls healthy. */
const sound = 10

/** Throws where x does not solve the system. */
export function judge(what, engine, x, b) {
  const residual = engine.residual(x, b)
  if (!(residual < sound)) throw new Error(`${what}: scaled residual ${residual}`)
  return residual
}
