/** The normal distribution: its density in logarithms, and how much of it lies where. */

const SQRT_PI = Math.sqrt(Math.PI)
const HALF_LOG_TAU = Math.log(2 * Math.PI) / 2
/** Where the series hands over to the continued fraction: both are good to the last digits there. */
const HANDOVER = 2.5

/** Natural logarithm of the normal density of mean 0 and standard deviation σ at d. */
export function logNormalDensity(d: number, sigma: number): number {
  const z = d / sigma
  return -0.5 * z * z - Math.log(sigma) - HALF_LOG_TAU
}

/**
 * The probability that a standard normal variable lies below z. The upper end is taken from the lower one, so that
 * what is nearly 1 loses no digits of what is missing there: `normalBelow(-z)`.
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.6 (series), 7.1.14 (continued fraction), 26.2.29
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) return Number.NaN
  const x = Math.abs(z) / Math.SQRT2
  const beyond = x < HANDOVER ? 0.5 - 0.5 * erfBySeries(x) : 0.5 * erfcByFraction(x)
  return z < 0 ? beyond : 1 - beyond
}

/** The probability that it lies between two places, without the loss of digits in a tail. */
export function normalBetween(least: number, most: number): number {
  if (!(most > least)) return 0
  const mass = least > 0 ? normalBelow(-least) - normalBelow(-most) : normalBelow(most) - normalBelow(least)
  return Math.max(0, mass)
}

function erfBySeries(x: number): number {
  let term = x
  let sum = x
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= (2 * x * x) / (2 * n + 1)
    sum += term
  }
  return ((2 * Math.exp(-x * x)) / SQRT_PI) * sum
}

function erfcByFraction(x: number): number {
  if (x > 27) return 0
  let tail = 0
  for (let n = 60; n > 0; n--) tail = n / 2 / (x + tail)
  return Math.exp(-x * x) / (SQRT_PI * (x + tail))
}

/**
 * The same to within 7.5e-8 and several times as fast: for sums over thousands of cells, where tails do not count.
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17
 */
export function normalBelowRoughly(z: number): number {
  const size = Math.abs(z)
  if (size > 6) return z < 0 ? 0 : 1
  const t = 1 / (1 + 0.2316419 * size)
  const polynomial =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const beyond = (Math.exp(-0.5 * size * size) / Math.sqrt(2 * Math.PI)) * polynomial
  return z < 0 ? beyond : 1 - beyond
}

/** How much of a standard normal variable lies between two places, and its mean and variance where it lies there. */
export interface Cut {
  readonly mass: number
  readonly mean: number
  readonly variance: number
}

/**
 * A standard normal variable of which it is known that it lies between two places. Mean and variance are 0 and 1 where
 * hardly anything lies there.
 * @source Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, vol. 1, 13.10.1; from memory
 */
export function cutNormal(least: number, most: number): Cut {
  const mass = normalBetween(least, most)
  if (mass < 1e-12) return { mass, mean: 0, variance: 1 }
  const [low, high] = [density(least), density(most)]
  const mean = (low - high) / mass
  const variance = 1 + (times(least, low) - times(most, high)) / mass - mean * mean
  return { mass, mean, variance: Math.min(1, Math.max(0, variance)) }
}

const density = (z: number): number => Math.exp(-0.5 * z * z - HALF_LOG_TAU)
const times = (z: number, thin: number): number => (thin === 0 ? 0 : z * thin)
