/** Cords, the plug, and where cores land. */
import type { Place } from '../problem.ts'
import type { Checker } from './checker.ts'
import { entriesOf, type Raw, type RawMap, type RawScalar, textOf, under } from './raw.ts'
import type { Strips } from './strips.ts'

/** The cores of all cords with such a far end. */
function coresOf(root: RawMap, farEnd: string): ReadonlyMap<string, Raw> {
  const cores = new Map<string, Raw>()
  for (const { value } of entriesOf(under(root, 'cords')).values()) {
    if (textOf(under(value, 'ends in')) !== farEnd) continue
    for (const [name, core] of entriesOf(under(value, 'cores'))) cores.set(name, core.value)
  }
  return cores
}

/** Names of the cores that end in the handset. */
export function handsetCores(root: RawMap): ReadonlySet<string> {
  return new Set(coresOf(root, 'handset').keys())
}

/** Every core lands on a terminal that exists or is parked; every contact of the plug has a core of its own. */
export function checkCords(check: Checker, strips: Strips): void {
  for (const { value } of entriesOf(under(check.root, 'cords')).values()) {
    for (const core of entriesOf(under(value, 'cores')).values())
      strips.check(under(core.value, 'lands'), ['parked'])
  }
  checkFarEnds(check)
  const cores = coresOf(check.root, 'plug')
  const contacts = entriesOf(under(under(check.root, 'plug'), 'contacts'))
  const words: RawScalar[] = []
  for (const { value } of contacts.values()) {
    check.known(value, cores.keys(), 'core', 'a core of the cord that ends in `plug`')
    const word = check.word(value)
    if (word !== undefined) words.push(word)
  }
  check.once(words, 'core')
}

/** Two cords that end in the same thing cannot both have a core of one name: their far ends are one point. */
function checkFarEnds(check: Checker): void {
  const seen = new Map<string, Place>()
  for (const { value } of entriesOf(under(check.root, 'cords')).values()) {
    const farEnd = textOf(under(value, 'ends in'))
    for (const [name, { place }] of entriesOf(under(value, 'cores'))) {
      const first = seen.get(`${farEnd}.${name}`)
      if (first === undefined) seen.set(`${farEnd}.${name}`, place)
      else check.twice(name, 'core', place, first)
    }
  }
}
