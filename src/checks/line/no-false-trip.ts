/** Does ringing go on until someone answers? By the direct current of the whole line while it rings. */
import { amountOf } from '../../figures/figure.ts'
import { lineCurrent, tripMargin } from '../../figures/line-current.ts'
import { leakageRinging } from '../../figures/loop.ts'
import type { Condition } from '../../netlist/condition.ts'
import type { NetLine } from '../../netlist/netlist.ts'
import type { CheckContext, Rule } from '../context.ts'
import { judge } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { judgeAndMend, namesOf } from '../mends.ts'
import type { Consequence, Verdict } from '../rule.ts'
import { ofLine } from '../sheet-limit.ts'
import { unanswered } from '../unanswered.ts'
import { culpritMend, type LinePlan } from './culprit.ts'
import { everybody } from './everybody.ts'

const PLAN: LinePlan = ({ net }, changes) =>
  net.line && lineCurrent(net, net.line, 'leakage.ringing', everybody('ringing'), changes, net.name)

export const noFalseTrip: Rule = {
  id: 'line.no-false-trip',
  asks: 'Does ringing go on until someone answers?',
  once: true,
  run(context) {
    const { line } = context.net
    const plan = PLAN(context, {})
    if (line === undefined || plan === undefined)
      return [unanswered(context, noFalseTrip.id, 'no-line', 'The set stands on no line.')]
    if (line.ringingFrequency === undefined)
      return [unanswered(context, noFalseTrip.id, 'undetermined', 'Nothing rings on this line.')]
    const figure = context.figure(plan)
    const trip = line.sheet.trip?.current.value
    const draws = drawing(context)
    if (trip === undefined) {
      const says = `The sheet of this line does not say what trips its ringing.${draws.says}`
      return [unanswered(context, noFalseTrip.id, 'no-limit', says, figure, context.net.name)]
    }
    const engaged = context.net.places.map(({ place }) => place).filter((name) => isLifted(context, name))
    if (engaged.length > 0) return [engagedVerdict(context, line, engaged, trip)]
    const verdict = judgeAndMend(
      {
        check: noFalseTrip.id,
        subject: context.net.name,
        figure,
        limit: ofLine(trip, 'at-most', 'A', 'trip: current'),
        path: [],
        says: {
          good: 'While it rings the line draws too little direct current to trip the ringing.',
          bad: `The direct current while ringing is that of an answer: the ringing stops by itself.${draws.says}`,
        },
        tight:
          'little is left before the ringing stops by itself: look for what draws direct current on-hook',
        consequences: [...margin(context), ...draws.consequences],
      },
      () =>
        culpritMend(
          context,
          figure,
          PLAN,
          trip,
          'no single set is behind it: look at what stands across the pair in sockets and in-line apparatus',
        ),
    )
    return [withRemark(verdict, draws.says.trim())]
  },
}

function isLifted({ net }: CheckContext, place: string): boolean {
  return net.rest[place]?.hook === 'off-hook'
}

/** A line on which somebody is off the hook as things stand. */
function engagedVerdict(
  context: CheckContext,
  line: NetLine,
  places: readonly string[],
  trip: number,
): Verdict {
  const { net } = context
  const names = namesOf(places)
  const asItStands: Condition = { line: 'ringing', sets: net.rest }
  return judge({
    check: noFalseTrip.id,
    subject: net.name,
    figure: context.figure(lineCurrent(net, line, 'leakage.ringing', asItStands, {}, net.name)),
    limit: ofLine(trip, 'at-most', 'A', 'trip: current'),
    path: [],
    says: {
      good: `${names} off the hook draws too little to be noticed while it rings.`,
      bad: `${names} off the hook: this line is engaged and does not ring, or stops at once.`,
    },
    mend: `hang up ${names}`,
  })
}

function margin(context: CheckContext): readonly Consequence[] {
  const { net } = context
  const plan = net.line && tripMargin(net, net.line, everybody('ringing'))
  return plan === undefined ? [] : [{ figure: context.figure(plan) }]
}

function withRemark(verdict: Verdict, remark: string): Verdict {
  return verdict.state === 'holds' && remark !== '' ? { ...verdict, remark } : verdict
}

/** Sets that draw more direct current while the line rings than published limits of a set allow, in words. */
function drawing(context: CheckContext): {
  readonly says: string
  readonly consequences: readonly Consequence[]
} {
  const strict = limitOf(context.limits, 'ringing-leakage')
  const wide = limitOf(context.limits, 'ringing-leakage-wide')
  const drawn = context.net.places
    .map((place) => context.figure(leakageRinging(context.net, place, everybody('ringing'))))
    .filter(({ value }) => value !== null && value > strict.value)
  if (drawn.length === 0) return { says: '', consequences: [] }
  const names = drawn.map(({ subject }) => subject).join(', ')
  const both = drawn.some((one) => amountOf(one) > wide.value)
  const limits = `${strict.source}, ${strict.clause}${both ? `, and of ${wide.source}, ${wide.clause}` : ''}`
  return {
    says: ` More direct current while ringing than a set may draw by the limit of ${limits}: ${names}.`,
    consequences: drawn.map((figure) => ({ figure })),
  }
}
