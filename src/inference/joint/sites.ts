/** What one observation says of the number that it observes, beside all that the others say. */
import { broadOf } from '../broad.ts'
import type { Hypotheses, Observable, Observation } from '../hypotheses.ts'
import { answersGiven, edgesOf, LEAST_LOG, logBroad, logOf, logSum } from '../likelihood.ts'
import { cutNormal, logNormalDensity } from '../normal.ts'
import { along } from '../scale.ts'

/** What is believed of a number once it is observed. */
export interface Tilted {
  /** Natural logarithm of how probable the observation was. */
  readonly log: number
  readonly mean: number
  readonly variance: number
}

/** An observation that may tell of what is loose: a number, or answers in words. */
export interface Site {
  readonly observable: number
  readonly seen: Observable
  /**
   * Bayes' rule for one number u, normal with this mean and variance, that is observed with this variance of error. A
   * slip tells nothing of u; mean and variance are those of the mixture.
   */
  tilt(mean: number, variance: number, error: number): Tilted
  /** Whether the observation tells nothing of a number u that lies within this reach: an answer that is certain, or a slip. */
  isPlain(u: number, reach: number): boolean
}

/** The observation as a site; undefined for one that tells nothing of any loose value: `open`, or nothing at all. */
export function siteOf(among: Hypotheses, observation: Observation): Site | undefined {
  const { observable, x } = observation
  const seen = among.observables[observable]
  if (seen === undefined) return undefined
  const given = answersGiven(seen, observation)
  if (given !== undefined)
    return seen.cuts?.length === 0 ? undefined : { observable, seen, ...inWords(seen, given) }
  if (seen.cuts !== undefined || x === undefined || !Number.isFinite(x)) return undefined
  const tilt = asNumber(seen, x, logBroad(seen, x, broadOf(among, observable)))
  return { observable, seen, tilt, isPlain: () => false }
}

function asNumber(seen: Observable, x: number, broad: number): Site['tilt'] {
  const u = along(seen, x)
  const [right, slipped] = [Math.log1p(-seen.slip), logOf(seen.slip) + broad]
  return (mean, variance, error) => {
    const all = variance + error
    const off = u - mean
    const meant = right + logNormalDensity(off, Math.sqrt(all))
    const log = logSum(meant, seen.slip > 0 ? slipped : Number.NEGATIVE_INFINITY)
    const share = log > LEAST_LOG ? Math.exp(meant - log) : 0
    const gain = variance / all
    return {
      log: Math.max(LEAST_LOG, log),
      mean: mean + share * gain * off,
      variance: variance * (1 - share * gain) + share * (1 - share) * gain * gain * off * off,
    }
  }
}

function inWords(seen: Observable, given: readonly number[]): Pick<Site, 'tilt' | 'isPlain'> {
  const edges = edgesOf(seen)
  const count = edges.length - 1
  const wrong = count > 1 ? seen.slip / (count - 1) : 0
  const isPlain = (u: number, reach: number): boolean =>
    !edges.some((edge, k) => Math.abs(edge - u) <= reach && given.includes(k) !== given.includes(k - 1))
  const tilt: Site['tilt'] = (mean, variance, error) => {
    const deviation = Math.sqrt(variance + error)
    let [mass, first, second] = [0, 0, 0]
    for (const answer of given) {
      const cut = cutNormal(
        ((edges[answer] ?? 0) - mean) / deviation,
        ((edges[answer + 1] ?? 0) - mean) / deviation,
      )
      mass += cut.mass
      first += cut.mass * cut.mean
      second += cut.mass * (cut.variance + cut.mean * cut.mean)
    }
    const meant = (1 - seen.slip - wrong) * mass
    const all = meant + wrong * given.length
    const log = logOf(all)
    if (!(meant > 0) || !(mass > 0)) return { log, mean, variance }
    // of the standardised number: what lies within the answers, mixed with what a slip leaves as it was
    const share = meant / all
    const centre = (share * first) / mass
    const spread = share * (second / mass) + (1 - share) - centre * centre
    const gain = variance / (variance + error)
    return {
      log,
      mean: mean + gain * deviation * centre,
      variance: variance * (1 - gain) + gain * variance * spread,
    }
  }
  return { tilt, isPlain }
}
