/** The answer of a meter as JSON shows it, its keys in their order. */

import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { Band } from '../meter/accuracy.ts'
import type { CordTable } from '../meter/cords.ts'
import type { MeterReading } from '../meter/reading.ts'
import { conditionJson, placesIn } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

const bandJson = (band: Band): Fields => pick(band, ['least', 'most'])

const READING = [
  ...[
    'id',
    'red',
    'black',
    'condition',
    'range',
    'value',
    'unit',
    'full scale',
    'state',
    'floating',
    'resolution',
    'band',
    'spread',
    'phase',
    'peak',
  ],
  ...['buzzes', 'current', 'kick', 'heard', 'path', 'parts', 'contacts', 'beside', 'blind', 'remarks'],
  ...['live', 'approximate', 'residual'],
]

function readingJson(reading: MeterReading, single: boolean): Fields {
  const { band, spread, peak, kick, heard, blind, condition } = reading
  return pick(reading, READING, {
    condition: conditionJson(condition, single),
    band: band && bandJson(band),
    spread:
      spread &&
      pick(spread, ['interval', 'worst', 'exact'], {
        interval: bandJson(spread.interval),
        worst: bandJson(spread.worst),
      }),
    peak: peak && pick(peak, ['between', 'to earth']),
    kick: kick && pick(kick, ['reaches', 'rests', 'seconds']),
    heard: heard.map((one) => pick(one, ['branch', 'current', 'says', 'loud'])),
    blind: blind.map((one) => pick(one, ['branch', 'says', 'current'])),
  })
}

function cordJson(cord: CordTable, single: boolean): Fields {
  return pick(cord, ['cord', 'cores', 'loose', 'readings', 'groups', 'alike'], {
    readings: cord.readings.map((one) => readingJson(one, single)),
  })
}

/** Keys of `meter/1` between its head and its problems. */
export const METER_KEYS: readonly string[] = [
  ...['outcome', 'instrument', 'place', 'what', 'points', 'readings', 'cords', 'not told'],
  ...['cautions', 'markings'],
]

/** What stands under those keys. */
export function meterFields(answer: MeterAnswer): Fields {
  const all = [...answer.readings, ...answer.cords.flatMap(({ readings }) => readings)]
  const single = placesIn(all.map(({ condition }) => condition)).size <= 1
  return {
    instrument: pick(answer.instrument, ['name', 'says', 'source', 'red lead', 'shows by']),
    points: answer.points.map((point) => pick(point, ['name', 'ids', 'colours'])),
    readings: answer.readings.map((one) => readingJson(one, single)),
    cords: answer.cords.map((cord) => cordJson(cord, single)),
    markings: answer.markings.map((one) => pick(one, ['part', 'value', 'bands', 'preferred'])),
  }
}
