/** A part whose law hangs on a point, which is another one in every variant: its rows are stated anew each time. */
import type { Change } from '../change.ts'
import type { Base } from './base.ts'
import { type PartAlone, type PartCase, stateCase } from './part-alone.ts'
import { rowOf, takeLaw } from './prepared.ts'
import type { Row } from './row.ts'

export class Hanging {
  /** Index of the part, its first branch and how many it has. */
  readonly part: number
  readonly first: number
  readonly count: number
  readonly rows: readonly Row[]
  /** The case of the variant at hand. */
  case: PartCase
  readonly #base: Base
  readonly #alone: PartAlone
  readonly #sound: PartCase
  readonly #cases = new Map<number, PartCase>()

  constructor(base: Base, part: number, alone: PartAlone) {
    this.part = part
    this.first = alone.first
    this.count = alone.count
    this.#base = base
    this.#alone = alone
    this.#sound = alone.after([])
    this.case = this.#sound
    this.rows = Array.from({ length: alone.count }, (_, k) => rowOf(base, alone.first + k))
  }

  /** Whether nothing befalls it in the variant at hand. */
  get isSound(): boolean {
    return this.case === this.#sound
  }

  /** Takes the changes of a variant that befall it, by their index. */
  begin(own: readonly number[], changes: readonly Change[]): void {
    const [only] = own
    if (only === undefined) this.case = this.#sound
    else if (own.length === 1) this.case = this.#caseOf(only, changes)
    else this.case = this.#alone.after(own.flatMap((c) => changes.slice(c, c + 1)))
  }

  #caseOf(c: number, changes: readonly Change[]): PartCase {
    const known = this.#cases.get(c) ?? this.#alone.after(changes.slice(c, c + 1))
    this.#cases.set(c, known)
    return known
  }

  /** Puts its share of a point of the whole network into its case. */
  place(voltage: Float64Array, current: Float64Array): void {
    const { about } = this.case
    for (let k = 0; k < this.count; k += 1) {
      about.voltage[k] = voltage[this.first + k]!
      about.current[k] = current[this.first + k]!
    }
  }

  /**
   * States its laws about the point in its case, and gives them to its rows.
   * @param beside siemens that stand beside its branches on the way
   * @throws ProblemError for values that no law can be stated with
   */
  state(beside: number = 0): void {
    const { columns, stating } = this.#base
    stateCase(this.case, stating)
    const { direct } = this.case.laws.bent
    for (let k = 0; k < this.count; k += 1) {
      const row = this.rows[k]!
      takeLaw(this.#base, row, this.case, k)
      if (beside > 0 && direct.includes(k)) row.help(beside)
      if (row.form === 'equation' && row.others.length === 0) row.measurePlain(columns.at(row.column))
      else row.measure(columns.at(row.column))
    }
  }
}
