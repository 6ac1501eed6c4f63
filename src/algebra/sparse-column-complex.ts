/** As `sparse-column-real.ts`, every value interleaved: `w` has 2 n places. Sizes are |re| + |im|. */
import type { Factors } from './sparse-factors.ts'
import { invertAt } from './sparse-inverse.ts'
import type { Reach } from './sparse-reach.ts'

/** w = A(:,column) */
export function scatterComplex(
  a: Float64Array,
  rows: Int32Array,
  from: number,
  to: number,
  w: Float64Array,
): void {
  for (let t = from; t < to; t++) {
    const i = 2 * rows[t]!
    w[i] = a[2 * t]!
    w[i + 1] = a[2 * t + 1]!
  }
}

/** w = L⁻¹ w; writes U(:,k) from `place` on and returns the place behind it. */
export function eliminateComplex(factors: Factors, reach: Reach, w: Float64Array, place: number): number {
  const { values, index, starts, diagonals, rowOf } = factors
  const { through, top } = reach
  let to = place
  for (let t = top; t < through.length; t++) {
    const j = through[t]!
    const row = 2 * rowOf[j]!
    const ur = w[row]!
    const ui = w[row + 1]!
    w[row] = 0
    w[row + 1] = 0
    index[to] = j
    values[2 * to] = ur
    values[2 * to + 1] = ui
    to++
    const end = starts[j + 1]!
    for (let s = diagonals[j]! + 1; s < end; s++) {
      const i = 2 * index[s]!
      const lr = values[2 * s]!
      const li = values[2 * s + 1]!
      w[i] = w[i]! - (lr * ur - li * ui) // w -= L(:,j) U(j,k)
      w[i + 1] = w[i + 1]! - (lr * ui + li * ur)
    }
  }
  return to
}

/** Size of w at a row. */
export function sizeComplex(w: Float64Array, row: number): number {
  return Math.abs(w[2 * row]!) + Math.abs(w[2 * row + 1]!)
}

/**
 * Magnitudes that met in each row of a finished U(:,k): from |A(:,k)| in `met` (n, by row of A) to |L|⁻¹ |A(:,k)|, the
 * signs of L taken so that nothing cancels. What came out as zero to the last digit is taken for zero.
 */
export function meetComplex(factors: Factors, from: number, to: number, met: Float64Array): void {
  const { values, index, starts, diagonals, rowOf } = factors
  for (let t = from; t < to; t++) {
    if (values[2 * t] === 0 && values[2 * t + 1] === 0) continue
    const j = index[t]!
    const u = met[rowOf[j]!]!
    for (let s = diagonals[j]! + 1; s < starts[j + 1]!; s++)
      met[index[s]!] = met[index[s]!]! + sizeComplex(values, s) * u
  }
}

/** Keeps 1 / U(k,k) at `place` and L(:,k) behind it; returns the place behind all. */
export function keepLowerComplex(
  factors: Factors,
  reach: Reach,
  w: Float64Array,
  pivot: number,
  place: number,
): number {
  const { values, index } = factors
  const { candidates, count } = reach
  invertAt(values, 2 * place, w[2 * pivot]!, w[2 * pivot + 1]!)
  const qr = values[2 * place]!
  const qi = values[2 * place + 1]!
  index[place] = pivot
  let to = place + 1
  for (let c = 0; c < count; c++) {
    const i = candidates[c]!
    const wr = w[2 * i]!
    const wi = w[2 * i + 1]!
    w[2 * i] = 0
    w[2 * i + 1] = 0
    if (i === pivot) continue
    index[to] = i
    values[2 * to] = wr * qr - wi * qi // L(:,k) = w / U(k,k)
    values[2 * to + 1] = wr * qi + wi * qr
    to++
  }
  return to
}
