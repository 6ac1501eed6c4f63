/** A check that exists by name and that this version does not compute. */
import { type CheckContext, type Rule, when } from './context.ts'
import type { Verdict } from './rule.ts'

/** Answers with `unknown: not-modelled`. */
export function notModelled(id: string, asks: string): Rule {
  return {
    id,
    asks,
    run: (context: CheckContext): readonly Verdict[] => [
      {
        check: id,
        subject: context.place.place,
        condition: when(context, 'on-hook'),
        state: 'unknown',
        reason: 'not-modelled',
        says: 'This version does not compute it.',
        figure: null,
        limit: null,
        margin: null,
        path: [],
      },
    ],
  }
}
