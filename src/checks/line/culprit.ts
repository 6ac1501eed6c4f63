/** Which set is behind a direct current that the whole line should not draw, by trying each of the likely ones. */

import type { Changes, Figure, FigurePlan } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { onHookLeakage } from '../../figures/loop.ts'
import { ringingCurrent } from '../../figures/ringing.ts'
import { soundersOf } from '../../figures/ringing-share.ts'
import type { CheckContext } from '../context.ts'
import { largestFirst, linksOfPlaces, type Mended, withExchangedPair, withoutSocket } from '../mends.ts'
import { everybody } from './everybody.ts'

/** A figure of the whole line, of any installation, with what is changed for it. */
export type LinePlan = (context: CheckContext, changes: Changes) => FigurePlan | undefined

/** Sets that are tried, those that draw the most on-hook first. */
const TRIED = 3

/** What open contacts leak is nothing, A. */
const NOTHING = 1e-6

interface Attempt {
  readonly mend: string
  readonly mended: Figure
  /** Current of all bells together that the mend leaves, A; the best mend leaves the most. */
  readonly bells: number
}

/**
 * Looks for the one set whose line cores, exchanged, bring a line's direct current to the limit or below, and of
 * several for the one that lets the bells have the most; failing that for the one whose unplugging does it.
 */
export function culpritMend(
  context: CheckContext,
  figure: Figure,
  plan: LinePlan,
  most: number,
  otherwise: string,
): Mended {
  const suspects = suspectsOf(context)
  const cleared = suspects
    .map((place) => exchanged(context, place, plan, most))
    .filter((one) => one !== undefined)
  const [best] = largestFirst(cleared, ({ bells }) => bells)
  const places = context.net.places.map(({ place }) => place).slice(0, TRIED)
  const found =
    best ??
    firstOf(places, (place) => inLine(context, place, plan, most)) ??
    firstOf(suspects, (place) => unplugged(context, place, plan, most))
  if (found === undefined) return { mend: otherwise }
  return { mend: found.mend, consequences: [{ figure, mended: found.mended }] }
}

function firstOf<T>(places: readonly string[], attempt: (place: string) => T | undefined): T | undefined {
  for (const place of places) {
    const made = attempt(place)
    if (made !== undefined) return made
  }
  return undefined
}

/** Places with a direct current of their own on-hook, the largest first. */
function suspectsOf(context: CheckContext): readonly string[] {
  const all = context.net.places
    .map((place) => ({
      place: place.place,
      draws: amountOf(context.figure(onHookLeakage(context.net, place, everybody('idle')))),
    }))
    .filter(({ draws }) => draws > NOTHING)
  return largestFirst(all, ({ draws }) => draws)
    .slice(0, TRIED)
    .map(({ place }) => place)
}

function exchanged(context: CheckContext, place: string, plan: LinePlan, most: number): Attempt | undefined {
  const installation = withExchangedPair(context.installation, place)
  if (installation === undefined) return undefined
  const trial = context.trial(installation)
  const asked = plan(trial, {})
  const mended = asked && trial.figure(asked)
  if (mended?.value == null || mended.value > most) return undefined
  return { mend: `exchange the two line cores of ${place}`, mended, bells: bellsOf(trial) }
}

/** The set plugged in before the apparatus that feeds its socket, if that is what draws the current. */
function inLine(context: CheckContext, place: string, plan: LinePlan, most: number): Attempt | undefined {
  const socket = context.net.places.find((one) => one.place === place)?.socket
  if (socket?.fedFrom === undefined) return undefined
  const installation = withoutSocket(context.installation, socket.name, socket.fedFrom)
  const trial = installation && context.trial(installation)
  const asked = trial && plan(trial, {})
  const mended = asked && trial?.figure(asked)
  if (mended?.value == null || mended.value > most) return undefined
  const mend = `what stands in line at ${socket.name} draws it: take one that loads the pair less`
  return { mend, mended, bells: 0 }
}

function unplugged(context: CheckContext, place: string, plan: LinePlan, most: number): Attempt | undefined {
  const asked = plan(context, { lifted: linksOfPlaces(context, [place]) })
  const mended = asked && context.figure(asked)
  if (mended?.value == null || mended.value > most) return undefined
  return { mend: `unplug ${place} and look for what leaks in it`, mended, bells: 0 }
}

/** Current of all bells while the line rings, added as sizes, A. */
function bellsOf(context: CheckContext): number {
  const frequency = context.net.line?.ringingFrequency
  if (frequency === undefined) return 0
  return soundersOf(context.net)
    .map((bell) => amountOf(context.figure(ringingCurrent(bell, everybody('ringing'), frequency))))
    .reduce((sum, one) => sum + one, 0)
}
