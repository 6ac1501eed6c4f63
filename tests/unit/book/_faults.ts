import { deliveredOdds } from 'ringproof/answer/odds-table'
import { stand } from 'ringproof/answer/standing'
import type { BookFault } from 'ringproof/book/fault'
import { faultsOf, holdsOf } from 'ringproof/book/faults/index'
import type { FigurePlan } from 'ringproof/figures/figure'
import { type Amount, freshVariants } from 'ringproof/figures/variants'
import { type Condition, conditionOf, readCondition } from 'ringproof/netlist/condition'
import { type Netlist, type NetPlace, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import type { SheetText } from 'ringproof/sheet/shelf'
import { DEMO } from '../../support/bench.ts'

/** A set in its place with all its faults. */
export interface Faulty {
  readonly net: Netlist
  readonly place: NetPlace
  readonly faults: readonly BookFault[]
  /** The fault of this id, with or without its place. */
  fault(id: string): BookFault
  /** A node of the set. */
  node(name: string): number
  when(written: string): Condition
  /** A figure as the sheet has it, or with a fault; solved afresh. */
  read(plan: FigurePlan | undefined, fault?: string): Amount
}

/** A set that is asked for by name or by text; the first place of premises where none is named. */
export function faulty(target: string | SheetText, on?: string, at?: string): Faulty {
  const asked = typeof target === 'string' ? { target } : { target: '', text: target }
  const { net, places, installation } = stand({ ...asked, ...(on === undefined ? {} : { on }) }, DEMO)
  const place = placeOf(net, at ?? places[0] ?? '')
  const set = installation.sets[place.place]?.set
  if (set === undefined) throw new Error(`no set stands at ${place.place}`)
  const faults = faultsOf(net, place, deliveredOdds(), holdsOf(set))
  const fault = (id: string): BookFault => {
    const found = faults.find((one) => one.id === id || one.id === `${place.place}/${id}`)
    if (found === undefined) throw new Error(`no fault is called ${id}`)
    return found
  }
  return {
    net,
    place,
    faults,
    fault,
    node: (name) => nodeOf(net, `${place.place}/${name}`),
    when(written) {
      const read = readCondition(written)
      if (read === undefined) throw new Error(written)
      return conditionOf(place.place, read)
    },
    read(plan, id) {
      if (plan === undefined) throw new Error('there is no plan')
      const { changes } = id === undefined ? { changes: [] } : fault(id)
      const out = new Float64Array(1)
      freshVariants(net, [plan], changes).read([...changes.keys()], out)
      return out[0] ?? 0
    },
  }
}
