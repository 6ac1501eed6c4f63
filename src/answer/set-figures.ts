/** The figures of a set in its place, and of the line that it shares with others, as an answer lists them. */

import { type CheckContext, hasDial, when } from '../checks/context.ts'
import { leakageOpen, resistanceMade } from '../figures/dial.ts'
import type { Figure, FigurePlan } from '../figures/figure.ts'
import { lineCurrent, ringingLineCurrent, tripMargin } from '../figures/line-current.ts'
import {
  directCurrent,
  leakageRinging,
  loopCurrent,
  loopResistance,
  loopVoltage,
  onHookLeakage,
} from '../figures/loop.ts'
import { ringingCurrent, ringingVoltage, withRole } from '../figures/ringing.ts'
import { LOAD_NAMES } from '../figures/ringing-definitions.ts'
import { ringingLoad } from '../figures/ringing-load.ts'
import { ringingPower, ringingShare, ringingSocketVoltage } from '../figures/ringing-share.ts'
import { speechPlans } from '../figures/speech.ts'
import type { NetLine } from '../netlist/netlist.ts'

/** How far to go: `checked` has the ringing load by the line's own definition only, `all` by every one. */
export type Extent = 'checked' | 'all'

/** A plan that may be wanted or not. */
type Plans = readonly (FigurePlan | undefined)[]

/**
 * All figures of this version for one set, or those that are wanted; those that need a line are left out without one.
 */
export function setFigures(
  context: CheckContext,
  isWanted: Wanted = EVERY,
  extent: Extent = 'checked',
): readonly Figure[] {
  return read(context, setPlans(context, extent), isWanted)
}

/** The figures of the line itself, everybody on-hook: once for all sets that stand on it. */
export function lineFigures(context: CheckContext, isWanted: Wanted = EVERY): readonly Figure[] {
  return read(context, linePlans(context), isWanted)
}

/** The plans behind `lineFigures`, where they are wanted, and behind `setFigures`; the same list for the same wiring. */
export function plansOf(context: CheckContext, withLine: boolean, extent: Extent): readonly FigurePlan[] {
  const plans = [...(withLine ? linePlans(context) : []), ...setPlans(context, extent)]
  return plans.filter((plan) => plan !== undefined)
}

/** Which figures are wanted. */
type Wanted = (plan: FigurePlan) => boolean
const EVERY: Wanted = () => true

function read(context: CheckContext, plans: Plans, isWanted: Wanted): readonly Figure[] {
  return plans
    .filter((plan) => plan !== undefined)
    .filter(isWanted)
    .map((plan) => context.figure(plan))
}

/** What everybody on-hook leaves of the line, in each of its states. */
const QUIET = { line: 'idle', sets: {} } as const
const RINGING = { line: 'ringing', sets: {} } as const

function linePlans({ net }: CheckContext): Plans {
  const { line } = net
  if (line === undefined) return []
  return [
    lineCurrent(net, line, 'leakage.on-hook', QUIET),
    ...(line.ringingFrequency === undefined
      ? []
      : [
          ringingLineCurrent(net, line, RINGING),
          lineCurrent(net, line, 'leakage.ringing', RINGING),
          tripMargin(net, line, RINGING),
        ]),
  ]
}

function setPlans(context: CheckContext, extent: Extent): Plans {
  const { net, place } = context
  const { line } = net
  if (line === undefined || place.socket === undefined) return []
  const off = when(context, 'off-hook')
  const on = when(context, 'on-hook')
  const [sender] = withRole(net, place, 'sender')
  const [receiver] = withRole(net, place, 'receiver')
  const bells = withRole(net, place, 'sounder')
  return [
    loopCurrent(net, place, off),
    loopVoltage(place, off),
    loopResistance(net, place, off),
    sender && directCurrent('transmitter.current', sender, off),
    receiver && directCurrent('receiver.direct-current', receiver, off),
    onHookLeakage(net, place, on),
    ...bells.map((bell) => directCurrent('bell.direct-current', bell, on)),
    ...ringingPlans(context, line, extent),
    ...dialPlans(context, line),
    ...(sender === undefined || receiver === undefined
      ? []
      : speechPlans({ line, sender, receiver }, when(context, 'off-hook/speech'))),
  ]
}

function ringingPlans(context: CheckContext, line: NetLine, extent: Extent): Plans {
  const { net, place } = context
  const { ringingFrequency, ringingHarmonics } = line
  if (ringingFrequency === undefined) return []
  const ringing = when(context, 'on-hook/ringing')
  const bells = withRole(net, place, 'sounder')
  const own = line.sheet.limits['load by']
  const names = extent === 'all' ? LOAD_NAMES : LOAD_NAMES.filter((name) => name === own)
  return [
    ...bells.flatMap((bell) => [
      ringingCurrent(bell, ringing, ringingFrequency, ringingHarmonics),
      ringingVoltage(bell, ringing, ringingFrequency, ringingHarmonics),
      ringingPower(bell, ringing, ringingFrequency, ringingHarmonics),
      ringingShare(net, bell, ringing, ringingFrequency),
    ]),
    ringingSocketVoltage(place, line, ringing),
    leakageRinging(net, place, ringing),
    ...names.map((name) => ringingLoad(net, place, name, ringing)),
  ]
}

function dialPlans(context: CheckContext, line: NetLine): Plans {
  const { net, place } = context
  if (!hasDial(context)) return []
  return [
    resistanceMade(net, place, when(context, 'off-hook/make')),
    leakageOpen(net, place, line, when(context, 'off-hook/break')),
  ]
}
