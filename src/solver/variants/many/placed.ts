/**
 * Numbers by position: 0 is earth, then the nodes, then the currents of equations; a voltage is the difference of two
 * positions, a current one position against earth. Sums of them with twice the digits: re, im, and what these have lost.
 */
import { accumulate, accumulateProduct } from '../../../algebra/double-double.ts'

/** Numbers by position, as value and tail, interleaved re, im; position 0 is nil. */
export interface Placed {
  readonly value: Float64Array
  readonly tail: Float64Array
}

/** The voltage in series with a branch, by branch; interleaved re, im. */
export type SeriesOf = Float64Array | undefined

/** |re| + |im| at a position. */
export function sizeAt({ value }: Placed, at: number): number {
  return Math.abs(value[2 * at]!) + Math.abs(value[2 * at + 1]!)
}

const fall = { value: new Float64Array(2), tail: new Float64Array(2) }

/** out += (re + j·im)·(x(p) − x(q)), with tails. */
export function addFall(
  { value, tail }: Placed,
  p: number,
  q: number,
  re: number,
  im: number,
  out: Float64Array,
): void {
  for (let part = 0; part < 2; part += 1) {
    fall.value[part] = value[2 * p + part]!
    fall.tail[part] = tail[2 * p + part]!
    accumulate(fall.value, fall.tail, part, -value[2 * q + part]!)
    accumulate(fall.value, fall.tail, part, -tail[2 * q + part]!)
  }
  addTimes(fall, 0, re, im, out)
}

const sum = { value: new Float64Array(2), tail: new Float64Array(2) }

/** out += (re + j·im)·x(at), with tails. */
export function addTimes(
  { value, tail }: Placed,
  at: number,
  re: number,
  im: number,
  out: Float64Array,
): void {
  sum.value[0] = out[0]!
  sum.value[1] = out[1]!
  sum.tail[0] = out[2]!
  sum.tail[1] = out[3]!
  const xRe = value[2 * at]!
  const xIm = value[2 * at + 1]!
  accumulateProduct(sum.value, sum.tail, 0, re, xRe, tail[2 * at]!)
  accumulateProduct(sum.value, sum.tail, 1, re, xIm, tail[2 * at + 1]!)
  if (im !== 0) {
    accumulateProduct(sum.value, sum.tail, 0, -im, xIm, tail[2 * at + 1]!)
    accumulateProduct(sum.value, sum.tail, 1, im, xRe, tail[2 * at]!)
  }
  out[0] = sum.value[0]!
  out[1] = sum.value[1]!
  out[2] = sum.tail[0]!
  out[3] = sum.tail[1]!
}

/** out += re + j·im. */
export function addNumber(out: Float64Array, re: number, im: number): void {
  sum.value[0] = out[0]!
  sum.value[1] = out[1]!
  sum.tail[0] = out[2]!
  sum.tail[1] = out[3]!
  accumulate(sum.value, sum.tail, 0, re)
  accumulate(sum.value, sum.tail, 1, im)
  out[0] = sum.value[0]!
  out[1] = sum.value[1]!
  out[2] = sum.tail[0]!
  out[3] = sum.tail[1]!
}
