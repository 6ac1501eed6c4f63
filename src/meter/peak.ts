/** How high a voltage climbs while it rings: the ringing rides on the battery, and a meter shows neither's top. */
import type { Netlist } from '../netlist/netlist.ts'
import { voltageBetween } from '../solver/solution.ts'
import { answered, held, type Leads, Unsettled } from './leads.ts'

/** Highest sizes of the voltages at two leads, V. */
export interface Peak {
  readonly between?: number
  /** The higher of the two leads against earth; absent where neither is joined to it. */
  readonly 'to earth'?: number
}

/**
 * The direct voltage and the top of the sine together, with no instrument in the way. A wave with harmonics has a
 * top of its own: its fundamental alone is taken.
 */
export function peakOf(net: Netlist, leads: Leads, frequency: number): Peak {
  try {
    const still = answered(net, held(leads))
    const ringing = answered(net, { ...held(leads), analysis: 'alternating', frequency })
    const top = (p: number, q: number): number | undefined => {
      const direct = voltageBetween(still, p, q)
      const swing = voltageBetween(ringing, p, q)
      if (direct === undefined && swing === undefined) return undefined
      return Math.abs(direct?.re ?? 0) + Math.SQRT2 * Math.hypot(swing?.re ?? 0, swing?.im ?? 0)
    }
    const between = top(leads.red, leads.black)
    const earth = net.nodeIndex.get('earth')
    const each = earth === undefined ? [] : [leads.red, leads.black].map((node) => top(node, earth))
    const tops = each.filter((one) => one !== undefined)
    return {
      ...(between === undefined ? {} : { between }),
      ...(tops.length === 0 ? {} : { 'to earth': Math.max(...tops) }),
    }
  } catch (error) {
    if (error instanceof Unsettled) return {}
    throw error
  }
}
