/** Which observation is worth making next. */
import type { Hypotheses } from './hypotheses.ts'
import { expectedInformation, type Worth } from './information.ts'

/** One observation that could be made. */
export interface Candidate {
  readonly observable: number
  /** What it is expected to tell, bits. */
  readonly bits: number
  readonly effort: number
}

/** Expected information within this share of the best, for its effort, is as good. */
const TIE = 1e-9

/**
 * The observations in reach, the one that tells most for its effort first; of equals the one of less effort, then the
 * earlier one.
 *
 * @param effort what each costs now; its own effort where absent
 */
export function rankNext(
  among: Hypotheses,
  worth: Worth,
  allowed: readonly number[],
  effort: (observable: number) => number = (k) => among.observables[k]?.effort ?? 1,
): readonly Candidate[] {
  const candidates = allowed.map((observable) => ({
    observable,
    bits: expectedInformation(among, worth, observable),
    effort: effort(observable),
  }))
  return candidates.sort((a, b) => {
    const [one, other] = [a.bits / a.effort, b.bits / b.effort]
    if (Math.abs(one - other) > TIE * Math.max(one, other)) return other - one
    return a.effort - b.effort || a.observable - b.observable
  })
}
