/** Does lifting the handset stop the ringing? By the direct current of the set off-hook on the ringing line. */
import { amountOf } from '../../figures/figure.ts'
import { loopCurrent } from '../../figures/loop.ts'
import { type CheckContext, hasHook, type Rule, when } from '../context.ts'
import { limitOf } from '../limits.ts'
import { judgeAndMend, type Mended } from '../mends.ts'
import { ofLine } from '../sheet-limit.ts'
import { unanswered } from '../unanswered.ts'
import { noHook } from '../wiring/loop.ts'

export const answersWhileRinging: Rule = {
  id: 'line.answers-while-ringing',
  asks: 'Does lifting the handset stop the ringing?',
  run(context) {
    const { net, place } = context
    const { line } = net
    const id = answersWhileRinging.id
    if (line === undefined || place.socket === undefined)
      return [unanswered(context, id, 'no-line', 'The set stands on no line.')]
    if (!hasHook(context)) return [noHook(context, id)]
    if (line.ringingFrequency === undefined)
      return [unanswered(context, id, 'undetermined', 'Nothing rings on this line.')]
    const figure = context.figure(loopCurrent(net, place, when(context, 'off-hook/ringing')))
    const trip = line.sheet.trip?.current.value
    if (trip === undefined) {
      const says = 'The sheet of this line does not say what trips its ringing.'
      return [unanswered(context, id, 'no-limit', says, figure)]
    }
    return [
      judgeAndMend(
        {
          check: id,
          subject: place.place,
          figure,
          limit: ofLine(trip, 'at-least', 'A', 'trip: current'),
          path: [],
          says: {
            good: 'Off-hook the set draws enough direct current to stop the ringing.',
            bad: 'Off-hook the set draws too little direct current to stop the ringing.',
          },
          tight:
            'little is left over: a longer cable, or damp in it, will keep the bells ringing into the ear',
        },
        () => betweenRings(context),
      ),
    ]
  },
}

/** What is left when the ringing does not trip: between two rings the feed is back, and finds the loop or not. */
function betweenRings(context: CheckContext): Mended {
  const make = limitOf(context.limits, 'loop-make')
  const idle = context.figure(loopCurrent(context.net, context.place, when(context, 'off-hook')))
  const mend =
    amountOf(idle) >= make.value
      ? 'in the pause between two rings the feed finds the loop closed, and the call is answered then; while it rings only the line can give more'
      : 'the loop fails with the line at rest, too: mend that first (`wiring.loop-through-set`, `line.current`)'
  return { mend, consequences: [{ figure: idle }] }
}
