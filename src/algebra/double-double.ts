/**
 * Sums and products with twice the digits: a number is kept as a value and a tail, value = fl(value + tail).
 * Results go into two arrays at one index, so that nothing is allocated in a loop.
 * @source Dekker 1971 and Knuth, error-free transformations, from memory
 */

/** What is left over when `a + b` is rounded to `sum`. */
export function sumError(a: number, b: number, sum: number): number {
  const part = sum - a
  return a - (sum - part) + (b - part)
}

const SPLIT = 134217729 // 2²⁷ + 1

/** What is left over when `a · b` is rounded to `product`; both factors below 1e300. */
export function productError(a: number, b: number, product: number): number {
  const ta = SPLIT * a
  const aHigh = ta - (ta - a)
  const aLow = a - aHigh
  const tb = SPLIT * b
  const bHigh = tb - (tb - b)
  const bLow = b - bHigh
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow)
}

/** Adds `x` to the number kept at index k of `value` and `tail`. */
export function accumulate(value: Float64Array, tail: Float64Array, k: number, x: number): void {
  const before = value[k]!
  const sum = before + x
  const low = tail[k]! + sumError(before, x, sum)
  value[k] = sum + low
  tail[k] = low - (value[k]! - sum)
}

/** Adds `factor · (x + xTail)` to the number kept at index k of `value` and `tail`. */
export function accumulateProduct(
  value: Float64Array,
  tail: Float64Array,
  k: number,
  factor: number,
  x: number,
  xTail: number,
): void {
  if (factor === 0) return
  const product = factor * x
  accumulate(value, tail, k, product)
  accumulate(value, tail, k, productError(factor, x, product) + factor * xTail)
}
