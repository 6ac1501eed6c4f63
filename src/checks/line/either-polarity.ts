/** Does the set work with the pair either way round? Solved once more with the exchange reversed. */

import { exchangeReversed } from '../../figures/exchange-reversed.ts'
import type { Changes, Figure, FigurePlan } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { loopCurrent } from '../../figures/loop.ts'
import { ringingCurrent } from '../../figures/ringing.ts'
import type { NetLine } from '../../netlist/netlist.ts'
import { type CheckContext, hasHook, type Rule, roleBranches, when } from '../context.ts'
import { shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { largestFirst } from '../mends.ts'
import type { Verdict, VerdictLimit } from '../rule.ts'
import { ofLine, ringsFrom } from '../sheet-limit.ts'
import { unanswered } from '../unanswered.ts'

/** One thing that must be there either way round. */
interface Aspect {
  readonly what: string
  readonly limit: VerdictLimit
  plan(changes: Changes): FigurePlan
}

interface Compared {
  readonly what: string
  readonly limit: VerdictLimit
  readonly normal: Figure
  readonly reversed: Figure
}

/** A change by less than this share is none to speak of. */
const NOTABLE = 0.01

export const eitherPolarity: Rule = {
  id: 'line.either-polarity',
  asks: 'Does the set work with the pair either way round?',
  run(context) {
    const { net, place } = context
    const { line } = net
    const id = eitherPolarity.id
    if (line === undefined || place.socket === undefined)
      return [unanswered(context, id, 'no-line', 'The set stands on no line.')]
    const reversal = exchangeReversed(net, line)
    const compared = aspectsOf(context, line).map(({ what, limit, plan }) => ({
      what,
      limit,
      normal: context.figure(plan({})),
      reversed: context.figure(plan(reversal)),
    }))
    if (compared.length === 0) {
      const says = 'The set has neither a hook contact nor a bell to be tried.'
      return [unanswered(context, id, 'undetermined', says)]
    }
    return [verdictOf(context, compared)]
  },
}

/** What a set must do either way round: make the loop, stop the ringing, ring. */
function aspectsOf(context: CheckContext, line: NetLine): readonly Aspect[] {
  const { net, place } = context
  const { ringingFrequency } = line
  const hook = hasHook(context)
  const least = line.sheet.limits['loop current']?.least.value
  const trip = line.sheet.trip?.current.value
  const aspects: Aspect[] = []
  if (hook) {
    aspects.push({
      what: 'the loop current',
      limit:
        least === undefined
          ? shown(limitOf(context.limits, 'loop-make'))
          : ofLine(least, 'at-least', 'A', 'limits: loop current'),
      plan: (changes) => loopCurrent(net, place, when(context, 'off-hook'), 'loop.current', changes),
    })
  }
  if (hook && trip !== undefined && ringingFrequency !== undefined) {
    aspects.push({
      what: 'what stops the ringing',
      limit: ofLine(trip, 'at-least', 'A', 'trip: current'),
      plan: (changes) => loopCurrent(net, place, when(context, 'off-hook/ringing'), 'loop.current', changes),
    })
  }
  if (ringingFrequency === undefined) return aspects
  for (const bell of roleBranches(context, 'sounder')) {
    const sounds = bell.part.law.sounds?.(bell.part.spec)
    if (sounds === undefined || sounds.never !== undefined) continue
    aspects.push({
      what: 'the current in the bell',
      limit: ringsFrom(sounds.current),
      plan: (changes) =>
        ringingCurrent(
          bell,
          when(context, 'on-hook/ringing'),
          ringingFrequency,
          line.ringingHarmonics,
          changes,
        ),
    })
  }
  return aspects
}

/** Fails where something is enough one way round and too little the other; what fails both ways is not for this check. */
function verdictOf(context: CheckContext, compared: readonly Compared[]): Verdict {
  const base = { check: eitherPolarity.id, subject: context.place.place, path: [] }
  const gained = compared.find((one) => !isEnough(one, one.normal) && isEnough(one, one.reversed))
  const neither = compared.some((one) => !isEnough(one, one.normal) && !isEnough(one, one.reversed))
  // where something fails either way, turning the pair makes no set that works
  if (gained !== undefined && !neither) return onlyReversed(context, gained)
  const works = compared.filter((one) => isEnough(one, one.normal))
  const failing = compared.filter((one) => !works.includes(one)).map((one) => one.what)
  if (works.length === 0) {
    const says = `As it stands nothing works that could be lost with the pair reversed: too little is ${failing.join(', ')}. What fails is to be mended first.`
    return unanswered(context, eitherPolarity.id, 'undetermined', says, compared[0]?.reversed ?? null)
  }
  const lost = works.find((one) => !isEnough(one, one.reversed))
  const [most] = largestFirst(works, (one) => 1 - remaining(one))
  const worst = lost ?? most
  if (worst === undefined || worst.reversed.value === null) {
    const says = 'With the pair reversed at the exchange the figure is not determined.'
    return unanswered(context, eitherPolarity.id, 'undetermined', says, worst?.reversed ?? null)
  }
  const { what, limit, normal, reversed } = worst
  const margin = limit.value === 0 ? null : (worst.reversed.value - limit.value) / limit.value
  const consequences = compared.map((one) => ({ figure: one.reversed }))
  const all = { ...base, condition: reversed.condition, figure: reversed, limit, margin, consequences }
  if (lost !== undefined) {
    return {
      ...all,
      state: 'fails',
      says: `With the pair reversed at the exchange ${what} is lost; as it stands it is enough.`,
      mend: `keep the polarity as it is and mark the socket, or put a bridge of four diodes before what has one; as the pair lies, it gets ${milliamperes(normal)}`,
    }
  }
  const share = remaining(worst)
  const change =
    Math.abs(share - 1) < NOTABLE
      ? 'it makes no difference'
      : `most is lost of ${what}, ${Math.round(100 * (1 - share))} %`
  const already =
    failing.length === 0 ? {} : { remark: `Too little either way round: ${failing.join(', ')}.` }
  return {
    ...all,
    state: 'holds',
    says: `Nothing that works is lost with the pair reversed at the exchange: ${change}.`,
    ...already,
  }
}

/** A set that works one way round only, and not as the pair lies now. */
function onlyReversed({ place }: CheckContext, { what, limit, normal, reversed }: Compared): Verdict {
  return {
    check: eitherPolarity.id,
    subject: place.place,
    condition: normal.condition,
    state: 'fails',
    says: `As the pair lies ${what} is too little; with the pair reversed at the exchange it is enough. The set works one way round only.`,
    figure: normal,
    limit,
    margin: limit.value === 0 ? null : (amountOf(normal) - limit.value) / limit.value,
    path: [],
    consequences: [{ figure: normal, mended: reversed }],
    mend: 'turn the pair round where it comes into the house, and mark it; or put a bridge of four diodes before what works one way only',
  }
}

function isEnough({ limit }: Compared, figure: Figure): boolean {
  return amountOf(figure) >= limit.value
}

/** Less than this is what open contacts leak, A. */
const NOTHING = 1e-6

/** Reversed over normal, to the digits that matter; 1 where there is nothing to lose. */
function remaining({ normal, reversed }: Compared): number {
  const before = amountOf(normal)
  return before < NOTHING ? 1 : Number((amountOf(reversed) / before).toPrecision(6))
}

function milliamperes(figure: Figure): string {
  return `${(amountOf(figure) * 1e3).toPrecision(3)} mA`
}
