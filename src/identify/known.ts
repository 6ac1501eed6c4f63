/** The sets that may lie on the bench: every known sheet, its slot as the sheet says, empty, or with another unit. */
import { compile } from '../netlist/compile.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { SetSheet, UnitSheet } from '../sheet/model.ts'

/** A sheet that may be what lies on the bench. */
export interface Sheeted {
  readonly sheet: SetSheet
  /** The rewire that made it of its set. */
  readonly rewire?: string
}

/** One hypothesis: a known set in one state of its slot, its cords off. */
export interface KnownSet {
  /** `fescue`, `fescue without a unit`, `fescue with clover`. Unique. */
  readonly name: string
  readonly set: string
  readonly rewire?: string
  /** What is in its slot; null where it is empty; absent where it has none. */
  readonly unit?: string | null
  readonly sheet: SetSheet
  /** The set alone, all cords off; every node's id begins with `PLACE`. */
  readonly net: Netlist
  /** Equal for sets that no direct current with the cords off tells apart. */
  readonly wiring: string
  /** Before anything is observed; all together 1. */
  readonly share: number
}

/** The place of every set that is compiled here, so that equal wirings have equal ids. */
export const PLACE = 'set'

/**
 * Every known set, each sheet as likely as the next, the states of its slot sharing equally.
 *
 * @param units plug-in units in reach: those with the pins of a slot may be in it
 */
export function knownSets(sheets: readonly Sheeted[], units: readonly UnitSheet[]): readonly KnownSet[] {
  const nets = new Map<string, Netlist>()
  return sheets.flatMap(({ sheet, rewire }): KnownSet[] => {
    const states = slotStates(sheet, units)
    return states.map(({ set, unit }) => {
      const bare = withoutCords(set)
      const wiring = wiringOf(bare)
      const net = nets.get(wiring) ?? compile({ name: PLACE, sets: { [PLACE]: { set: bare } } })
      nets.set(wiring, net)
      return {
        name: nameOf(set.name, rewire, sheet, unit),
        set: set.name,
        ...(rewire === undefined ? {} : { rewire }),
        ...(unit === undefined ? {} : { unit }),
        sheet: set,
        net,
        wiring,
        share: 1 / (sheets.length * states.length),
      }
    })
  })
}

/** The unit is named where it is not what the sheet says. */
function nameOf(
  set: string,
  rewire: string | undefined,
  sheet: SetSheet,
  unit: string | null | undefined,
): string {
  const base = rewire ?? set
  const [slot] = Object.values(sheet.slots)
  if (unit === undefined || unit === fittedIn(slot)) return base
  return unit === null ? `${base} without a unit` : `${base} with ${unit}`
}

const fittedIn = (slot: SetSheet['slots'][string] | undefined): string | null =>
  slot?.fitted === undefined || slot.fitted === 'none' ? null : slot.fitted

interface SlotState {
  readonly set: SetSheet
  readonly unit?: string | null
}

/** A set with the first of its slots as its sheet says, with the other units that fit, and empty. */
function slotStates(sheet: SetSheet, units: readonly UnitSheet[]): readonly SlotState[] {
  const [entry] = Object.entries(sheet.slots)
  if (entry === undefined) return [{ set: sheet }]
  const [name, slot] = entry
  const pins = Object.keys(slot.sockets).sort().join()
  const own = fittedIn(slot)
  const fits = units.filter((unit) => [...unit.pins].sort().join() === pins && unit.name !== own)
  const put = (unit: UnitSheet): SlotState => ({
    set: {
      ...sheet,
      slots: { ...sheet.slots, [name]: { ...slot, fitted: unit.name } },
      units: { ...sheet.units, [unit.name]: unit },
    },
    unit: unit.name,
  })
  const empty: SlotState = {
    set: { ...sheet, slots: { ...sheet.slots, [name]: { ...slot, fitted: 'none' } } },
    unit: null,
  }
  return [{ set: sheet, unit: own }, ...(own === null ? [] : [empty]), ...fits.map(put)]
}

/** The set as it is read: cords cut off or unscrewed, the handset gone with its cord. */
function withoutCords({ plug: _, ...set }: SetSheet): SetSheet {
  return { ...set, cords: {}, handset: {}, landings: {}, 'common cores': [] }
}

/** All that a meter can meet with the cords off, as text. */
function wiringOf({ strips, straps, contacts, parts, joints, slots, units }: SetSheet): string {
  const fitted = Object.values(slots).map(({ sockets, fitted: unit }) => [
    sockets,
    unit === undefined ? undefined : units[unit]?.parts,
  ])
  const resistances = Object.entries(straps).map(([name, { resistance }]) => [name, resistance?.value])
  return JSON.stringify([strips, resistances, contacts, parts, joints, fitted])
}
