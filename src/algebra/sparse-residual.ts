import type { Columns } from './sparse-columns.ts'

/** Keeps the residual of the zero solution of a zero right side at 0 instead of 0/0. */
const tiny = 2.2250738585072014e-308

/** ‖A x − b‖∞ / (‖A‖∞ ‖x‖∞ n ε + tiny); `rest` (n) and `sums` (n) are overwritten. */
export function residualReal(
  { order: n, starts, rows }: Columns,
  a: Float64Array,
  x: Float64Array,
  b: Float64Array,
  rest: Float64Array,
  sums: Float64Array,
): number {
  for (let i = 0; i < n; i++) rest[i] = -b[i]!
  sums.fill(0, 0, n)
  for (let j = 0; j < n; j++) {
    const own = x[j]!
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      const i = rows[t]!
      rest[i] = rest[i]! + a[t]! * own
      sums[i] = sums[i]! + Math.abs(a[t]!)
    }
  }
  let worst = 0
  let sizeOfA = 0
  let sizeOfX = 0
  for (let i = 0; i < n; i++) {
    worst = Math.max(worst, Math.abs(rest[i]!)) // keeps NaN
    if (sums[i]! > sizeOfA) sizeOfA = sums[i]!
    const own = Math.abs(x[i]!)
    if (own > sizeOfX) sizeOfX = own
  }
  return scaled(worst, sizeOfA, sizeOfX, n)
}

/** The same of complex values, interleaved; `rest` has 2 n places. */
export function residualComplex(
  { order: n, starts, rows }: Columns,
  a: Float64Array,
  x: Float64Array,
  b: Float64Array,
  rest: Float64Array,
  sums: Float64Array,
): number {
  for (let i = 0; i < 2 * n; i++) rest[i] = -b[i]!
  sums.fill(0, 0, n)
  for (let j = 0; j < n; j++) {
    const xr = x[2 * j]!
    const xi = x[2 * j + 1]!
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      const i = rows[t]!
      const ar = a[2 * t]!
      const ai = a[2 * t + 1]!
      rest[2 * i] = rest[2 * i]! + (ar * xr - ai * xi)
      rest[2 * i + 1] = rest[2 * i + 1]! + (ar * xi + ai * xr)
      sums[i] = sums[i]! + Math.hypot(ar, ai)
    }
  }
  let worst = 0
  let sizeOfA = 0
  let sizeOfX = 0
  for (let i = 0; i < n; i++) {
    worst = Math.max(worst, Math.hypot(rest[2 * i]!, rest[2 * i + 1]!)) // keeps NaN
    if (sums[i]! > sizeOfA) sizeOfA = sums[i]!
    const own = Math.hypot(x[2 * i]!, x[2 * i + 1]!)
    if (own > sizeOfX) sizeOfX = own
  }
  return scaled(worst, sizeOfA, sizeOfX, n)
}

/** A solution that is no number has no good residual. */
function scaled(worst: number, sizeOfA: number, sizeOfX: number, n: number): number {
  const value = worst / (sizeOfA * sizeOfX * n * Number.EPSILON + tiny)
  return value >= 0 ? value : Number.POSITIVE_INFINITY
}
