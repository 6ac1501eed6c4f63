/** How a value that spreads widely moves u: a curve through what it does at five places. */

/**
 * The step for any z from those at −2, −1, 1 and 2; at 0 nothing moves. Cubic pieces that pass through the five with the slopes of their neighbours, straight beyond the
 * last two. Where the five lie on a line it is that line.
 * @source piecewise cubic Hermite interpolation, slopes by central differences: de Boor, A Practical Guide to Splines, chapter IV; from memory
 */
export function curveAt(steps: ArrayLike<number>, at: number, z: number): number {
  const [a, b, c, d, e] = [steps[at] ?? 0, steps[at + 1] ?? 0, 0, steps[at + 2] ?? 0, steps[at + 3] ?? 0]
  if (z <= -2) return a + (z + 2) * (b - a)
  if (z >= 2) return e + (z - 2) * (e - d)
  if (z < -1) return piece(a, b, b - a, (c - a) / 2, z + 2)
  if (z < 0) return piece(b, c, (c - a) / 2, (d - b) / 2, z + 1)
  if (z < 1) return piece(c, d, (d - b) / 2, (e - c) / 2, z)
  return piece(d, e, (e - c) / 2, e - d, z - 1)
}

function piece(from: number, to: number, slopeFrom: number, slopeTo: number, t: number): number {
  const rest = 1 - t
  return (
    from * (1 + 2 * t) * rest * rest + to * (3 - 2 * t) * t * t + t * rest * (slopeFrom * rest - slopeTo * t)
  )
}

/** A curve as a straight line with noise, which is as good as the curve where z is about known. */
export interface Line {
  /** The mean of the step. */
  readonly mean: number
  /** How it follows z around the mean of z. */
  readonly slope: number
  /** Variance of what the line leaves. */
  readonly noise: number
}

/** Narrower than this no curve bends that matters. */
const LEAST_DEVIATION = 0.02

/**
 * The line that follows the curve best, in mean squares, for a normal z: by the Gauss and Hermite rule of three points.
 * @source statistical linear regression: Särkkä, Bayesian Filtering and Smoothing, 5.4 and 6.3; from memory
 */
export function lineOf(steps: ArrayLike<number>, at: number, mean: number, variance: number): Line {
  const deviation = Math.max(LEAST_DEVIATION, Math.sqrt(variance))
  const away = Math.sqrt(3) * deviation
  const p = curveAt(steps, at, mean - away)
  const q = curveAt(steps, at, mean)
  const r = curveAt(steps, at, mean + away)
  const average = q + (p - 2 * q + r) / 6
  const slope = (r - p) / (2 * away)
  // what is left of the three beside the line: it bends by p − 2q + r
  const bend = p - 2 * q + r
  return { mean: average, slope, noise: (bend * bend) / 18 }
}
