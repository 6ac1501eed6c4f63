/** From a figure and a limit to a verdict. */
import type { Figure } from '../figures/figure.ts'
import type { Limit } from './limits.ts'
import type { Consequence, Verdict, VerdictLimit } from './rule.ts'

/** A margin below this share of the limit is marginal where no tolerance is known (design 2). */
export const MARGINAL_BELOW = 0.05

/** The evidence that goes with a judgement. */
export interface Evidence {
  readonly check: string
  readonly subject: string
  readonly figure: Figure
  readonly limit: Limit | VerdictLimit
  readonly path: readonly string[]
  /** What was found, when it holds and when it does not. */
  readonly says: { readonly good: string; readonly bad: string }
  readonly mend: string
  readonly consequences?: readonly Consequence[]
}

/** The limit as a verdict carries it. */
export function shown(limit: Limit | VerdictLimit): VerdictLimit {
  const { value, side, unit, source, clause, grade } = limit
  return { value, side, unit, source, clause, grade }
}

/** Whether "open" is on the good side of a limit: it is beyond any resistance. */
function openValue(figure: Figure): number | undefined {
  return figure.state === 'open' && figure.unit === 'Ω' ? Number.POSITIVE_INFINITY : undefined
}

/** Judges a figure against its limit. An open resistance counts as beyond every limit; an open loop carries nothing. */
export function judge(evidence: Evidence): Verdict {
  const { check, subject, figure, path, says, mend, consequences } = evidence
  const limit = shown(evidence.limit)
  const value = figure.value ?? openValue(figure) ?? (figure.state === 'open' ? 0 : undefined)
  const head = {
    check,
    subject,
    condition: figure.condition,
    figure,
    limit,
    path,
    ...(consequences ? { consequences } : {}),
  }
  if (value === undefined || Number.isNaN(value)) {
    return {
      ...head,
      state: 'unknown',
      ...(figure.state === 'no-convergence'
        ? { reason: 'no-convergence', says: 'No direct-current point was found that suits all parts.' }
        : { reason: 'undetermined', says: 'The figure is not determined by the wiring.' }),
      margin: null,
    }
  }
  if (limit.value === 0) {
    // nothing is a share of nothing
    const within = limit.side === 'at-least' ? value >= 0 : value <= 0
    return within
      ? { ...head, state: 'holds', says: says.good, margin: null }
      : { ...head, state: 'fails', says: says.bad, margin: null, mend }
  }
  const raw =
    limit.side === 'at-most' ? (limit.value - value) / limit.value : (value - limit.value) / limit.value
  const margin = Number.isFinite(raw) ? raw : null
  if (raw < 0) return { ...head, state: 'fails', says: says.bad, margin, mend }
  // counts have no margin to speak of
  if (raw < MARGINAL_BELOW && limit.unit !== '1')
    return { ...head, state: 'marginal', says: says.good, margin, mend }
  return { ...head, state: 'holds', says: says.good, margin }
}

const GRAVITY: readonly Verdict['state'][] = ['fails', 'marginal', 'unknown', 'holds']

/** Order of verdicts: the graver first, among equals that with the smaller margin. */
export function graver(p: Verdict, q: Verdict): number {
  const states = GRAVITY.indexOf(p.state) - GRAVITY.indexOf(q.state)
  return states !== 0
    ? states
    : (p.margin ?? Number.POSITIVE_INFINITY) - (q.margin ?? Number.POSITIVE_INFINITY) || 0
}

/** The figure furthest on the bad side of a limit: the largest for at-most, the smallest for at-least. */
export function worst(figures: readonly Figure[], side: 'at-most' | 'at-least'): Figure {
  const size = (figure: Figure): number => figure.value ?? openValue(figure) ?? 0
  const sorted = [...figures].sort((p, q) => (side === 'at-most' ? size(q) - size(p) : size(p) - size(q)))
  const [first] = sorted
  if (first === undefined) throw new RangeError('there is no figure to choose from')
  return first
}
