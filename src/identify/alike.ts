/** Known sets that nothing in reach tells apart. */
import { groupIndex, groupsOf } from '../inference/groups.ts'
import type { Hypotheses } from '../inference/hypotheses.ts'
import { type Column, hypothesesOf } from './columns.ts'
import type { KnownSet } from './known.ts'

/** Sets by the groups that they fall into. */
export interface Alike {
  readonly groups: readonly (readonly number[])[]
  /** The group of each set, by its place among the groups. */
  readonly index: Int32Array
  readonly among: Hypotheses
}

/** Groups of sets that differ by less than the meter's error in every reading and in no sighting that may be asked for. */
export function alikeBy(known: readonly KnownSet[], columns: readonly Column[], none: number): Alike {
  const among = hypothesesOf(known, columns, none)
  const groups = groupsOf(
    among,
    columns.map((_, k) => k),
  )
  return { groups, index: groupIndex(groups, known.length), among }
}
