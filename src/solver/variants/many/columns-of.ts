/** The columns X = A⁻¹u of a solved network by position (see `placed.ts`), each made when it is first wanted. */

import type { Refined } from '../../refine.ts'
import { columnOfEquation, columnOfNodes, type Kept } from '../columns.ts'
import type { Placed } from './placed.ts'

export class Columns {
  readonly #kept: Kept
  readonly #made: (Placed | undefined)[] = []
  readonly #ends: (readonly [branch: number, into: number, outOf: number])[] = []
  readonly #known = new Map<string, number>()

  constructor(kept: Kept) {
    this.#kept = kept
  }

  /** Position of a branch's current; 0 for admittances. */
  positionOf(branch: number): number {
    return (this.#kept.assembled.unknown[branch] ?? -1) + 1
  }

  /** The column of one volt in an equation. */
  ofEquation(branch: number): number {
    return this.#index(`b${branch}`, [branch, 0, 0])
  }

  /** The column of one ampere into a node and out of another. */
  ofNodes(into: number, outOf: number): number {
    return this.#index(`${into}-${outOf}`, [-1, into, outOf])
  }

  #index(key: string, ends: readonly [number, number, number]): number {
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const index = this.#ends.length
    this.#known.set(key, index)
    this.#ends.push(ends)
    this.#made.push(undefined)
    return index
  }

  /** A column, made now where it was not yet. */
  at(index: number): Placed {
    return this.#made[index] ?? this.#make(index)
  }

  #make(index: number): Placed {
    const [branch, into, outOf] = this.#ends[index]!
    const solved = branch >= 0 ? columnOfEquation(this.#kept, branch) : columnOfNodes(this.#kept, into, outOf)
    const made = placed(solved, this.#kept.complex)
    this.#made[index] = made
    return made
  }
}

/** Unknowns by position: earth before them, im beside re. */
export function placed({ value, tail }: Refined, complex: boolean): Placed {
  const order = complex ? value.length / 2 : value.length
  const made = { value: new Float64Array(2 * order + 2), tail: new Float64Array(2 * order + 2) }
  if (complex) {
    made.value.set(value, 2)
    made.tail.set(tail, 2)
    return made
  }
  for (let k = 0; k < order; k += 1) {
    made.value[2 * k + 2] = value[k]!
    made.tail[2 * k + 2] = tail[k]!
  }
  return made
}
