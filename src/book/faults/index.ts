/** Every single fault of a set in its place, as data. */
import type { Netlist, NetPlace } from '../../netlist/netlist.ts'
import type { Hold, SetSheet } from '../../sheet/model.ts'
import type { SpecAt } from '../bench-test.ts'
import type { BookFault } from '../fault.ts'
import type { Odds } from '../odds.ts'
import type { Ground } from './ground.ts'
import { coreFaults } from './of-cores.ts'
import { partFaults } from './of-parts.ts'
import { socketFaults } from './of-sockets.ts'
import { dampFaults, strapFaults, unitFaults } from './of-terminals.ts'

/**
 * Every single fault of a set: of its parts, straps, cores, contacts and unit, between its terminals, and, where it is
 * plugged in, of the sockets, cables and exchange legs that bring the line to it. Same netlist, same order, same ids.
 *
 * A part that is broken and one that is not there are two faults though they read alike, since they are found and
 * mended differently; the same thing gone wrong in the same way is one fault.
 * @param holds how each strap is held, as its sheet says; a strap that is not named counts as screwed
 */
export function faultsOf(
  net: Netlist,
  place: NetPlace,
  odds: Odds,
  holds: Readonly<Record<string, Hold>> = {},
): readonly BookFault[] {
  const ground: Ground = { net, place, odds, holds }
  return [
    ...partFaults(ground),
    ...strapFaults(ground),
    ...coreFaults(ground),
    ...unitFaults(ground),
    ...dampFaults(ground),
    ...socketFaults(ground),
  ]
}

/** How each strap of a set is held, by its name. */
export function holdsOf({ straps }: Pick<SetSheet, 'straps'>): Readonly<Record<string, Hold>> {
  return Object.fromEntries(Object.entries(straps).map(([name, { hold }]) => [name, hold]))
}

/** What the parts are, by their index in the netlist, with the values that a fault gives them. */
export function variantSpecs(net: Netlist, { changes }: Pick<BookFault, 'changes'>): SpecAt {
  return (part) => {
    const change = changes.find((one) => 'instead' in one && one.instead.part === part)
    const spec = change !== undefined && 'instead' in change ? change.instead.spec : net.parts[part]?.spec
    if (spec === undefined) throw new RangeError(`no part has the index ${part}`)
    return spec
  }
}
