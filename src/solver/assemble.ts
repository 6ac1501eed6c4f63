/**
 * From laws to a linear system. Unknowns: the voltage of every node but earth, then the current of every branch
 * that is an equation. Rows: Kirchhoff's current law at each node, then the equations. The pattern depends on the
 * wiring and its gauges alone and is kept; each question refills the values from zero.
 */
import { createSparse, sparseLike } from '../algebra/sparse.ts'
import type { LinearSystem, Pattern } from '../algebra/system.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { LawTable } from './laws.ts'
import type { Topology } from './topology.ts'

/** Which entries a law has; row or column −1 is earth and falls away. */
interface Entries {
  readonly rows: number[]
  readonly columns: number[]
}

/** The system of a wiring and where its unknowns are. */
export interface Assembled {
  readonly system: LinearSystem
  readonly pattern: Pattern
  /** Unknown of a branch's current; −1 for admittances. */
  readonly unknown: Int32Array
  readonly order: number
}

/** Siemens from the first node of an island without earth to earth; it carries no current (design 5). */
export const GAUGE = 1

/** Wirings of one netlist that are kept at the same time; questions that come after more start anew. */
const KEPT = 64

const known = new WeakMap<Netlist, Map<string, Assembled>>()

/** The filled system of these laws; one object serves all questions of the same wiring, one after the other. */
export function assemble(net: Netlist, laws: LawTable, topology: Topology, complex: boolean): Assembled {
  const wiring = wiringOf(net, laws, topology, complex)
  fillValues(wiring, laws, topology)
  return wiring
}

function wiringOf(net: Netlist, laws: LawTable, topology: Topology, complex: boolean): Assembled {
  const own = net.branches.length
  const added = Array.from(
    { length: laws.count - own },
    (_, k) => `${laws.from[own + k]}-${laws.to[own + k]}`,
  )
  const coupled = laws.mutuals.map(({ branch, other }) => `${branch}-${other}`)
  const key = `${complex}|${topology.gauges.join()}|${coupled.join()}|${added.join()}`
  let wirings = known.get(net)
  if (wirings === undefined || wirings.size >= KEPT) {
    wirings = new Map()
    known.set(net, wirings)
  }
  const before = wirings.get(key)
  if (before !== undefined) return before
  const made = newWiring(net.nodes.length - 1, laws, topology, complex)
  wirings.set(key, made)
  return made
}

/** A wiring of its own, shared with nobody. */
export function newWiring(nodes: number, laws: LawTable, topology: Topology, complex: boolean): Assembled {
  const unknown = new Int32Array(laws.count).fill(-1)
  let order = nodes
  for (let k = 0; k < laws.count; k += 1) if (laws.equations[k] === 1) unknown[k] = order++
  const entries: Entries = { rows: [], columns: [] }
  for (let k = 0; k < laws.count; k += 1) {
    const p = laws.from[k]! - 1
    const q = laws.to[k]! - 1
    const c = unknown[k]!
    if (c === -1) {
      put(entries, p, p)
      put(entries, q, q)
      put(entries, p, q)
      put(entries, q, p)
    } else {
      put(entries, p, c)
      put(entries, q, c)
      put(entries, c, p)
      put(entries, c, q)
      put(entries, c, c)
    }
  }
  for (const { branch, other } of laws.mutuals) put(entries, unknown[branch]!, unknown[other]!)
  for (const node of topology.gauges) put(entries, node - 1, node - 1)
  const pattern = { order, rows: entries.rows, columns: entries.columns }
  return { system: sparseOf(pattern, complex), pattern, unknown, order }
}

/** Patterns of any netlist whose orders of elimination are kept: one more move at a bench leaves most of them alike. */
const PATTERNS = 64

const kept: { readonly pattern: Pattern; readonly complex: boolean; readonly system: LinearSystem }[] = []

/** An empty system of a pattern, ordered as the same pattern was before, where there was one. */
function sparseOf(pattern: Pattern, complex: boolean): LinearSystem {
  const at = kept.findIndex((one) => one.complex === complex && sameEntries(one.pattern, pattern))
  const [before] = at === -1 ? [] : kept.splice(at, 1)
  const known = before ?? { pattern, complex, system: createSparse(pattern, complex) }
  kept.unshift(known)
  if (kept.length > PATTERNS) kept.pop()
  return before === undefined ? known.system : sparseLike(known.system)
}

function sameEntries(p: Pattern, q: Pattern): boolean {
  const size = p.rows.length
  if (p.order !== q.order || size !== q.rows.length) return false
  for (let k = size - 1; k >= 0; k -= 1) {
    if (p.rows[k] !== q.rows[k] || p.columns[k] !== q.columns[k]) return false
  }
  return true
}

function put(entries: Entries, row: number, column: number): void {
  if (row < 0 || column < 0) return
  entries.rows.push(row)
  entries.columns.push(column)
}

/** Refills another system of the same pattern, or this one: the entries come in the order of `newWiring`. */
export function fillValues(
  { system, unknown }: Pick<Assembled, 'system' | 'unknown'>,
  laws: LawTable,
  topology: Topology,
): void {
  system.clear()
  const { slots } = system
  let at = 0
  const add = (here: boolean, re: number, im: number): void => {
    if (!here) return
    system.add(slots[at]!, re, im)
    at += 1
  }
  for (let k = 0; k < laws.count; k += 1) {
    const p = laws.from[k]! > 0
    const q = laws.to[k]! > 0
    const re = laws.slope[2 * k]!
    const im = laws.slope[2 * k + 1]!
    if (unknown[k] === -1) {
      add(p, re, im)
      add(q, re, im)
      add(p && q, -re, -im)
      add(p && q, -re, -im)
      continue
    }
    const a = laws.a[k]!
    add(p, 1, 0) // the current leaves `from`
    add(q, -1, 0)
    add(p, a, 0) // a·v
    add(q, -a, 0)
    add(true, -re, -im) // − z·i
  }
  for (const { re, im } of laws.mutuals) add(true, -re, -im)
  for (let k = 0; k < topology.gauges.length; k += 1) add(true, GAUGE, 0)
}

/** The right side: sources of the laws, and currents put in from outside, by node. */
export function rightSide(
  laws: LawTable,
  assembled: Pick<Assembled, 'unknown' | 'order'>,
  injected: Float64Array,
  complex: boolean,
): Float64Array {
  const width = complex ? 2 : 1
  const b = new Float64Array(assembled.order * width)
  const add = (row: number, re: number, im: number): void => {
    if (row < 0) return
    b[row * width]! += re
    if (complex) b[row * width + 1]! += im
  }
  for (let node = 1; 2 * node < injected.length; node += 1)
    add(node - 1, injected[2 * node]!, injected[2 * node + 1]!)
  for (let k = 0; k < laws.count; k += 1) {
    const re = laws.offset[2 * k]!
    const im = laws.offset[2 * k + 1]!
    const c = assembled.unknown[k]!
    if (c >= 0) {
      add(c, re, im)
      continue
    }
    add(laws.from[k]! - 1, -re, -im)
    add(laws.to[k]! - 1, re, im)
  }
  return b
}
