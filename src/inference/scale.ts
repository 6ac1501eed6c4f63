/** How values are compared: on a scale that is like a logarithm far from nothing and straight near it. */
import type { Hypotheses, Observable } from './hypotheses.ts'

/** u = asinh(x / scale). */
export function along({ scale }: Observable, x: number): number {
  return Math.asinh(x / scale)
}

/** What a hypothesis lets expect of an observable: a normal variable on the scale, `open`, or anything at all. */
export interface Expected {
  readonly says: 'number' | 'open' | 'anything'
  /** Mean and standard deviation on the scale; 0 where it is no number. */
  readonly u: number
  readonly sigma: number
}

const IS_OPEN: Expected = { says: 'open', u: 0, sigma: 0 }
const ANYTHING: Expected = { says: 'anything', u: 0, sigma: 0 }
/** No reading is better than this share of itself. */
const FINEST = 1e-9

/** What hypothesis k lets expect of an observable. */
export function expectedOf(among: Hypotheses, k: number, observable: number): Expected {
  const seen = among.observables[observable]
  const row = k * among.observables.length + observable
  const x = among.expected[row] ?? Number.NaN
  if (x === Number.POSITIVE_INFINITY) return IS_OPEN
  if (seen === undefined || !Number.isFinite(x)) return ANYTHING
  return { says: 'number', u: along(seen, x), sigma: sigmaOf(seen, x, among.spread[row] ?? 0) }
}

/** Standard deviation on the scale: the spread, and the observation's own error carried over by du/dx. */
function sigmaOf(seen: Observable, x: number, spread: number): number {
  const own = ownSigma(seen, x)
  const sigma = Math.hypot(Number.isFinite(spread) ? spread : 0, own)
  return seen.cuts === undefined ? Math.max(FINEST, sigma) : sigma
}

/** The observation's own error on the scale. */
export function ownSigma(seen: Observable, x: number): number {
  const error = seen.error(x)
  return Number.isFinite(error) ? Math.abs(error) / Math.hypot(x, seen.scale) : 0
}

/** Which answer a number amounts to. */
export function answerOf(cuts: readonly number[], x: number): number {
  const above = cuts.findIndex((cut) => x < cut)
  return above === -1 ? cuts.length : above
}
