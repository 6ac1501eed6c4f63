/**
 * Types of cable that a sheet names: what a kilometre has besides the resistance of its copper.
 * Leakance is nil in the tables that these are from: dry insulation. Damp is a fault.
 */

import { copperResistance } from './copper.ts'
import type { CableConstants } from './equivalent-pi.ts'

/** Names of types. */
export type CableType = 'twin' | 'house-pair' | 'house-three'

/** One type: its wires in their order, and per kilometre the inductance of one wire and what lies between each two. */
export interface CableTypeRow {
  readonly wires: readonly string[]
  /** H/km of one wire: half of the loop's */
  readonly inductance: number
  /** F/km between each two wires */
  readonly capacitance: number
  /** S/km between each two wires */
  readonly leakance: number
  readonly source: string
}

export const CABLE_TYPES: Readonly<Record<CableType, CableTypeRow>> = {
  twin: {
    wires: ['a', 'b'],
    inductance: 0.673574e-3 / 2,
    capacitance: 50e-9,
    leakance: 0,
    source:
      '50 nF/km: nominal line of a national interface note, secondary copy; 0.674 mH/km: loop of 0.5 mm in ETR 328, from memory',
  },
  'house-pair': {
    wires: ['a', 'b'],
    inductance: 0.695e-3 / 2,
    capacitance: 55e-9,
    leakance: 0,
    source: 'drop wire of the DSL standards: 55 nF/km, 0.695 mH/km at low frequency, secondary copy',
  },
  // two wires with the third one idle: C + C/2 between them, as in the pair
  'house-three': {
    wires: ['a', 'b', 'ringing'],
    inductance: 0.695e-3 / 2,
    capacitance: (55e-9 * 2) / 3,
    leakance: 0,
    source: 'our own choice: three wires that lie alike, any two of them as the house pair',
  },
}

/** Metres in the kilometre of the tables. */
const KILOMETRE = 1000

/**
 * The constants of a length, between each two of the wires in use. A third wire that leads nowhere lies between the
 * other two as their capacitances in series: by symmetry it carries nothing, and n wires of which two are used are a
 * pair with n/2 of the capacitance between each two.
 * @param used how many wires are used @param gauge diameter of one wire, m @param length m @param celsius temperature of the wire, 20 °C when absent
 */
export function cableConstants(
  type: CableType,
  used: number,
  gauge: number,
  length: number,
  celsius?: number,
): CableConstants {
  const row = CABLE_TYPES[type]
  const kilometres = length / KILOMETRE
  const between = kilometres * (used === 2 ? row.wires.length / 2 : 1)
  return {
    resistance: copperResistance(gauge, length, celsius),
    inductance: row.inductance * kilometres,
    capacitance: row.capacitance * between,
    leakance: row.leakance * between,
  }
}
