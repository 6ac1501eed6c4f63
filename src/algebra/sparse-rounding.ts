import { meetComplex, sizeComplex } from './sparse-column-complex.ts'
import { meetReal, sizeReal } from './sparse-column-real.ts'
import type { Factors } from './sparse-factors.ts'
import type { Reach } from './sparse-reach.ts'
import type { Task } from './sparse-task.ts'

/** A column of which less is left than this share of its largest entry in A is looked at twice. */
const doubtful = 1e-11
/** So is one with an entry below this share of the largest that is left. */
const dust = 1e-13
/** Below this share of the largest entry in A, what is left is next to nothing, and must stand out more. */
const weak = 1e-14
/** Rounding allowed in one entry for each of its additions, as a share of the magnitudes that met in it. */
const rounding = 8 * Number.EPSILON
/** The same where it is next to nothing. */
const roundingOfWeak = 64 * Number.EPSILON

/** Share of the column's largest entry below which a pivot is next to nothing; rounding adds up as √n. */
export function weakBelow(order: number): number {
  return weak * Math.max(1, Math.sqrt(order) / 8)
}

/**
 * Makes entries of the column in hand zero that may be mere rounding: were they kept, a singular system would go on
 * with them, multiplied until nothing near by is larger. A small entry that met nothing larger stays.
 *
 * @param met by row of A: zero on entry and again on exit
 * @param from U(:,k) is at `from` … `to` - 1
 */
export function dropRounding(
  task: Task,
  factors: Factors,
  reach: Reach,
  w: Float64Array,
  met: Float64Array,
  column: number,
  from: number,
  to: number,
): void {
  const { complex, columns, maxima } = task
  const { candidates, count } = reach
  const { index, rowOf, order } = factors
  const size = complex ? sizeComplex : sizeReal
  let largest = 0
  let least = Number.POSITIVE_INFINITY
  for (let c = 0; c < count; c++) {
    const s = size(w, candidates[c]!)
    if (s > largest) largest = s
    if (s < least && s > 0) least = s
  }
  if (largest > doubtful * maxima[column]! && least >= dust * largest) return
  const { starts, rows } = columns
  for (let t = starts[column]!; t < starts[column + 1]!; t++) met[rows[t]!] = size(task.a, t)
  if (complex) meetComplex(factors, from, to, met)
  else meetReal(factors, from, to, met)
  const additions = 1 + to - from
  const share =
    largest > weakBelow(order) * maxima[column]!
      ? rounding * additions
      : roundingOfWeak * Math.min(order, additions + Math.sqrt(order))
  for (let c = 0; c < count; c++) {
    const row = candidates[c]!
    if (!(size(w, row) > share * met[row]!)) {
      w[complex ? 2 * row : row] = 0
      if (complex) w[2 * row + 1] = 0
    }
    met[row] = 0
  }
  for (let t = from; t < to; t++) met[rowOf[index[t]!]!] = 0
}
