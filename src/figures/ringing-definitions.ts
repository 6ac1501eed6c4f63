/**
 * The published definitions of the ringing load of a set, as data. Each has a unit of its own: loads are added within
 * one definition and never across two.
 */
import type { RingingLoadName } from './figure.ts'
import { COUNTING, COUNTING_SOURCE, MOST_SETS } from './unit-ringer.ts'

/** One point of a measurement: the load there is `ohms` over the size of the set's impedance. */
export interface LoadSample {
  /** Hz */
  readonly frequency: number
  /** The size of impedance that counts as a load of one, ohms. */
  readonly ohms: number
}

/** A definition, and where it is written. */
export interface LoadDefinition {
  /**
   * What is measured of a set on three wires. `set`: its ringing lead tied straight to the b wire. `line`: its ringing
   * lead behind the 1.8 µF of the socket without which it cannot stand on a line; a set on two wires is as it is.
   */
  readonly seen: 'set' | 'line'
  /** Voltage put across the set, V rms: the largest that the definition names, at which a ringer takes most. */
  readonly volts: number
  /** The worst of these counts; absent where sets are counted instead. */
  readonly samples?: readonly LoadSample[]
  /** Sets are counted: at which frequency, Hz, behind which source, ohms, and up to how many. */
  readonly counting?: { readonly frequency: number; readonly source: number; readonly most: number }
  readonly source: string
  readonly clause: string
  readonly grade: 'SEEN-P' | 'SEEN-S'
}

/** Ratio of neighbouring frequencies of a band that is sampled throughout; the peak of a ringer of Q = 10 is missed by 4 % at most. */
const STEP = 1.03

/** A band from its lower to its upper edge, both included. */
function band(least: number, most: number, ohms: number): readonly LoadSample[] {
  const steps = Math.ceil(Math.log(most / least) / Math.log(STEP))
  return Array.from({ length: steps + 1 }, (_, k) => ({
    frequency: k === steps ? most : least * (most / least) ** (k / steps),
    ohms,
  }))
}

/** |1.8 kΩ + 1 µF| at 25 Hz, ohms. */
const OLDER_UNIT = Math.hypot(1800, 1 / (2 * Math.PI * 25 * 1e-6))

/** Times the limit of impedance that a load of one may have: five of them are the most of a line. */
const FIVE = 5

const TABLE_6 = { source: 'TIA-968, secondary copy', clause: 'table 6', grade: 'SEEN-S' } as const

export const LOAD_DEFINITIONS: Readonly<Record<RingingLoadName, LoadDefinition>> = {
  'four-kilohm-unit': {
    seen: 'set',
    volts: 75,
    samples: [{ frequency: 25, ohms: 4000 }],
    source: 'rating of bells, secondary copy',
    clause: 'a ringer of 4000 Ω is one',
    grade: 'SEEN-S',
  },
  'unit-ringer': {
    seen: 'line',
    volts: COUNTING.volts,
    counting: { frequency: COUNTING.frequency, source: COUNTING_SOURCE, most: MOST_SETS },
    source: 'AS/CA S002:2010',
    clause: '6.7.6.2, 6.7.6.3',
    grade: 'SEEN-P',
  },
  'type-a': {
    seen: 'line',
    volts: 130,
    // the ± 3 Hz of the table are how far the generator may be off; the unit network of 6930 Ω and 8 µF is 1.000 at 20 Hz
    samples: [
      { frequency: 20, ohms: FIVE * 1400 },
      { frequency: 30, ohms: FIVE * 1000 },
    ],
    ...TABLE_6,
  },
  'type-b': { seen: 'line', volts: 150, samples: band(15.3, 68, FIVE * 1600), ...TABLE_6 },
  'older-european': {
    seen: 'line',
    volts: 75,
    samples: [{ frequency: 25, ohms: OLDER_UNIT }],
    source: 'older European unit, secondary copy',
    clause: '1.8 kΩ and 1 µF in series',
    grade: 'SEEN-S',
  },
  'sixteen-kilohm': {
    seen: 'line',
    volts: 75,
    samples: [
      { frequency: 25, ohms: 16_000 },
      { frequency: 50, ohms: 16_000 },
    ],
    source: 'ETSI definition of 2003, secondary copy',
    clause: '16 kΩ at 25 Hz and 50 Hz',
    grade: 'SEEN-S',
  },
}

/** Whether a word names a definition. */
export function isLoadName(name: string): name is RingingLoadName {
  return Object.hasOwn(LOAD_DEFINITIONS, name)
}

/** The names of all definitions. */
export const LOAD_NAMES: readonly RingingLoadName[] = Object.keys(LOAD_DEFINITIONS).filter(isLoadName)
