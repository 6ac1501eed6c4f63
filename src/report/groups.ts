/** Things that are alike in several sets, taken together. */
import { type About, alikeBut, placeAbout, withoutPlace } from './about-place.ts'

/** Several of one sort, the first one speaking for all. */
export interface Group<T> {
  readonly first: T
  readonly all: readonly T[]
  /** Places that they are about, each once, undefined for the line as a whole. */
  readonly places: readonly (string | undefined)[]
}

/** Groups what differs in its place and its figures alone, in the order in which the groups come up. */
export function grouped<T extends About>(
  all: readonly T[],
  places: readonly string[],
  keyOf: (one: T) => string,
): readonly Group<T>[] {
  const groups = new Map<string, T[]>()
  for (const one of all) {
    const key = alikeBut(withoutPlace(keyOf(one), placeAbout(one, places)))
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()].flatMap((members) => {
    const [first] = members
    if (first === undefined) return []
    const at = [...new Set(members.map((one) => placeAbout(one, places)))]
    return [{ first, all: members, places: at }]
  })
}
