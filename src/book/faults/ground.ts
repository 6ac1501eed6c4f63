/** What faults are enumerated from, and how likely each of several equal ones is. */
import type { Netlist, NetPlace } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import type { Hold } from '../../sheet/model.ts'
import type { BookFault } from '../fault.ts'
import type { Odds, Weighed } from '../odds.ts'

/** A set in its place, and what is known of faults in general. */
export interface Ground {
  readonly net: Netlist
  readonly place: NetPlace
  readonly odds: Odds
  /** How each strap is held, by its name; a strap that is not named counts as screwed. */
  readonly holds: Readonly<Record<string, Hold>>
}

/** A fault before it is weighed. */
export type Draft = Omit<BookFault, 'weight' | 'source'>

/** Ohms of a link that should not be there, as of any other strap. Common practice, no source. */
export const LINK = 0.01

/** One weight for all of these, since it counts sets and not the ways in which it could happen: each gets its share. */
export function share({ weight, source }: Weighed, drafts: readonly Draft[]): readonly BookFault[] {
  return drafts.map((draft) => ({ ...draft, weight: weight / drafts.length, source }))
}

/** An id of the set without its place: `B3`, `handset.r2`. */
export function short({ place }: Ground, id: string): string {
  const head = `${place.place}/`
  return id.startsWith(head) ? id.slice(head.length) : id
}

/** A node of the set as its sheet names it. */
export function nodeShort(ground: Ground, node: number): string {
  return short(ground, nodeName(ground.net, node))
}

/** Every two of a list, in its order. */
export function pairsOf<T>(items: readonly T[]): readonly (readonly [T, T])[] {
  return items.flatMap((one, k) => items.slice(k + 1).map((two): [T, T] => [one, two]))
}
