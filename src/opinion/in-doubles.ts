/**
 * The tableau solved by mathjs in doubles, and improved: what the solution leaves of the right sides is summed in
 * many digits, and the same factors give the correction, until it is at the rounding of a double.
 */
import type { Doubles, Numeral } from './mathjs.ts'
import type { Pair, Pairs } from './pair.ts'
import { plus, sizeOf } from './pair.ts'
import { roundingOf } from './rounding.ts'
import { remainderOf, type Tableau } from './tableau.ts'

/** A solution, and what rounding alone could make of each unknown. */
export interface Solved {
  readonly x: readonly Pair[]
  readonly rounding: readonly number[]
}

/** Digits in which remainders are summed. */
export const REMAINDER_DIGITS = 40

/** Rounds of improvement at most; a round that brings nothing is the last. */
const ROUNDS = 6
/** Corrections below this share of the largest unknown of their kind are rounding. */
const ENOUGH = 1e-17

/** Solves a tableau; undefined where mathjs finds the matrix singular. */
export function solveInDoubles(
  reckoner: Doubles,
  tableau: Tableau,
  pairs: Pairs,
  complex: boolean,
): Solved | undefined {
  const order = tableau.rows.length
  if (order === 0) return { x: [], rounding: [] }
  const numeral = ({ re, im }: Pair): Numeral =>
    complex ? reckoner.complex(re.toNumber(), im.toNumber()) : re.toNumber()
  const matrix = reckoner.sparse()
  matrix.resize([order, order])
  tableau.rows.forEach(({ terms }, row) => {
    for (const [column, value] of terms) matrix.set([row, column], numeral(value))
  })
  const factors = reckoner.slu(matrix, 1, 1)
  if (factors === null) return undefined
  const solvedBy = (right: readonly Numeral[]): Numeral[] =>
    reckoner
      .lusolve(
        factors,
        right.map((value) => [value]),
      )
      .valueOf()
      .map(([value = Number.NaN]) => value)
  let x: readonly Pair[] = tableau.rows.map(() => pairs.zero)
  let before = Number.POSITIVE_INFINITY
  for (let round = 0; round < ROUNDS; round += 1) {
    const rest = remainderOf(tableau, x).map(numeral)
    const step = solvedBy(rest).map((value) =>
      typeof value === 'number' ? pairs.of(value) : pairs.of(value.re, value.im),
    )
    x = x.map((value, k) => plus(value, step[k] ?? pairs.zero))
    const change = changeOf(tableau, x, step)
    if (change <= ENOUGH || change >= before) break
    before = change
  }
  const noise = tableau.rows.map(({ terms, right }, row) => {
    let sizes = sizeOf(right)
    for (const [column, value] of terms) sizes += sizeOf(value) * sizeOf(x[column] ?? right)
    const error = roundingOf(row, sizes)
    return complex ? reckoner.complex(error, -error) : error
  })
  const rounding = solvedBy(noise).map((value) =>
    typeof value === 'number' ? Math.abs(value) : Math.hypot(value.re, value.im),
  )
  return { x, rounding }
}

/** The largest correction as a share of the largest voltage or current. */
function changeOf({ firstCurrent }: Tableau, x: readonly Pair[], step: readonly Pair[]): number {
  const kinds = [
    [0, firstCurrent],
    [firstCurrent, x.length],
  ] as const
  return Math.max(
    ...kinds.map(([from, to]) => {
      const largest = (values: readonly Pair[]): number =>
        values.slice(from, to).reduce((most, value) => Math.max(most, sizeOf(value)), 0)
      const whole = largest(x)
      return whole === 0 ? 0 : largest(step) / whole
    }),
  )
}
