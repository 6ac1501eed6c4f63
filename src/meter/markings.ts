/** What the resistors of a set are marked with, for whoever looks for one or replaces it. */
import type { Netlist, NetPlace } from '../netlist/netlist.ts'
import type { PartMarking } from '../parts/kind.ts'

/** One part with its marking. */
export interface Marked extends PartMarking {
  /** `place/part` */
  readonly part: string
}

/** Every part of a place whose kind is marked with its value, in the order of the sheet. */
export function markingsOf({ parts }: Netlist, { place }: NetPlace): readonly Marked[] {
  return parts
    .filter((part) => part.place === place)
    .flatMap(({ id, law, spec }) => {
      const marking = law.marking?.(spec)
      return marking === undefined ? [] : [{ part: id, ...marking }]
    })
}
