/** Ids as a reader needs them: the place is left out while there is only one. */
import type { Condition } from '../netlist/condition.ts'
import { numbersBehind } from './numbers-behind.ts'
import type { Page } from './paint.ts'

/** The one place that conditions speak of, undefined when they speak of none or of several. */
export function solePlace(conditions: Iterable<Condition>): string | undefined {
  const places = new Set<string>()
  for (const { sets } of conditions) for (const place of Object.keys(sets)) places.add(place)
  const [only] = places
  return places.size === 1 ? only : undefined
}

/** What stands before the slash in every id that has one, undefined where ids differ. */
export function commonPlace(ids: Iterable<string>): string | undefined {
  const places = new Set<string>()
  for (const id of ids) if (id.includes('/')) places.add(id.slice(0, id.indexOf('/')))
  const [only] = places
  return places.size === 1 ? only : undefined
}

/** An id without its place. */
export function shortId(id: string, place: string | undefined): string {
  return place !== undefined && id.startsWith(`${place}/`) ? id.slice(place.length + 1) : id
}

/** Terminals in order: `handset.r2 – B3 – B4 – handset.t2`, plug contacts with both their numbers. */
export function pathText(ids: readonly string[], place: string | undefined, page: Page): string {
  return ids.map((id) => shortId(id, place) + numbersBehind(id, page)).join(' – ')
}

/** What a figure or verdict is about, every id in it shortened; the place itself stays. */
export function subjectText(subject: string, place: string | undefined): string {
  return subject
    .split(/(\s+)/)
    .map((word) => shortId(word, place))
    .join('')
}
