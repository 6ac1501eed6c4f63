/**
 * What observations make of loose values: z is standard normal, u = J z, and each observation a normal factor
 * exp(ν u − τ u² / 2). The precision of z is then A = I + Jᵀ diag(τ) J.
 * @source Anderson, An Introduction to Multivariate Statistical Analysis, 2.5; from memory
 */
import { choleskyInPlace, solveLower, solveUpperInPlace } from './cholesky.ts'

/** Posterior of n numbers u that hang on some values z. */
export interface Posterior {
  /** Means and variances of u. */
  readonly mean: Float64Array
  readonly variance: Float64Array
  /** Means of z, and the lower triangle L of its precision A = L Lᵀ. */
  readonly values: Float64Array
  readonly lower: Float64Array
  /** Natural logarithm of the integral of all factors over z. */
  log: number
  readonly room: Float64Array
}

/** A place for the posterior of n numbers that hang on `width` values. */
export function posteriorOf(n: number, width: number): Posterior {
  const list = (length: number): Float64Array => new Float64Array(length)
  const [mean, variance, values, lower, room] = [n, n, width, width * width, width].map(list)
  const none = list(0)
  return {
    ...{ mean: mean ?? none, variance: variance ?? none, values: values ?? none, lower: lower ?? none },
    ...{ log: 0, room: room ?? none },
  }
}

/**
 * Works it out anew, over what it held.
 *
 * @param rows J, n rows as wide as there are values
 * @param precision τ of each number
 * @param weighted ν of each number
 */
export function workOut(
  posterior: Posterior,
  rows: Float64Array,
  precision: Float64Array,
  weighted: Float64Array,
): void {
  const { values, lower, room, mean, variance } = posterior
  const width = values.length
  const n = precision.length
  const pull = room.fill(0)
  lower.fill(0)
  for (let d = 0; d < width; d++) {
    lower[d * width + d] = 1
    for (let i = 0; i < n; i++) {
      const step = rows[i * width + d] ?? 0
      if (step === 0) continue
      pull[d] = (pull[d] ?? 0) + step * (weighted[i] ?? 0)
      const heavy = step * (precision[i] ?? 0)
      for (let e = 0; e <= d; e++)
        lower[d * width + e] = (lower[d * width + e] ?? 0) + heavy * (rows[i * width + e] ?? 0)
    }
  }
  choleskyInPlace(lower, width)
  solveLower(lower, width, pull, 0, values)
  let log = 0
  for (let d = 0; d < width; d++)
    log += 0.5 * (values[d] ?? 0) * (values[d] ?? 0) - Math.log(lower[d * width + d] ?? 1)
  posterior.log = log
  solveUpperInPlace(lower, width, values)
  for (let i = 0; i < n; i++) {
    mean[i] = meanAt(values, rows, i * width)
    variance[i] = varianceAt(lower, width, rows, i * width, room)
  }
}

/** The mean of one row times z. */
export function meanAt(values: Float64Array, rows: Float64Array, at: number): number {
  let sum = 0
  for (let d = 0; d < values.length; d++) sum += (rows[at + d] ?? 0) * (values[d] ?? 0)
  return sum
}

/** The variance of one row times z: |L⁻¹ j|². */
export function varianceAt(
  lower: Float64Array,
  width: number,
  rows: Float64Array,
  at: number,
  room: Float64Array,
): number {
  solveLower(lower, width, rows, at, room)
  let sum = 0
  for (let d = 0; d < width; d++) sum += (room[d] ?? 0) * (room[d] ?? 0)
  return sum
}
