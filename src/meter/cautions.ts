/** What whoever holds the leads must know first. */
import { cautionText } from '../cautions.ts'
import { formatQuantity } from '../quantities/format.ts'
import type { MeterReading } from './reading.ts'

/** For every reading of a set by itself. */
export const UNPLUG: string =
  `${cautionText('opening', 'ringing', 'burst')} These readings are of a set that no line reaches. ` +
  'On a live line the ranges of ohms, diode and capacitance ruin the instrument and may hurt its owner.'

/** For work at a set part of which is on its live line and part of which is not. */
export const AT_WORK: string =
  `${cautionText('opening', 'ringing', 'burst')} Ohms, diode and capacitance are read only where no line reaches the ` +
  'set: on a live line they ruin the instrument and may hurt its owner.'

/** For a reading at points of an open set on a live line. */
export const OPEN_AND_LIVE: string =
  'One of these points lies inside the set: to reach it the set stands open on a live line, its screws, cradle and ' +
  'contacts bare under your hand, and ringing may arrive while you hold the leads. Rather unplug the set and read it ' +
  `by ohms, or read at the plug. ${cautionText('codes')}`

/** How high a wire climbs while it rings, where any reading says so. */
export function topCaution(readings: readonly MeterReading[]): readonly string[] {
  const tops = readings.flatMap(({ peak }) => peak?.['to earth'] ?? [])
  if (tops.length === 0) return []
  return [
    `While it rings a wire here reaches ${formatQuantity(Math.max(...tops), 'V')} to earth at its top: ringing rides on the battery, and no meter shows the two together.`,
  ]
}

/** For readings on a line that is alive. */
export const LIVE: string =
  `These readings are on a live line. ${cautionText('ringing', 'burst', 'line-side', 'codes')} ` +
  'Take them only with insulated leads, one hand, nothing bare within reach, and only where those allow it; ' +
  `otherwise leave them to whoever is licensed. For everything else: ${cautionText('opening').toLowerCase()}`
