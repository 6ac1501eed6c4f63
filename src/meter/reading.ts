/** One reading of an instrument: what it shows, how surely, and what it means. */
import type { State } from '../figures/figure.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Band } from './accuracy.ts'
import type { Blind } from './blind.ts'
import type { Heard } from './ear.ts'
import type { Shows } from './instrument.ts'
import type { Kick } from './kick.ts'
import type { Peak } from './peak.ts'
import type { Spread } from './spread.ts'

/** A reading. `value` and `state` exclude each other. */
export interface MeterReading {
  readonly id: `meter.${Shows}`
  /** Node ids. */
  readonly red: string
  readonly black: string
  readonly condition: Condition
  /** Name of the range, as the instrument's data call it. */
  readonly range: string
  readonly value: number | null
  readonly unit: 'Ω' | 'V' | 'F'
  readonly state?: State
  /** Whether nothing fixes the voltage, so that it wanders. */
  readonly floating?: true
  readonly 'full scale': number
  /** One count of the last digit, in `unit`; absent for needles. */
  readonly resolution?: number
  /** What the instrument may show: parts within their tolerances, and the instrument within its own. */
  readonly band?: Band
  /** What the parts alone do. */
  readonly spread?: Spread
  /** Phase of the impedance, radians; on capacitance. */
  readonly phase?: number
  /** How high the voltage climbs while it rings, which no meter shows. */
  readonly peak?: Peak
  /** Whether it sounds; on ranges that can. */
  readonly buzzes?: boolean
  /** Current through the leads, A. */
  readonly current: number
  readonly kick?: Kick
  readonly heard: readonly Heard[]
  /** Node ids of the way that the current takes. */
  readonly path: readonly string[]
  /**
   * Branch ids of the parts on that way, of its contacts, and of the parts beside it that count:
   * on ohms those that carry a tenth or more, on capacitance those that make the value another one.
   */
  readonly parts: readonly string[]
  readonly contacts: readonly string[]
  readonly beside: readonly string[]
  /** What this reading cannot show. */
  readonly blind: readonly Blind[]
  /** Why the figure is not what it seems. */
  readonly remarks: readonly string[]
  /** Read on a line that is alive. */
  readonly live: boolean
  readonly approximate?: string
  readonly residual: number
}

/** What is wanted of a reading. */
export interface Wanted {
  readonly shows: Shows
  /** Name of one range; the instrument's best when absent. */
  readonly range?: string
  /** Hz, for alternating volts. */
  readonly frequency?: number
}
