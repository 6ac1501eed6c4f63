/** All bells of a line while it rings: what each gets, and what it needs. */

import { ringsAlone as ringsAloneCheck } from '../checks/bell/rings-alone.ts'
import type { CheckContext } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import { linksOfPlaces } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import type { Changes, Figure } from '../figures/figure.ts'
import { ringingCurrent } from '../figures/ringing.ts'
import { soundersOf } from '../figures/ringing-share.ts'
import type { Branch } from '../netlist/netlist.ts'
import { ringsFrom, sameBranch } from './measure.ts'

/** A bell among the others. */
export interface Ringing {
  readonly bell: Branch
  readonly place: string
  /** Least current that rings it, A. */
  readonly least: number
  readonly figure: Figure
  /** What it gets as a part of what it needs. */
  readonly share: number
}

/** Every bell that a current can ring, with what it gets; none on a line that does not ring. */
export function bellsTogether(context: CheckContext, changes: Changes = {}): readonly Ringing[] {
  const { net } = context
  if (net.line?.ringingFrequency === undefined) return []
  const plugged = new Set(net.places.filter(({ socket }) => socket !== undefined).map(({ place }) => place))
  return soundersOf(net).flatMap((bell): readonly Ringing[] => {
    const least = ringsFrom(bell)
    const { place } = bell.part
    const figure = currentOf(context, bell, changes)
    if (least === undefined || figure === undefined || !plugged.has(place)) return []
    return [{ bell, place, least, figure, share: (figure.value ?? 0) / least }]
  })
}

/**
 * The bells that ring, or would if their set were the only one; one that would not has another fault.
 * @param verdicts what was found already: whether a bell rings alone is not asked twice
 */
export function ableBells(context: CheckContext, verdicts: readonly Verdict[]): readonly Ringing[] {
  const known = new Map(
    verdicts
      .filter(({ check }) => check === ringsAloneCheck.id)
      .map(({ subject, state }) => [subject, state]),
  )
  return bellsTogether(context).filter((one) => {
    const state = known.get(one.bell.id)
    if (one.share >= 1 || state === 'holds' || state === 'marginal') return true
    return state !== 'fails' && ringsAlone(context, one)
  })
}

/** Those of some bells once something is changed. */
export function sameBells(
  context: CheckContext,
  bells: readonly Ringing[],
  changes: Changes,
): readonly Ringing[] {
  const own = new Set(bells.map(({ bell }) => bell.id))
  return bellsTogether(context, changes).filter(({ bell }) => own.has(bell.id))
}

/** What one bell gets, everybody on-hook. */
export function currentOf(context: CheckContext, bell: Branch, changes: Changes = {}): Figure | undefined {
  const { line } = context.net
  const here = sameBranch(context.net, bell)
  if (line?.ringingFrequency === undefined || here === undefined) return undefined
  const plan = ringingCurrent(
    here,
    everybody('ringing'),
    line.ringingFrequency,
    line.ringingHarmonics,
    changes,
  )
  return context.figure(plan)
}

/** Some bells with the sets of some places unplugged; theirs are left out. */
export function withoutPlaces(
  context: CheckContext,
  bells: readonly Ringing[],
  places: readonly string[],
): readonly Ringing[] {
  const left = bells.filter(({ place }) => !places.includes(place))
  return sameBells(context, left, { lifted: linksOfPlaces(context, places) })
}

/** The least share of all; infinite where there is no bell. */
export function leastShare(bells: readonly Ringing[]): number {
  return Math.min(...bells.map(({ share }) => share))
}

/** Whether a bell would ring if its set were the only one. */
function ringsAlone(context: CheckContext, { bell, place, least }: Ringing): boolean {
  const others = context.net.places.map((one) => one.place).filter((one) => one !== place)
  return (currentOf(context, bell, { lifted: linksOfPlaces(context, others) })?.value ?? 0) >= least
}
