/** Two handsets up at once on one line: what each still gets. */

import type { Figure, FigurePlan } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { loopCurrent } from '../../figures/loop.ts'
import { speechPlans } from '../../figures/speech.ts'
import type { Condition } from '../../netlist/condition.ts'
import type { Branch, NetPlace } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { formatQuantity } from '../../quantities/format.ts'
import { type CheckContext, type Rule, when } from '../context.ts'
import { graver, judge, shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { Verdict, VerdictLimit } from '../rule.ts'
import { ofLine } from '../sheet-limit.ts'
import { below, decibels, NO_SPEECH, notSaid, type Speaking, speaking, unasked } from './path.ts'
import { bothUp, hungriest, othersWithHandset } from './together.ts'

/** The least current that each must get: as much as one alone (`line.current`). */
function leastCurrent(context: CheckContext): VerdictLimit {
  const limit = shown(limitOf(context.limits, 'loop-current-least'))
  const promised = context.net.line?.sheet.limits['loop current']?.least.value
  return promised === undefined ? limit : ofLine(promised, 'at-least', 'A', 'limits: loop current')
}

/**
 * Can two sets be off-hook together? The examined set beside the one that takes most: the loop current of the worse
 * fed of the two, and what is left of the examined set's speech.
 */
export const twoSets: Rule = {
  id: 'speech.two-sets',
  asks: 'Can two sets be off-hook together?',
  run(context): readonly Verdict[] {
    const current = leastCurrent(context)
    const left = shown(limitOf(context.limits, 'two-sets-left'))
    const early = unasked(context, twoSets.id)
    if (early !== undefined) return [early]
    const path = speaking(context)
    if (path === undefined)
      return [notSaid(context, twoSets.id, 'The handset lacks its transmitter or its receiver.')]
    const other = hungriest(context, othersWithHandset(context))
    if (other === undefined)
      return [notSaid(context, twoSets.id, 'No second set with a handset stands on this line.')]
    const alone = context.figure(loopCurrent(context.net, context.place, when(context, 'off-hook')))
    if (amountOf(alone) < current.value)
      return [notSaid(context, twoSets.id, 'By itself this set already gets too little; see `line.current`.')]
    return [fed(context, other, current, left, path)]
  },
}

function fed(
  context: CheckContext,
  other: NetPlace,
  current: VerdictLimit,
  left: VerdictLimit,
  path: Speaking,
): Verdict {
  const { net, place } = context
  // the feed of a line in speech is that of an idle one, and one point serves both
  const both = bothUp(context, other.place, 'speech')
  const mine = context.figure(loopCurrent(net, place, both))
  const its = context.figure(loopCurrent(net, other, both))
  const alone = speechOf(context, path, when(context, 'off-hook/speech'))
  const together = speechOf(context, path, both)
  const drive = driveLeft(context, path.sender, both)
  const send = lessWords(alone[0], together[0], drive, 'is heard', 'is not heard at all')
  const receive = lessWords(alone[1], together[1], 1, 'hears', 'hears nothing')
  const words = `With both up, ${place.place} gets ${amperes(mine)} and ${other.place} ${amperes(its)}; ${place.place} ${send} and ${receive}.`
  const consequences = together.map((figure, k) => ({ figure, ...(alone[k] ? { mended: alone[k] } : {}) }))
  const worse = amountOf(its) < amountOf(mine) ? its : mine
  const head = {
    check: twoSets.id,
    subject: place.place,
    path: [place, other].map(({ socket }) => nodeName(net, socket?.a ?? 0)),
    says: { good: words, bad: `${words} That is too little for two at once.` },
    mend: `speak from one set at a time: hang up ${other.place} while ${place.place} is in use, or the other way round`,
    consequences: [{ figure: mine }, { figure: its }, ...consequences],
  }
  const feeding = judge({ ...head, figure: worse, limit: current })
  const weakest = weakestOf(alone, together, drive)
  if (weakest === undefined) return feeding
  const hearing = judge({
    ...head,
    figure: weakest.figure,
    limit: { ...left, unit: 'A', value: left.value * weakest.before },
  })
  return graver(hearing, feeding) < 0 ? hearing : feeding
}

/** Send and receive of the examined set. */
function speechOf(context: CheckContext, path: Speaking, condition: Condition): readonly Figure[] {
  return speechPlans(path, condition)
    .slice(0, 2)
    .map((plan) => context.figure(plan))
}

/**
 * What is left of a transmitter's own voltage: sound moves its resistance by a share, so that it gives in proportion to
 * the direct voltage across it (design 6). Both points are known from the loop currents.
 */
function driveLeft(context: CheckContext, sender: Branch, both: Condition): number {
  const [alone = 0, together = 0] = [when(context, 'off-hook'), both].map((condition) =>
    amountOf(context.figure(directVoltage(sender, condition))),
  )
  return alone > 0 && together > 0 ? together / alone : 1
}

/** The direct voltage across a part; a step on the way, which no answer shows. */
function directVoltage({ id, from, to }: Branch, condition: Condition): FigurePlan {
  const question = { analysis: 'direct', condition } as const
  return {
    id: 'loop.voltage',
    subject: id,
    condition,
    unit: 'V',
    taps: [{ question, voltage: [from, to] }],
    value: ([volts = 0]) => Math.abs(volts),
  }
}

/** The direction of which the least is left, and what must be left of it; undefined where neither has anything alone. */
function weakestOf(
  alone: readonly Figure[],
  together: readonly Figure[],
  drive: number,
): { readonly figure: Figure; readonly before: number } | undefined {
  // a transmitter that gives less must be passed better for the same speech
  const both = together.map((figure, k) => ({
    figure,
    before: amountOf(alone[k]) / (k === 0 ? drive : 1),
  }))
  const share = ({ figure, before }: (typeof both)[number]): number => amountOf(figure) / before
  return both
    .filter(({ before }) => before >= NO_SPEECH)
    .sort((p, q) => share(p) - share(q))
    .at(0)
}

function amperes({ value }: Figure): string {
  return value === null ? 'nothing that is determined' : formatQuantity(value, 'A', 3)
}

/** `is heard 14 dB less`: what is left of one direction, and for sending also of what feeds the transmitter. */
function lessWords(
  alone: Figure | undefined,
  together: Figure | undefined,
  drive: number,
  verb: string,
  nothing: string,
): string {
  const passed = below(together?.value ?? null, alone?.value ?? null)
  const fed = below(drive, 1)
  if (passed === undefined || fed === undefined) return nothing
  const fall = passed + fed
  return `${verb} ${decibels(fall)} ${fall >= 0 ? 'less' : 'more'}`
}
