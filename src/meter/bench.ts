/** A netlist with its loose values, and the same netlist at their ends, each made once. */
import type { Netlist } from '../netlist/netlist.ts'
import type { Kit } from './instrument.ts'
import { polarBranches } from './polar.ts'
import { type Change, type Loose, looseValues, withChanges } from './vary.ts'

/** What a table of readings is made on. */
export interface Bench {
  readonly net: Netlist
  readonly kit: Kit
  readonly loose: readonly Loose[]
  /** Whether a part's direct-current law bends. */
  readonly bent: boolean
  /** Branches, by index, that carry a current one way round and hardly the other. */
  readonly polar: ReadonlySet<number>
  /** The netlist with some values at an end; equal choices give the same netlist. */
  at(choice: readonly Choice[]): Netlist
}

/** A loose value, by its index, at one of its ends. */
export interface Choice {
  readonly loose: number
  readonly end: 'least' | 'most'
}

/** Lays a netlist out for readings. */
export function benchOf(net: Netlist, kit: Kit): Bench {
  const loose = looseValues(net, kit.habits['transmitter-spread'].value)
  const made = new Map<string, Netlist>()
  return {
    net,
    kit,
    loose,
    bent: net.parts.some((part) => part.law.bends?.(part.spec).includes('direct')),
    polar: polarBranches(net),
    at(choice) {
      const key = choice.map(({ loose: k, end }) => `${k}${end}`).join()
      const known = made.get(key)
      if (known !== undefined) return known
      const changes = choice.flatMap(({ loose: k, end }): Change[] => {
        const one = loose[k]
        return one === undefined ? [] : [{ loose: one, factor: one[end] }]
      })
      const fresh = withChanges(net, changes)
      made.set(key, fresh)
      return fresh
    },
  }
}
