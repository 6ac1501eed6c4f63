/** What mends a part that went wrong, where its mode does not say so itself. */

import type { Sort } from '../../netlist/netlist.ts'
import type { FaultFamily, FaultMode } from '../../parts/kind.ts'

/** Behind every mend that leads a hand to wires which the set's plug does not part from the line. */
export const LIVE =
  'the wires of a socket are live, and local codes and licensed practice decide who may work there'

/** As most parts are mended. */
const USUAL: Readonly<Record<FaultFamily, string>> = {
  open: 'look for a broken lead or a dry joint first; renew it where it is open itself',
  resists: 'clean and remake its joints; renew it where that does not help',
  shorted: 'look for solder or a bent lead across it first; renew it where it is shorted itself',
  leaky: 'renew it by one of the same value',
  'lost-value': 'renew it by one of the same value',
  drifted: 'renew it by one of the same value',
  'shorted-turns': 'renew it, or have it wound anew',
  packed: 'renew it',
  'weak-magnet': 'have its magnet charged again, or renew it',
  stuck: 'free it, or renew it',
  damp: 'dry and clean it; renew it where that does not last',
  turned: 'exchange its two ends',
}

/** Links are mended at their ends, and differently by what they are. */
const OF_LINKS: Readonly<Partial<Record<Sort, string>>> = {
  strap: 'tighten and clean its ends, or renew it',
  core: 'tighten its screw and look at its tag; renew the cord where the core itself is broken',
  plug: 'clean its contact and set its spring; renew the plug where that does not help',
}

const OF_SORTS: Readonly<Partial<Record<Sort, (mend: string) => string>>> = {
  socket: (mend) => `${mend}; ${LIVE}`,
  cable: () => `find the place with the line disconnected, and remake or renew the run; ${LIVE}`,
  exchange: () => 'report it to whoever runs the exchange; nothing in the set or the house mends it',
}

/** What mends a mode of a part of this sort. A hand in the set comes to no live wire once it is unplugged. */
export function mendOf(sort: Sort, { mend, family }: FaultMode): string {
  const plain = mend ?? OF_LINKS[sort] ?? USUAL[family]
  return OF_SORTS[sort]?.(plain) ?? unplugged(plain)
}

/** A mend in the set itself. */
export function unplugged(mend: string): string {
  return `with the set unplugged, ${mend}`
}
