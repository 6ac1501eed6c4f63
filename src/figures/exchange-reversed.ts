/** The pair reversed on the exchange's side, without compiling anything again. */
import type { NetLine, Netlist, NetPart } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Changes } from '../solver/question.ts'
import { exchangeLegs } from './exchange-legs.ts'

/**
 * Changes after which each leg of the feed and of the ringing supply has the values of the other: battery, generator,
 * resistance and limit change places between the a wire and the b wire. The speech termination is the same either way.
 */
export function exchangeReversed(net: Netlist, line: NetLine): Changes {
  const pairs = (['idle', 'ringing'] as const).map((state) => exchangeLegs(net, line, state))
  const instead = pairs.flatMap(([one, other]) => {
    if (one === undefined || other === undefined) return []
    return [exchange(net, one.part, other.part), exchange(net, other.part, one.part)]
  })
  return { instead }
}

/** The part with the values of another, between its own ends. */
function exchange(
  net: Netlist,
  part: NetPart,
  other: NetPart,
): { readonly part: number; readonly spec: PartSpec } {
  const { from, to } = part.spec as PartSpec & { readonly from: string; readonly to: string }
  const spec: PartSpec & { readonly from: string; readonly to: string } = { ...other.spec, from, to }
  return { part: net.parts.indexOf(part), spec }
}
