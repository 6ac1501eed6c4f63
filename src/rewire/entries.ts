/** Changed copies of a set's maps. Like the reader's they have no prototype, so that no name meets an object's. */
import type { Place } from '../problem.ts'

/** Names to values, as sheets have them. */
type Entries<T> = Readonly<Record<string, T>>

/** A value by its name; names that every object has are not found. */
export function entryOf<T>(entries: Entries<T>, name: string): T | undefined {
  return Object.hasOwn(entries, name) ? entries[name] : undefined
}

/** The same entries and one more, or one replaced where it stood. */
export function withEntry<T>(entries: Entries<T>, name: string, value: T): Entries<T> {
  return Object.assign(Object.create(null), entries, { [name]: value })
}

/** The same entries without one. */
export function withoutEntry<T>(entries: Entries<T>, name: string): Entries<T> {
  const kept = Object.entries(entries).filter(([key]) => key !== name)
  return Object.assign(Object.create(null), Object.fromEntries(kept))
}

/** The places after what stands under these paths was changed by a move; unchanged for a move that is written nowhere. */
export function changedAt(
  places: ReadonlyMap<string, Place>,
  paths: readonly string[],
  place: Place | undefined,
): ReadonlyMap<string, Place> {
  return place === undefined ? places : new Map([...places, ...paths.map((path) => [path, place] as const)])
}

/** The places after something new came under a path: what is said of the path and below it is said of the new. */
export function movedTo(
  places: ReadonlyMap<string, Place>,
  path: string,
  place: Place | undefined,
): ReadonlyMap<string, Place> {
  const moved = forgotten(places, path)
  return place === undefined ? moved : moved.set(path, place)
}

/** The places without a path and what is below it. */
export function forgotten(places: ReadonlyMap<string, Place>, path: string): Map<string, Place> {
  return new Map([...places].filter(([key]) => key !== path && !key.startsWith(`${path}.`)))
}
