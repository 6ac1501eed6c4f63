/** What the schema of a set cannot see: one question a function, all on the raw tree. */

import { nearest } from '../quantities/nearest.ts'
import { checkCords, handsetCores } from './check-cords.ts'
import { checkJoints, endsOf } from './check-ends.ts'
import { checkSlots } from './check-slots.ts'
import { type Checker, checkSpecs, partsOf, type SheetPart } from './checker.ts'
import type { UnitSheet } from './model.ts'
import { entriesOf, itemsOf, type RawScalar, scalarsOf, under } from './raw.ts'
import type { ReadUnit } from './reading.ts'
import { STRAP_NAME } from './schema-set.ts'
import { Strips } from './strips.ts'
import { ticked } from './wording.ts'

/** Checks a set, its bases merged, and answers with the units that its slots name. */
export function checkSet(check: Checker, readUnit: ReadUnit): ReadonlyMap<string, UnitSheet> {
  const strips = new Strips(check)
  const parts = partsOf(under(check.root, 'parts'))
  const handset = partsOf(under(check.root, 'handset'))
  const contacts = partsOf(under(check.root, 'contacts'))
  const joints = scalarsOf(under(check.root, 'joints'))
  checkIds(check)
  checkStraps(check, strips)
  checkContacts(check)
  checkSpecs(check, [...parts, ...handset])
  check.once(joints, 'joint')
  const ends = [...parts, ...contacts].flatMap(endsOf)
  for (const end of ends) checkEnd(check, strips, joints, end)
  checkJoints(check, joints, ends)
  checkHandset(check, handset)
  checkCords(check, strips)
  for (const spare of scalarsOf(under(check.root, 'spare'))) strips.check(spare)
  for (const { value } of entriesOf(under(check.root, 'touchable metal')).values()) {
    strips.check(value, ['none', 'earth'])
  }
  return checkSlots(check, strips, readUnit)
}

/** Maps whose names become ids of branches: one space, so that `place/name` means one thing. */
const ID_MAPS = ['contacts', 'parts', 'slots', 'cords', 'handset']

function checkIds(check: Checker): void {
  const seen = new Map<string, SheetPart['place']>()
  for (const map of ID_MAPS) {
    for (const [name, { place }] of entriesOf(under(check.root, map))) {
      const first = seen.get(name)
      if (first === undefined) seen.set(name, place)
      else check.twice(name, 'name', place, first)
    }
  }
}

/** A strap joins two different terminals that exist, and stands once, whichever end is named first. */
function checkStraps(check: Checker, strips: Strips): void {
  const seen = new Map<string, SheetPart['place']>()
  for (const [name, { place }] of entriesOf(under(check.root, 'straps'))) {
    const [, from = '', to = ''] = STRAP_NAME.exec(name) ?? []
    if (from === '') continue
    const first = seen.get(`${to}-${from}`)
    if (from === to) {
      check.report('name-malformed', place, `the strap ${ticked(name)}`, 'two different terminals')
    } else if (first !== undefined) check.twice(`${to}-${from}`, 'strap', place, first)
    seen.set(name, place)
    strips.checkName(from, place)
    strips.checkName(to, { ...place, column: place.column + from.length + 1, length: to.length })
  }
}

const WHEN = ['closed when', 'open when'] as const

/** A contact says exactly one of `closed when` and `open when`. */
function checkContacts(check: Checker): void {
  for (const [name, { place, value }] of entriesOf(under(check.root, 'contacts'))) {
    if (value.shape !== 'map') continue
    const [closed, open] = WHEN.map((key) => value.entries.get(key))
    const mend = 'say when the contact is closed, or when it is open'
    const expected = 'one of `closed when` and `open when`'
    if (closed !== undefined && open !== undefined) {
      check.report('key-doubled', open.place, `${ticked(name)} with both`, expected, mend)
    } else if (closed === undefined && open === undefined && ![...value.entries.keys()].some(meansWhen)) {
      check.report('key-missing', place, `${ticked(name)} with neither`, expected, mend)
    }
  }
}

/** A misspelt key, which its schema has named. */
function meansWhen(key: string): boolean {
  return nearest(key, WHEN) !== undefined
}

/** An end of a part or contact of a set: a terminal, a joint or `earth`. */
function checkEnd(check: Checker, strips: Strips, joints: readonly RawScalar[], end: RawScalar): void {
  if (end.text === 'earth' || joints.some(({ text }) => text === end.text)) return
  if (strips.looksLikeTerminal(end.text)) strips.check(end)
  else check.known(end, [...joints.map(({ text }) => text), 'earth'], 'joint')
}

/** Parts in the handset end on cores of the handset cord; cores meant to be common are such cores too. */
function checkHandset(check: Checker, handset: readonly SheetPart[]): void {
  const cores = handsetCores(check.root)
  const none = 'a core of a cord that ends in `handset`'
  for (const end of handset.flatMap(endsOf)) check.known(end, cores, 'core', none)
  for (const group of itemsOf(under(check.root, 'common cores'))) {
    for (const core of scalarsOf(group)) check.known(core, cores, 'core', none)
  }
}
