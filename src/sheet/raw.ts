/**
 * A sheet between its text and its meaning: maps, lists and scalars, each knowing where it is written.
 * Maps are `Map`s, so that no key of a sheet ever meets an object's prototype.
 */
import type { Place } from '../problem.ts'

/** One key of a map: where the key stands, and its value. */
export interface RawEntry {
  readonly place: Place
  readonly value: Raw
}

export interface RawMap {
  readonly shape: 'map'
  readonly place: Place
  readonly entries: ReadonlyMap<string, RawEntry>
}

export interface RawList {
  readonly shape: 'list'
  readonly place: Place
  readonly items: readonly Raw[]
}

export interface RawScalar {
  readonly shape: 'scalar'
  readonly place: Place
  /** As YAML's core schema reads it. */
  readonly value: string | number | boolean | null
  /** As written, without quotation marks. */
  readonly text: string
  /** Columns between the value's first column and the text's: 1 behind a quotation mark. */
  readonly indent: number
}

/** Any value of a sheet. */
export type Raw = RawMap | RawList | RawScalar

const NOTHING: ReadonlyMap<string, RawEntry> = new Map()

/** The entries of a map; none for anything else, which the schema has complained about. */
export function entriesOf(raw: Raw | undefined): ReadonlyMap<string, RawEntry> {
  return raw?.shape === 'map' ? raw.entries : NOTHING
}

/** The value behind a key of a map. */
export function under(raw: Raw | undefined, key: string): Raw | undefined {
  return entriesOf(raw).get(key)?.value
}

/** The items of a list; none for anything else. */
export function itemsOf(raw: Raw | undefined): readonly Raw[] {
  return raw?.shape === 'list' ? raw.items : []
}

/** The words of a list that are texts. */
export function scalarsOf(raw: Raw | undefined): readonly RawScalar[] {
  return itemsOf(raw).filter((item) => item.shape === 'scalar')
}

/** A scalar's text; undefined for anything else and for nothing. */
export function textOf(raw: Raw | undefined): string | undefined {
  return raw?.shape === 'scalar' && raw.value !== null ? raw.text : undefined
}

/** What the schemas read: objects without prototype, arrays and scalars. */
export function plainOf(raw: Raw): unknown {
  if (raw.shape === 'scalar') return raw.value
  if (raw.shape === 'list') return raw.items.map(plainOf)
  const object: Record<string, unknown> = Object.create(null)
  for (const [key, entry] of raw.entries) object[key] = plainOf(entry.value)
  return object
}

/** Where every path of a sheet is written: keys by their key, items of lists by their value. */
export function placesOf(root: RawMap): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>()
  const walk = (raw: Raw, path: string): void => {
    const prefix = path === '' ? '' : `${path}.`
    for (const [key, entry] of entriesOf(raw)) {
      places.set(`${prefix}${key}`, entry.place)
      walk(entry.value, `${prefix}${key}`)
    }
    itemsOf(raw).forEach((item, index) => {
      places.set(`${prefix}${index}`, item.place)
      walk(item, `${prefix}${index}`)
    })
  }
  walk(root, '')
  return places
}
