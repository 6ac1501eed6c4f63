/** A check that cannot be answered here, and why. */
import type { Figure } from '../figures/figure.ts'
import { type CheckContext, when } from './context.ts'
import type { Reason, Unknown } from './rule.ts'

/** `unknown`, with the figure where there is one. */
export function unanswered(
  context: CheckContext,
  check: string,
  reason: Reason,
  says: string,
  figure: Figure | null = null,
  subject: string = context.place.place,
): Unknown {
  return {
    check,
    subject,
    condition: figure?.condition ?? when(context, 'on-hook'),
    state: 'unknown',
    reason,
    says,
    figure,
    limit: null,
    margin: null,
    path: [],
  }
}
