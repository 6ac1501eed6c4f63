/** What one ampere or one volt at a branch does to a solved network: the columns X = A⁻¹u, refined as any solution. */
import { accumulateProduct } from '../../algebra/double-double.ts'
import { type Assembled, rightSide } from '../assemble.ts'
import type { LawTable } from '../laws.ts'
import { type Refined, refine } from '../refine.ts'
import type { Topology } from '../topology.ts'

/** A solved network whose factors are kept. */
export interface Kept {
  readonly laws: LawTable
  readonly topology: Topology
  readonly assembled: Assembled
  readonly complex: boolean
  readonly nodes: number
}

/** X for one volt in an equation: its offset alone is 1. */
export function columnOfEquation(kept: Kept, branch: number): Refined {
  const offset = new Float64Array(2 * kept.laws.count)
  offset[2 * branch] = 1
  return solveColumn(
    { ...kept, laws: { ...plainTable(kept.laws), offset } },
    new Float64Array(2 * kept.nodes),
  )
}

/** X for one ampere into a node and out of another. */
export function columnOfNodes(kept: Kept, into: number, outOf: number): Refined {
  const injected = new Float64Array(2 * kept.nodes)
  injected[2 * into]! += 1
  injected[2 * outOf]! -= 1
  const offset = new Float64Array(2 * kept.laws.count)
  return solveColumn({ ...kept, laws: { ...plainTable(kept.laws), offset } }, injected)
}

/** The fields of a table; those of a class do not spread. */
function plainTable({ count, equations, from, to, a, slope, offset, mutuals }: LawTable): LawTable {
  return { count, equations, from, to, a, slope, offset, mutuals }
}

function solveColumn({ laws, topology, assembled, complex }: Kept, injected: Float64Array): Refined {
  const x = rightSide(laws, assembled, injected, complex)
  assembled.system.solve(x, 1)
  return refine(laws, topology, assembled, x, injected, complex)
}

/** A complex number as value and tail: re, im, then what they have lost. */
export interface Fine {
  readonly value: Float64Array
  readonly tail: Float64Array
}

/** V(p) − V(q) in a column or a solution. */
export function fallIn({ complex }: Kept, x: Refined, p: number, q: number): Fine {
  const width = complex ? 2 : 1
  const fall = { value: new Float64Array(2), tail: new Float64Array(2) }
  for (let part = 0; part < width; part += 1) {
    for (const [node, sign] of [
      [p, 1],
      [q, -1],
    ] as const) {
      if (node === 0) continue
      const at = (node - 1) * width + part
      accumulateProduct(fall.value, fall.tail, part, sign, x.value[at]!, x.tail[at]!)
    }
  }
  return fall
}

/** The unknown current of an equation. */
export function currentIn({ assembled, complex }: Kept, x: Refined, branch: number): Fine {
  const width = complex ? 2 : 1
  const at = assembled.unknown[branch]! * width
  const current = { value: new Float64Array(2), tail: new Float64Array(2) }
  for (let part = 0; part < width; part += 1) {
    current.value[part] = x.value[at + part]!
    current.tail[part] = x.tail[at + part]!
  }
  return current
}

/** sum += (re + j·im)·x, in twice the digits. */
export function addTimes(sum: Fine, re: number, im: number, x: Fine): void {
  const { value, tail } = sum
  accumulateProduct(value, tail, 0, re, x.value[0]!, x.tail[0]!)
  accumulateProduct(value, tail, 0, -im, x.value[1]!, x.tail[1]!)
  accumulateProduct(value, tail, 1, re, x.value[1]!, x.tail[1]!)
  accumulateProduct(value, tail, 1, im, x.value[0]!, x.tail[0]!)
}

/** A sum that begins with a real number. */
export function fine(re = 0): Fine {
  return { value: Float64Array.of(re, 0), tail: new Float64Array(2) }
}
