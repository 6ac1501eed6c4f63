/** How well a hypothesis explains an observation. */
import { type Broad, broadOf, logBroadDensity, OPEN_SHARE } from './broad.ts'
import type { Hypotheses, Observable, Observation } from './hypotheses.ts'
import { logNormalDensity, normalBetween } from './normal.ts'
import { along, answerOf, type Expected, expectedOf } from './scale.ts'

/** Nothing is quite impossible: without a floor one strange observation would leave nothing to compare. */
export const LEAST_LOG = -690

/** Natural logarithms of the likelihood of one observation by every hypothesis, and by `none`. */
export interface Likelihoods {
  readonly of: Float64Array
  readonly none: number
}

/** Likelihoods found so far: evidence grows by one observation at a time, and there may be tens of thousands of hypotheses. */
const known = new WeakMap<Hypotheses, Map<string, Likelihoods>>()
/** So many are kept. */
const KEPT = 64

/**
 * How well every hypothesis explains an observation. Densities are on the scale u; `open` has a probability of its own.
 * The array is kept for the next time: not to be written to.
 */
export function likelihoodsOf(among: Hypotheses, observation: Observation): Likelihoods {
  const kept = known.get(among) ?? new Map<string, Likelihoods>()
  known.set(among, kept)
  const { observable, x, answer, answers } = observation
  const key = `${observable} ${x} ${answer} ${answers}`
  const found = kept.get(key) ?? weigh(among, observation)
  if (kept.size >= KEPT) kept.clear()
  kept.set(key, found)
  return found
}

function weigh(among: Hypotheses, observation: Observation): Likelihoods {
  const of = new Float64Array(among.count)
  const seen = among.observables[observation.observable]
  if (seen === undefined) return { of, none: 0 }
  const given = answersGiven(seen, observation)
  if (given !== undefined) {
    const count = (seen.cuts?.length ?? 0) + 1
    const edges = edgesOf(seen)
    for (let k = 0; k < among.count; k++) {
      const expected = expectedOf(among, k, observation.observable)
      let sum = 0
      for (const answer of given) sum += answerProbability(seen, edges, expected, answer)
      of[k] = logOf(sum)
    }
    return { of, none: Math.log(given.length / count) }
  }
  const { x } = observation
  if (x === undefined || !(x > Number.NEGATIVE_INFINITY)) return { of, none: 0 }
  const broad = broadOf(among, observation.observable)
  for (let k = 0; k < among.count; k++)
    of[k] = logNumber(seen, expectedOf(among, k, observation.observable), x, broad)
  return { of, none: logBroad(seen, x, broad) }
}

/** The answers that it may have been, said in words or as a number; undefined where nothing was said of them. */
export function answersGiven(
  { cuts }: Observable,
  { x, answer, answers }: Observation,
): readonly number[] | undefined {
  if (cuts === undefined) return undefined
  const said = answers ?? (answer === undefined ? undefined : [answer])
  if (said === undefined) return x === undefined || Number.isNaN(x) ? undefined : [answerOf(cuts, x)]
  const known = [...new Set(said)].filter((one) => one >= 0 && one <= cuts.length)
  return known.length === 0 ? undefined : known
}

/** The probability of each answer: how much of what is expected lies between its cuts; a slip makes it any other. */
export function answerProbabilities(seen: Observable, expected: Expected): number[] {
  const edges = edgesOf(seen)
  return Array.from({ length: edges.length - 1 }, (_, k) => answerProbability(seen, edges, expected, k))
}

/** Where answers begin and end on the scale. */
export function edgesOf(seen: Observable): readonly number[] {
  const cuts = seen.cuts ?? []
  return [Number.NEGATIVE_INFINITY, ...cuts.map((cut) => along(seen, cut)), Number.POSITIVE_INFINITY]
}

function answerProbability(
  { slip }: Observable,
  edges: readonly number[],
  expected: Expected,
  answer: number,
): number {
  const count = edges.length - 1
  if (expected.says === 'anything' || count === 1) return 1 / count
  const lies = mass(expected, edges[answer] ?? Number.NaN, edges[answer + 1] ?? Number.NaN)
  return (1 - slip) * lies + (slip * (1 - lies)) / (count - 1)
}

function mass({ says, u, sigma }: Expected, least: number, most: number): number {
  if (says === 'open') return most === Number.POSITIVE_INFINITY ? 1 : 0
  if (sigma > 0) return normalBetween((least - u) / sigma, (most - u) / sigma)
  return u >= least && u < most ? 1 : 0
}

function logNumber(seen: Observable, { says, u, sigma }: Expected, x: number, broad: Broad): number {
  if (says === 'anything') return logBroad(seen, x, broad)
  const isOpen = x === Number.POSITIVE_INFINITY
  const meant =
    isOpen !== (says === 'open')
      ? Number.NEGATIVE_INFINITY
      : isOpen
        ? 0
        : logNormalDensity(along(seen, x) - u, sigma)
  const asMeant = Math.log1p(-seen.slip) + meant
  const slipped = logOf(seen.slip) + logBroad(seen, x, broad)
  return Math.max(LEAST_LOG, logSum(asMeant, slipped))
}

export function logBroad(seen: Observable, x: number, broad: Broad): number {
  return x === Number.POSITIVE_INFINITY ? Math.log(OPEN_SHARE) : logBroadDensity(broad, along(seen, x))
}

export function logOf(probability: number): number {
  return probability > 0 ? Math.max(LEAST_LOG, Math.log(probability)) : LEAST_LOG
}

/** log(eᵃ + eᵇ) without leaving the range of numbers. */
export function logSum(a: number, b: number): number {
  const most = Math.max(a, b)
  return most === Number.NEGATIVE_INFINITY ? most : most + Math.log1p(Math.exp(Math.min(a, b) - most))
}
