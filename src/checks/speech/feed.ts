/** Whether a transmitter is fed. Without direct current its grains give nothing, however well speech passes them. */

import type { Changes, Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { directCurrent, loopCurrent } from '../../figures/loop.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { type CheckContext, when } from '../context.ts'
import { shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { VerdictLimit } from '../rule.ts'

/** Direct current that feeds a transmitter off-hook, A. */
export function feedOf(context: CheckContext, sender: Branch, changes: Changes = {}): Figure {
  return context.figure(directCurrent('transmitter.current', sender, when(context, 'off-hook'), changes))
}

/** The least that must feed it: a share of the loop current, or of the least that makes a loop where that is more. */
export function leastFeed(context: CheckContext): VerdictLimit {
  const share = limitOf(context.limits, 'transmitter-fed')
  const made = limitOf(context.limits, 'loop-make').value
  const loop = amountOf(context.figure(loopCurrent(context.net, context.place, when(context, 'off-hook'))))
  return { ...shown(share), unit: 'A', value: share.value * Math.max(loop, made) }
}

/** Whether a figure has a number that is at least its limit's. */
export function isGood({ value }: Figure, limit: Pick<VerdictLimit, 'value'>): boolean {
  return value !== null && value >= limit.value
}
