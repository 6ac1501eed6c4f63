/** Is the direct current of the whole line on-hook small enough? */
import { lineCurrent } from '../../figures/line-current.ts'
import type { Rule } from '../context.ts'
import { shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { judgeAndMend } from '../mends.ts'
import { unanswered } from '../unanswered.ts'
import { culpritMend, type LinePlan } from './culprit.ts'
import { everybody } from './everybody.ts'

const PLAN: LinePlan = ({ net }, changes) =>
  net.line && lineCurrent(net, net.line, 'leakage.on-hook', everybody('idle'), changes, net.name)

/** At most what the on-hook resistance that a clear line must have draws at this line's feed voltage. */
export const leakage: Rule = {
  id: 'line.leakage',
  asks: 'Is the direct current on-hook small enough for this line?',
  once: true,
  run(context) {
    const { line } = context.net
    const plan = PLAN(context, {})
    if (line === undefined || plan === undefined)
      return [unanswered(context, leakage.id, 'no-line', 'The set stands on no line.')]
    const limit = limitOf(context.limits, 'on-hook-resistance')
    const most = line.feedVoltage / limit.value
    const figure = context.figure(plan)
    return [
      judgeAndMend(
        {
          check: leakage.id,
          subject: context.net.name,
          figure,
          limit: { ...shown(limit), side: 'at-most', unit: 'A', value: most },
          path: [],
          says: {
            good: 'With everybody on-hook the line draws next to no direct current.',
            bad: 'With everybody on-hook the line draws direct current; the exchange sees a leaky line.',
          },
          tight: 'look for damp, and for what leaks a little everywhere',
        },
        () =>
          culpritMend(
            context,
            figure,
            PLAN,
            most,
            'no single set is behind it: look at what stands across the pair in sockets and in-line apparatus',
          ),
      ),
    ]
  },
}
