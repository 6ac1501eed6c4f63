/** The figures of a set in its place, as an answer lists them. */

import { type CheckContext, when } from '../checks/context.ts'
import type { Figure, FigurePlan } from '../figures/figure.ts'
import { directCurrent, loopCurrent, loopResistance, loopVoltage, onHookLeakage } from '../figures/loop.ts'
import { ringingCurrent, ringingVoltage, withRole } from '../figures/ringing.ts'
import { speechPlans } from '../figures/speech.ts'

/** All figures of this version for one set, or those that are wanted; those that need a line are left out without one. */
export function setFigures(
  context: CheckContext,
  isWanted: (plan: FigurePlan) => boolean = () => true,
): readonly Figure[] {
  return plansOf(context)
    .filter(isWanted)
    .map((plan) => context.figure(plan))
}

function plansOf(context: CheckContext): readonly FigurePlan[] {
  const { net, place } = context
  const { line } = net
  if (line === undefined || place.socket === undefined) return []
  const off = when(context, 'off-hook')
  const on = when(context, 'on-hook')
  const [sender] = withRole(net, place, 'sender')
  const [receiver] = withRole(net, place, 'receiver')
  const bells = withRole(net, place, 'sounder')
  const plans: (FigurePlan | undefined)[] = [
    loopCurrent(net, place, off),
    loopVoltage(place, off),
    loopResistance(net, place, off),
    sender && directCurrent('transmitter.current', sender, off),
    receiver && directCurrent('receiver.direct-current', receiver, off),
    onHookLeakage(net, place, on),
    ...bells.map((bell) => directCurrent('bell.direct-current', bell, on)),
  ]
  const { ringingFrequency, ringingHarmonics } = line
  if (ringingFrequency !== undefined) {
    const ringing = when(context, 'on-hook/ringing')
    for (const bell of bells) {
      plans.push(
        ringingCurrent(bell, ringing, ringingFrequency, ringingHarmonics),
        ringingVoltage(bell, ringing, ringingFrequency, ringingHarmonics),
      )
    }
  }
  if (sender !== undefined && receiver !== undefined) {
    plans.push(...speechPlans({ line, sender, receiver }, when(context, 'off-hook/speech')))
  }
  return plans.filter((plan) => plan !== undefined)
}
