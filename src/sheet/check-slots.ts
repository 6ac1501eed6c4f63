/** Slots and the units in them. */
import type { Checker } from './checker.ts'
import type { UnitSheet } from './model.ts'
import { entriesOf, type Raw, type RawScalar, under } from './raw.ts'
import type { ReadUnit } from './reading.ts'
import type { Strips } from './strips.ts'
import { oneOf, ticked } from './wording.ts'

/** Sockets lead to terminals that exist; a fitted unit is in reach, readable, and its pins are the sockets' names. */
export function checkSlots(
  check: Checker,
  strips: Strips,
  readUnit: ReadUnit,
): ReadonlyMap<string, UnitSheet> {
  const units = new Map<string, UnitSheet>()
  const read = new Set<string>()
  for (const { value: slot } of entriesOf(under(check.root, 'slots')).values()) {
    for (const { value } of entriesOf(under(slot, 'sockets')).values()) strips.check(value)
    const fitted = check.word(under(slot, 'fitted'))
    if (fitted === undefined || fitted.text === 'none') continue
    const unit = units.get(fitted.text) ?? unitOf(check, fitted, read, readUnit)
    if (unit === undefined) continue
    units.set(fitted.text, unit)
    checkPins(check, slot, unit)
  }
  return units
}

/** Reads a unit; its own problems are reported once, however many slots name it. */
function unitOf(
  check: Checker,
  fitted: RawScalar,
  read: Set<string>,
  readUnit: ReadUnit,
): UnitSheet | undefined {
  const reading = readUnit(fitted.text)
  if (reading === undefined) check.onShelf(fitted, 'unit')
  else if (!read.has(fitted.text)) check.problems.push(...reading.problems)
  read.add(fitted.text)
  return reading?.sheet
}

function checkPins(check: Checker, slot: Raw, unit: UnitSheet): void {
  const entry = slot.shape === 'map' ? slot.entries.get('sockets') : undefined
  if (entry === undefined || entry.value.shape !== 'map') return
  for (const [pin, { place }] of entry.value.entries) {
    if (unit.pins.includes(pin)) continue
    check.report(
      'name-unknown',
      place,
      `the pin ${ticked(pin)}`,
      `a pin of ${ticked(unit.name)}: ${oneOf(unit.pins, '')}`,
    )
  }
  for (const pin of unit.pins) {
    if (entry.value.entries.has(pin)) continue
    const mend = `add ${ticked(`${pin}: `)} and a terminal`
    check.report(
      'key-missing',
      entry.place,
      `no socket for the pin ${ticked(pin)} of ${ticked(unit.name)}`,
      'all its pins',
      mend,
    )
  }
}
