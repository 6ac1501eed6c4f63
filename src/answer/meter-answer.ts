/** The answer to `meter`, as JSON shows it. */
import type { CordTable } from '../meter/cords.ts'
import type { Marked } from '../meter/markings.ts'
import type { MeterReading } from '../meter/reading.ts'
import type { Envelope } from './answer.ts'

export interface MeterAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly instrument: {
    readonly name: string
    readonly says: string
    readonly source: string
    /** The pole that the red lead is on ohms, diode and buzz. */
    readonly 'red lead': 'positive' | 'negative'
    readonly 'shows by': 'digits' | 'needle'
  }
  readonly place: string
  /** `one` reading, the whole `table` of a set by itself, or the table of a set on a `live` line. */
  readonly what: 'one' | 'table' | 'live'
  /** Where the leads can be held; ids of one point are always joined. Empty for one reading. */
  readonly points: readonly {
    readonly name: string
    readonly ids: readonly string[]
    /** Colours of the cores among them by id, where the sheet says them. */
    readonly colours: Readonly<Record<string, string>>
  }[]
  readonly readings: readonly MeterReading[]
  readonly cords: readonly CordTable[]
  /** Resistors of the set with their bands; empty for one reading and on a live line. */
  readonly markings: readonly Marked[]
  /** Ids of the set's parts that no reading here tells; empty for one reading and on a live line. */
  readonly 'not told': readonly string[]
  readonly cautions: readonly string[]
}
