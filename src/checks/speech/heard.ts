/** Is the set heard, and does it hear? Judged beside the same part straight across the same line. */

import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { SPEECH_FREQUENCY, speechPlans } from '../../figures/speech.ts'
import { straightAcross } from '../../figures/straight.ts'
import type { Branch, NetLine, NetSocket } from '../../netlist/netlist.ts'
import { type CheckContext, type Rule, roleBranches, when } from '../context.ts'
import { judge, shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { Verdict } from '../rule.ts'
import { feedOf, isGood, leastFeed } from './feed.ts'
import { type Mend, mendPart } from './mend.ts'
import { below, corePath, decibels, NO_SPEECH, notSaid, shortedBy, unasked } from './path.ts'

/** One direction of speech. */
interface Direction {
  readonly id: string
  readonly asks: string
  readonly role: 'sender' | 'receiver'
  /** Which of the speech figures. */
  readonly figure: 0 | 1
  readonly part: string
  readonly good: string
  readonly bad: string
}

const FIGURES = ['speech.send', 'speech.receive'] as const

const SENDS: Direction = {
  id: 'speech.sends',
  asks: 'Is the set heard?',
  role: 'sender',
  figure: 0,
  part: 'transmitter',
  good: 'The set is heard',
  bad: 'The set is not heard',
}

const RECEIVES: Direction = {
  id: 'speech.receives',
  asks: 'Does the set hear?',
  role: 'receiver',
  figure: 1,
  part: 'receiver',
  good: 'The set hears',
  bad: 'The set does not hear',
}

function heard(direction: Direction): Rule {
  const { id, asks, role } = direction
  return {
    id,
    asks,
    run(context): readonly Verdict[] {
      const early = unasked(context, id)
      if (early !== undefined) return [early]
      const [part] = roleBranches(context, role)
      const { line } = context.net
      const { socket } = context.place
      if (part === undefined || line === undefined || socket === undefined)
        return [missing(context, direction)]
      return [judged(context, direction, part, line, socket)]
    },
  }
}

/** Is the set heard at the far end? */
export const sends: Rule = heard(SENDS)

/** Does the set hear the far end? */
export const receives: Rule = heard(RECEIVES)

function judged(
  context: CheckContext,
  direction: Direction,
  part: Branch,
  line: NetLine,
  socket: NetSocket,
): Verdict {
  const share = limitOf(context.limits, 'speech-left')
  const condition = when(context, 'off-hook/speech')
  const plan = speechPlans({ line, sender: part, receiver: part }, condition)[direction.figure]
  if (plan === undefined) throw new RangeError('there is no such direction of speech')
  const figure = context.figure(plan)
  const where = { line, socket, part, condition, frequency: SPEECH_FREQUENCY }
  const full = amountOf(context.figure(straightAcross(FIGURES[direction.figure], context.net, where)))
  if (full < NO_SPEECH)
    return notSaid(context, direction.id, 'No speech passes between this socket and the line.')
  const limit = { ...shown(share), value: share.value * full, unit: 'A' as const }
  const feed = direction.role === 'sender' ? feedOf(context, part) : undefined
  const unfed = feed !== undefined && feed.value !== null && !isGood(feed, leastFeed(context))
  const mend: Mend =
    !unfed && isGood(figure, limit)
      ? CLOSE
      : mendPart(context, part, direction.part, (figures, changes) => {
          const tried = figures[direction.figure]
          const fed =
            direction.role !== 'sender' || isGood(feedOf(context, part, changes), leastFeed(context))
          return fed && tried !== undefined && isGood(tried, limit) ? tried : undefined
        })
  const words = `its ${direction.part} gives ${lossWords(figure, full)} it would straight across this line`
  const gone = amountOf(figure) < NO_SPEECH
  return judge({
    check: direction.id,
    subject: part.id,
    figure: unfed ? feed : figure,
    limit: unfed ? leastFeed(context) : limit,
    path: shortedBy(context, part) ?? corePath(context, part),
    says: {
      good: `${direction.good}: ${words}.`,
      bad: `${direction.bad}: ${badWords(direction.part, unfed, gone) ?? words}.`,
    },
    mend: mend.words,
    consequences: [mend.mended === undefined ? { figure } : { figure, mended: mend.mended }],
  })
}

/** What is said where the figure is near its limit. */
const CLOSE: Mend = { words: 'look for resistance in cords and contacts, and try another part' }

function badWords(part: string, unfed: boolean, gone: boolean): string | undefined {
  if (unfed) return `no direct current to speak of feeds its ${part}`
  return gone ? `the ${part} has no part in the speech` : undefined
}

/** `2.5 dB less than`, `as much as`. */
function lossWords({ value }: Figure, full: number): string {
  const loss = below(value, full) ?? 0
  if (Math.abs(loss) < 0.05) return 'as much as'
  return `${decibels(loss)} ${loss > 0 ? 'less' : 'more'} than`
}

/** A handset without the part: for 1 V in what is not there nothing flows, and no question that it fails. */
function missing(context: CheckContext, { id, figure, part, bad }: Direction): Verdict {
  const { reason: _, ...head } = notSaid(context, id, `${bad}: the handset has no ${part}.`)
  const nothing = context.figure({
    id: FIGURES[figure],
    subject: context.place.place,
    condition: head.condition,
    unit: 'A',
    taps: [],
    value: () => 0,
  })
  return { ...head, state: 'fails', figure: nothing, mend: `fit a ${part} into the handset` }
}
