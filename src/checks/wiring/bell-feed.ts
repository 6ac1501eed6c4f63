/** Whence a bell gets its current: by the ringing lead, or from the pair through a capacitor of the set's own. */

import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { conducting, without } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import { alone } from '../bell/rings-alone.ts'
import { type CheckContext, plugLinks, when, wireAt } from '../context.ts'
import { bellCurrent } from './bell-ends.ts'

/** The ringing contact of the set's plug; of a set in no socket, the one that would meet a ringing lead. */
export function leadOf(context: CheckContext): number | undefined {
  const { socket, plug } = context.place
  return wireAt(context, 'ringing') ?? (socket === undefined ? plug[3] : undefined)
}

/** Whether anything in the set leads from a node to an end of the bell, be it a part; past the bell itself. */
function meetsBell(context: CheckContext, bell: Branch, node: number | undefined): boolean {
  if (node === undefined) return false
  const { net } = context
  const all = conducting(net, when(context, 'on-hook'), 'alternating')
  const choice = without(all, [bell.index, ...plugLinks(context)])
  return [bell.from, bell.to].some((end) => pathBetween(net, choice, node, end) !== undefined)
}

/** Whether the ringing lead comes to the bell by any way inside the set, right or wrong. */
export function leadMeetsBell(context: CheckContext, bell: Branch): boolean {
  return meetsBell(context, bell, leadOf(context))
}

/** Whether both line wires come to the bell inside the set. */
export function pairMeetsBell(context: CheckContext, bell: Branch): boolean {
  const { place } = context
  const wires = [wireAt(context, 'a') ?? place.meets[5], wireAt(context, 'b') ?? place.meets[2]]
  return wires.every((wire) => meetsBell(context, bell, wire))
}

/** What a bell gets that no ringing lead meets, its set the only one, where that is enough to ring it. */
export function rungFromPair(context: CheckContext, bell: Branch): Figure | undefined {
  const sounds = bell.part.law.sounds?.(bell.part.spec)
  if (sounds === undefined || sounds.never !== undefined) return undefined
  if (leadMeetsBell(context, bell) || !pairMeetsBell(context, bell)) return undefined
  const [rings] = bellCurrent(context, bell, alone(context))
  return amountOf(rings?.figure) >= sounds.current ? rings?.figure : undefined
}
