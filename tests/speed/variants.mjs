// All single and double faults of a telephone set's size: tables of updates beside a refactorisation of each variant.
import { library } from './built.mjs'
import { inTurns } from './clock.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { faster, within } from './table.mjs'

const processes = 3
/** Nodes, and branches among them: with the currents of links and windings about 40 unknowns. */
const nodes = 26
const branches = 58
const sweep = 45_000
const mostGrowth = 1e6
const nineDigits = 1e-9

/** A network as a set is one: links, resistors, capacitors, coils, every node on two ways. */
function sheet(random) {
  const node = (k) => (k === 0 ? 'earth' : `n${k}`)
  const lines = ['e: {kind: voltage-source, from: n1, to: earth, direct: 50 V, alternating: 1 V}']
  for (let k = 1; k < branches; k++) {
    const from = k < nodes ? k : Math.floor(random() * nodes)
    const to = (from + 1 + Math.floor(random() * Math.min(6, nodes - 1))) % nodes
    const ends = `from: ${node(from)}, to: ${node(to)}`
    const value = (1 + 8 * random()).toPrecision(3)
    const kind = k % 4
    if (kind === 0) lines.push(`s${k}: {kind: strap, ${ends}}`)
    else if (kind === 1) lines.push(`c${k}: {kind: capacitor, ${ends}, capacitance: ${value} µF}`)
    else if (kind === 2) lines.push(`r${k}: {kind: resistor, ${ends}, resistance: ${value} kΩ}`)
    else if (k % 8 === 3)
      lines.push(`l${k}: {kind: inductor, ${ends}, resistance: 30 Ω, inductance: ${value} H}`)
    else lines.push(`q${k}: {kind: resistor, ${ends}, resistance: ${value}00 Ω}`)
  }
  return `ringproof: 1\nsheet: circuit\nname: set\nparts:\n${lines.map((one) => `  ${one}\n`).join('')}`
}

async function prepared() {
  const [{ readSheet }, { compileCircuit }, { VariantTable }, { keep }, { seededRandom }] = await Promise.all(
    [
      'sheet/read',
      'netlist/compile',
      'solver/variants/variant-table',
      'solver/variants/keep',
      'algebra/random',
    ].map(library),
  )
  const empty = { find: () => undefined, names: () => [] }
  const { sheet: read, problems } = readSheet(
    { file: 'set.yaml', text: sheet(seededRandom(20261125)) },
    empty,
    'circuit',
  )
  if (read === undefined) throw new Error(JSON.stringify(problems))
  const net = compileCircuit(read)
  const question = { analysis: 'alternating', frequency: 1000, condition: { line: 'idle', sets: {} } }
  const readings = [2, 5, 9]
    .map((k) => ({ voltage: [k, 0] }))
    .concat([3, 10, 30].map((k) => ({ current: k })))
  const changes = net.branches.flatMap(({ index }) =>
    index === 0 ? [] : [{ lifted: index }, { within: { branch: index, ohms: 500 } }],
  )
  const tableOf = (every) => new VariantTable(net, question, readings, changes, { every })
  return { net, question, readings, changes, tableOf, keep }
}

export async function measure() {
  const { net, question, readings, changes, tableOf, keep } = await prepared()
  const never = tableOf(5e8)
  const out = new Float64Array(2 * readings.length)
  const single = changes.map((_, c) => c).filter((c) => never.one(c, out) === 'updated')
  const pairs = single.flatMap((c) =>
    single.filter((d) => d > c && never.two(c, d, out) === 'updated').map((d) => [c, d]),
  )
  const firsts = Int32Array.from(pairs, ([c]) => c)
  const seconds = Int32Array.from(pairs, ([, d]) => d)
  const { kept } = keep(net, question)
  const { system, order } = kept.assembled
  const x = new Float64Array(2 * order)
  let consumed = 0
  let at = 0
  const took = inTurns({
    refactor: () => {
      x.fill(1)
      system.refactor()
      system.solve(x, 1)
      consumed += x[0]
    },
    one: () => {
      at = (at + 1) % single.length
      never.one(single[at], out)
      consumed += out[0]
    },
    two: () => {
      at = (at + 1) % firsts.length
      never.two(firsts[at], seconds[at], out)
      consumed += out[0]
    },
  })
  const sweepOnce = () => {
    globalThis.gc()
    const before = process.memoryUsage()
    for (let k = 0; k < sweep; k++) never.two(firsts[k % firsts.length], seconds[k % firsts.length], out)
    const after = process.memoryUsage()
    return Math.max(0, after.heapUsed - before.heapUsed + after.arrayBuffers - before.arrayBuffers)
  }
  // the least of several: while the compiler is still at work, boxes of its slower code count as ours
  const growth = Math.min(...Array.from({ length: 4 }, sweepOnce))
  if (!Number.isFinite(consumed)) throw new Error('no solution')
  // every fifth variant beside a solve of its own
  const checked = tableOf(5)
  for (const c of single) checked.one(c, out)
  for (let k = 0; k < firsts.length; k += 3) checked.two(firsts[k], seconds[k], out)
  return {
    ...took,
    growth,
    worst: checked.worst,
    order,
    singles: single.length,
    pairs: firsts.length,
  }
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0)} kB`

/** All rows of this subject. */
export function rows() {
  const { ours } = bestOf(processes, {
    ours: () => inFreshNode('variants', ['--min-semi-space-size=128', '--max-semi-space-size=128']),
  })
  const { order, singles, pairs } = ours
  return [
    faster(
      `${order} unknowns, ${singles} single changes from tables / refactor + solve`,
      ours.one,
      ours.refactor,
      40,
    ),
    faster(`the same, ${pairs.toLocaleString('en')} pairs of changes`, ours.two, ours.refactor, 30),
    within('worst of every fifth variant / nine digits', ours.worst, nineDigits, 1, (x) =>
      x.toExponential(1),
    ),
    within(`heap growth in ${sweep.toLocaleString('en')} pairs`, ours.growth, mostGrowth, 1, kilobytes),
  ]
}
