/** `based on`: what a variant says laid over what its base says, each value keeping its own place. */
import type { Place, Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { entriesOf, placesOf, type RawEntry, type RawMap, scalarsOf, textOf, under } from './raw.ts'
import { oneOf, ticked, write, wrong } from './wording.ts'

/** Keys of the variant alone: they say how it is made from its base. */
const OWN_KEYS = ['based on', 'without']

/** Lays a variant over its base: maps merge by key, lists and scalars replace. */
export function overlay(base: RawMap, variant: RawMap): RawMap {
  const entries = new Map(base.entries)
  for (const [key, entry] of variant.entries) {
    const before = entries.get(key)?.value
    const value =
      before?.shape === 'map' && entry.value.shape === 'map' ? overlay(before, entry.value) : entry.value
    entries.set(key, { place: entry.place, value })
  }
  return { shape: 'map', place: variant.place, entries }
}

/**
 * The variant as if it had been written in full: the base without what `without` takes away, the variant on top.
 * A path that the base does not have is a problem, named with the nearest one.
 */
export function merge(base: RawMap, variant: RawMap, problems: Problem[]): RawMap {
  const taken = scalarsOf(under(variant, 'without')).reduce(
    (left, path) => {
      const removed = remove(left, path.text.split('.'))
      if (removed !== undefined) return removed
      problems.push(unknownPath(base, path.text, path.place))
      return left
    },
    dropped(base, OWN_KEYS),
  )
  return overlay(taken, variant)
}

/** The same map without some of its keys. */
export function dropped(map: RawMap, keys: readonly string[]): RawMap {
  const entries = new Map(map.entries)
  for (const key of keys) entries.delete(key)
  return { ...map, entries }
}

/** The same map without what a path names; undefined when it names nothing. */
function remove(map: RawMap, path: readonly string[]): RawMap | undefined {
  const [key = '', ...rest] = path
  const entry = map.entries.get(key)
  if (entry === undefined) return undefined
  if (rest.length === 0) return dropped(map, [key])
  const value = entry.value.shape === 'map' ? remove(entry.value, rest) : undefined
  if (value === undefined) return undefined
  const entries = new Map<string, RawEntry>(map.entries)
  entries.set(key, { place: entry.place, value })
  return { ...map, entries }
}

function unknownPath(base: RawMap, path: string, place: Place): Problem {
  const parent = path.split('.').slice(0, -1)
  const inside = parent.reduce((at: RawMap['entries'], key) => entriesOf(at.get(key)?.value), base.entries)
  const prefix = parent.map((key) => `${key}.`).join('')
  const there = [...inside.keys()].filter((key) => !HEAD.has(key)).map((key) => `${prefix}${key}`)
  const expected = there.length === 0 ? 'a path that the base has, such as `straps.B2-B3`' : oneOf(there, '')
  return wrong(
    'name-unknown',
    place,
    `${ticked(path)}, which ${nameOf(base)} does not have`,
    expected,
    write(nearest(path, placesOf(base).keys())),
  )
}

const HEAD: ReadonlySet<string> = new Set(['ringproof', 'sheet', 'name', ...OWN_KEYS])

function nameOf(base: RawMap): string {
  return ticked(textOf(under(base, 'name')) ?? 'the base')
}
