/** The dial's pulse contact held still: the loop while it is closed, and what is left while it is open. */
import type { Condition } from '../netlist/condition.ts'
import type { NetLine, Netlist, NetPlace } from '../netlist/netlist.ts'
import type { Changes } from '../solver/question.ts'
import type { FigurePlan } from './figure.ts'
import { lineCurrent } from './line-current.ts'
import { loopResistance } from './loop.ts'

/** Direct-current resistance of the set between its line wires while the pulse contact is closed, ohms. */
export function resistanceMade(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  const plan = loopResistance(net, place, condition, changes)
  return plan && { ...plan, id: 'dial.resistance-made' }
}

/** Direct current that the whole line still carries while the pulse contact of a set is open, A. */
export function leakageOpen(
  net: Netlist,
  place: NetPlace,
  line: NetLine,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  return lineCurrent(net, line, 'dial.leakage-open', condition, changes, place.place)
}
