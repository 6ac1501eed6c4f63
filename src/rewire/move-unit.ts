/** Units plugged into slots and pulled out. */
import type { Place } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SetSheet, SlotSpec, UnitSheet } from '../sheet/model.ts'
import { oneOf, ticked, write } from '../sheet/wording.ts'
import { changedAt, entryOf, withEntry, withoutEntry } from './entries.ts'
import { type Outcome, refused } from './outcome.ts'

/** No unit in a slot. */
const NONE = 'none'

/** Plugs a unit whose pins are the sockets of the slot into a slot that is empty. */
export function plugUnit(
  set: SetSheet,
  name: string,
  slotName: string,
  unit: UnitSheet | undefined,
  place: Place | undefined,
): Outcome {
  const slot = entryOf(set.slots, slotName)
  if (slot === undefined) return unknownSlot(set, slotName)
  const standing = unitIn(slot)
  if (standing !== undefined) {
    const found = `the slot ${ticked(slotName)}, which holds the unit ${ticked(standing)}`
    return refused(found, 'an empty slot', `write \`pull unit: ${slotName}\` before this move`)
  }
  if (unit === undefined) {
    return refused(`the unit ${ticked(name)}`, 'the name of a unit sheet in reach, without mistakes')
  }
  const sockets = Object.keys(slot.sockets)
  const pins = new Set(unit.pins)
  if (sockets.length !== pins.size || !sockets.every((socket) => pins.has(socket))) {
    const found = `the unit ${ticked(name)} with the pins ${unit.pins.map(ticked).join(', ')}`
    return refused(found, `a unit with the pins of the slot: ${sockets.map(ticked).join(', ')}`)
  }
  const changed = withSlot(set, slotName, { ...slot, fitted: name }, place)
  return { set: { ...changed, units: withEntry(set.units, name, unit) } }
}

/** Pulls the unit out of a slot. */
export function pullUnit(set: SetSheet, slotName: string, place: Place | undefined): Outcome {
  const slot = entryOf(set.slots, slotName)
  if (slot === undefined) return unknownSlot(set, slotName)
  const standing = unitIn(slot)
  if (standing === undefined) {
    return refused(
      `the slot ${ticked(slotName)}, which is empty`,
      'a slot with a unit',
      'leave this move out',
    )
  }
  const changed = withSlot(set, slotName, { ...slot, fitted: NONE }, place)
  const elsewhere = Object.values(changed.slots).some((one) => unitIn(one) === standing)
  return { set: elsewhere ? changed : { ...changed, units: withoutEntry(set.units, standing) } }
}

function unitIn({ fitted }: SlotSpec): string | undefined {
  return fitted === NONE ? undefined : fitted
}

function withSlot(set: SetSheet, name: string, slot: SlotSpec, place: Place | undefined): SetSheet {
  const path = `slots.${name}`
  const places = changedAt(set.places, [path, `${path}.fitted`], place)
  return { ...set, slots: withEntry(set.slots, name, slot), places }
}

/** Somebody may have named the unit in place of the slot that holds it. */
function unknownSlot(set: SetSheet, name: string): Outcome {
  const names = Object.keys(set.slots)
  const holder = names.find((one) => unitIn(set.slots[one] ?? { sockets: {} }) === name)
  return refused(
    `the slot ${ticked(name)}, which ${ticked(set.name)} does not have`,
    `a slot: ${oneOf(names, 'the set has none')}`,
    write(holder ?? nearest(name, names)),
  )
}
