/**
 * From laws to a linear system and back. Unknowns: the voltage of every node but earth, then the current
 * of every branch that is an equation. Rows: Kirchhoff's current law at each node, then the equations.
 */
import { createDense } from '../algebra/dense.ts'
import type { LinearSystem } from '../algebra/system.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { Laws } from './laws.ts'
import type { Topology } from './topology.ts'

/** One entry of the pattern and what is added there. */
interface Entries {
  readonly rows: number[]
  readonly columns: number[]
  readonly re: number[]
  readonly im: number[]
}

/** The assembled system and where its unknowns are. */
export interface Assembled {
  readonly system: LinearSystem
  /** Unknown of a branch's current; −1 for admittances. */
  readonly unknown: Int32Array
  readonly order: number
}

/** Siemens from the first node of an island without earth to earth; it carries no current (design 5). */
export const GAUGE = 1

/** Stamps the laws of a question into a fresh system. */
export function assemble(net: Netlist, laws: Laws, topology: Topology, complex: boolean): Assembled {
  const nodes = net.nodes.length - 1
  const unknown = new Int32Array(laws.count).fill(-1)
  let order = nodes
  for (let k = 0; k < laws.count; k += 1) if (laws.equations[k] === 1) unknown[k] = order++
  const entries: Entries = { rows: [], columns: [], re: [], im: [] }
  for (let k = 0; k < laws.count; k += 1) {
    if (unknown[k] === -1) stampAdmittance(entries, laws, k)
    else stampEquation(entries, laws, k, unknown[k]!)
  }
  for (const { branch, other, re, im } of laws.mutuals)
    put(entries, unknown[branch]!, unknown[other]!, -re, -im)
  for (const node of topology.gauges) put(entries, node - 1, node - 1, GAUGE, 0)
  const system = createDense({ order, rows: entries.rows, columns: entries.columns }, complex)
  system.clear()
  for (let k = 0; k < entries.re.length; k += 1) system.add(system.slots[k]!, entries.re[k]!, entries.im[k]!)
  return { system, unknown, order }
}

/** Adds to an entry; row or column −1 is earth and falls away. */
function put(entries: Entries, row: number, column: number, re: number, im: number): void {
  if (row < 0 || column < 0) return
  entries.rows.push(row)
  entries.columns.push(column)
  entries.re.push(re)
  entries.im.push(im)
}

function stampAdmittance(entries: Entries, laws: Laws, k: number): void {
  const p = laws.from[k]! - 1
  const q = laws.to[k]! - 1
  const re = laws.slope[2 * k]!
  const im = laws.slope[2 * k + 1]!
  put(entries, p, p, re, im)
  put(entries, q, q, re, im)
  put(entries, p, q, -re, -im)
  put(entries, q, p, -re, -im)
}

function stampEquation(entries: Entries, laws: Laws, k: number, c: number): void {
  const p = laws.from[k]! - 1
  const q = laws.to[k]! - 1
  const a = laws.a[k]!
  put(entries, p, c, 1, 0) // the current leaves `from`
  put(entries, q, c, -1, 0)
  put(entries, c, p, a, 0) // a·v
  put(entries, c, q, -a, 0)
  put(entries, c, c, -laws.slope[2 * k]!, -laws.slope[2 * k + 1]!) // − z·i
}

/** The right side: sources of the laws, and currents put in from outside, by node. */
export function rightSide(
  laws: Laws,
  assembled: Assembled,
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
