/** The legs of the exchange: those that feed the line, and those that ring it. */
import type { LineState } from '../netlist/condition.ts'
import type { Branch, NetLine, Netlist } from '../netlist/netlist.ts'

/** The legs that take part while the line is in a state: the feed's two, or the ringing supply's two. */
export function exchangeLegs(net: Netlist, line: NetLine, state: LineState): readonly Branch[] {
  return line.exchange
    .filter((index) => !line.termination.includes(index))
    .map((index) => net.branches[index])
    .filter((branch) => branch?.part.during?.includes(state) === true)
    .filter((branch) => branch !== undefined)
}
