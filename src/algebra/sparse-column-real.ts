/**
 * Steps of the factorisation of one real column. `w` (n, by row of A) holds the column; it is zero on entry to
 * `scatterReal` and zero again after `keepLowerReal`.
 */
import type { Factors } from './sparse-factors.ts'
import type { Reach } from './sparse-reach.ts'

/** w = A(:,column) */
export function scatterReal(
  a: Float64Array,
  rows: Int32Array,
  from: number,
  to: number,
  w: Float64Array,
): void {
  for (let t = from; t < to; t++) w[rows[t]!] = a[t]!
}

/** w = L⁻¹ w; writes U(:,k) from `place` on and returns the place behind it. */
export function eliminateReal(factors: Factors, reach: Reach, w: Float64Array, place: number): number {
  const { values, index, starts, diagonals, rowOf } = factors
  const { through, top } = reach
  let to = place
  for (let t = top; t < through.length; t++) {
    const j = through[t]!
    const row = rowOf[j]!
    const u = w[row]!
    w[row] = 0
    index[to] = j
    values[to++] = u
    const end = starts[j + 1]!
    for (let s = diagonals[j]! + 1; s < end; s++) {
      const i = index[s]!
      w[i] = w[i]! - values[s]! * u // w -= L(:,j) U(j,k)
    }
  }
  return to
}

/** Size of w at a row. */
export function sizeReal(w: Float64Array, row: number): number {
  return Math.abs(w[row]!)
}

/**
 * Magnitudes that met in each row of a finished U(:,k): from |A(:,k)| in `met` (n, by row of A) to |L|⁻¹ |A(:,k)|, the
 * signs of L taken so that nothing cancels. What came out as zero to the last digit is taken for zero.
 */
export function meetReal(factors: Factors, from: number, to: number, met: Float64Array): void {
  const { values, index, starts, diagonals, rowOf } = factors
  for (let t = from; t < to; t++) {
    if (values[t] === 0) continue
    const j = index[t]!
    const u = met[rowOf[j]!]!
    for (let s = diagonals[j]! + 1; s < starts[j + 1]!; s++)
      met[index[s]!] = met[index[s]!]! + Math.abs(values[s]!) * u
  }
}

/** Keeps 1 / U(k,k) at `place` and L(:,k) behind it; returns the place behind all. */
export function keepLowerReal(
  factors: Factors,
  reach: Reach,
  w: Float64Array,
  pivot: number,
  place: number,
): number {
  const { values, index } = factors
  const { candidates, count } = reach
  const inverse = 1 / w[pivot]!
  index[place] = pivot
  values[place] = inverse
  let to = place + 1
  for (let c = 0; c < count; c++) {
    const i = candidates[c]!
    if (i !== pivot) {
      index[to] = i
      values[to++] = w[i]! * inverse // L(:,k) = w / U(k,k)
    }
    w[i] = 0
  }
  return to
}
