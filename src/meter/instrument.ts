/** What an instrument is: its ranges, how each one drives and shows, and what hand and ear add. */
import type { Quantity } from '../quantities/quantity.ts'

/** What a reading shows. */
export type Shows = 'ohms' | 'buzz' | 'diode' | 'capacitance' | 'volts' | 'alternating-volts'

/** How far a range can be trusted: digits by a share and one count, a needle by a share of its scale's length. */
export interface Precision {
  readonly resolution?: Quantity
  /** Share of what is shown. */
  readonly accuracy?: number
  /** By how many counts of its last digit it may be off besides; one when absent. */
  readonly counts?: number
  /** Share of the scale. */
  readonly arc?: number
  readonly 'full scale': Quantity
}

/** Sends a known current and reads the voltage. */
export interface CurrentRange extends Precision {
  readonly method: 'constant-current' | 'diode'
  readonly current: Quantity
  readonly 'open voltage': Quantity
}
/** As an ohms range, with a sound below its limit. */
export interface BuzzRange extends Precision {
  readonly method: 'buzz'
  readonly current: Quantity
  readonly 'open voltage': Quantity
  readonly limit: Quantity
}
/** A battery behind a resistance, which is what the middle of the scale shows. */
export interface BatteryRange extends Precision {
  readonly method: 'battery'
  readonly battery: Quantity
  readonly 'mid scale': Quantity
}
/** A small alternating voltage; what is shown is |I| / (ω V). */
export interface CapacitanceRange extends Precision {
  readonly method: 'capacitance'
  readonly frequency: Quantity
  readonly voltage: Quantity
}
/** A voltmeter for direct voltage. */
export interface VoltsRange extends Precision {
  readonly method: 'volts'
  readonly 'input resistance': Quantity
}
/** A voltmeter for alternating voltage; `average` is calibrated for sines. */
export interface AlternatingRange extends Precision {
  readonly method: 'alternating-volts'
  readonly 'input resistance': Quantity
  readonly 'responds to': 'average' | 'true-rms'
  readonly 'blocks direct': boolean
  readonly 'sure from': Quantity
}

/** A range, told apart by its method. */
export type Range = CurrentRange | BuzzRange | BatteryRange | CapacitanceRange | VoltsRange | AlternatingRange

/** An instrument with its ranges by name. */
export interface Instrument {
  readonly name: string
  readonly says: string
  readonly source: string
  readonly 'red lead': 'positive' | 'negative'
  readonly 'shows by': 'digits' | 'needle'
  /** Resistance of both test leads and their tips, where the instrument shows it with the rest. */
  readonly leads?: Quantity
  /** Period of the needle's free swing. */
  readonly swing?: Quantity
  readonly ranges: Readonly<Record<string, Range>>
}

/** A rule of the hand or the ear, in SI units. */
export interface Habit {
  readonly value: number
  readonly unit: 'A' | 'Ω' | '1'
  readonly says: string
  readonly source: string
}

/** What hand and ear add. `open`: the ohms above which a reading is taken for an open circuit. */
export type HabitName = 'transmitter-spread' | 'click' | 'scrape' | 'loud' | 'open'

/** A table of instruments. */
export interface Instruments {
  readonly instruments: ReadonlyMap<string, Instrument>
  /** Present in the delivered table; a person's own need not repeat them. */
  readonly habits: Readonly<Partial<Record<HabitName, Habit>>>
}

/** An instrument in the hand. */
export interface Kit {
  readonly instrument: Instrument
  readonly habits: Readonly<Record<HabitName, Habit>>
}

const SHOWS: Readonly<Record<Range['method'], Shows>> = {
  'constant-current': 'ohms',
  battery: 'ohms',
  buzz: 'buzz',
  diode: 'diode',
  capacitance: 'capacitance',
  volts: 'volts',
  'alternating-volts': 'alternating-volts',
}

/** What a range shows. */
export function showsOf({ method }: Range): Shows {
  return SHOWS[method]
}

/** A range with its name. */
export interface NamedRange {
  readonly name: string
  readonly range: Range
}

/** The ranges that show one thing, the smallest full scale first. */
export function rangesFor(instrument: Instrument, shows: Shows): readonly NamedRange[] {
  return Object.entries(instrument.ranges)
    .filter(([, range]) => showsOf(range) === shows)
    .map(([name, range]) => ({ name, range }))
    .sort((p, q) => p.range['full scale'].value - q.range['full scale'].value)
}

/** Everything that any instrument may show. */
export const SHOWN: readonly Shows[] = ['ohms', 'buzz', 'diode', 'capacitance', 'volts', 'alternating-volts']
