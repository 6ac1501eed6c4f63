/** What a second opinion adds to an answer, as JSON shows it. */
import type { FigureId, FigureUnit } from '../figures/figure.ts'
import type { Condition } from '../netlist/condition.ts'

/** Where two solutions differ most: absolutely, and as a share of the largest voltage or current of its island. */
export interface Difference {
  /** Node or branch. */
  readonly at: string
  readonly unit: 'V' | 'A'
  readonly absolute: number
  readonly relative: number
  readonly analysis: 'direct' | 'alternating'
  readonly frequency: number | null
  readonly condition: Condition
}

/** The figure of an id that differs most, as a share of itself or of what it was read among. */
export interface FigureDifference {
  readonly id: FigureId
  readonly subject: string
  readonly unit: FigureUnit
  readonly value: number
  readonly second: number
  readonly relative: number
}

/** A number in as many digits as were asked for. */
export type Digits = string | { readonly re: string; readonly im: string } | null

/** The second opinion of an answer. */
export interface SecondOpinion {
  /** How it was computed, in a sentence. */
  readonly method: string
  /** Decimal digits; `null` for doubles. */
  readonly digits: number | null
  /** Questions that were asked again. */
  readonly questions: number
  /** Unknowns of the largest system, complex ones counted once. */
  readonly unknowns: number
  /** Voltages and currents compared. */
  readonly compared: number
  /** Null where everything is nil. */
  readonly largest: Difference | null
  /** Parts that entered with double values. */
  readonly 'as doubles': readonly string[]
  /** Parts whose law is stated about the point that the solver found. */
  readonly 'about our point': readonly string[]
  /** The worst figure of each id, where figures were read. */
  readonly figures?: readonly FigureDifference[]
  /** With digits, of one solved network. */
  readonly voltages?: Readonly<Record<string, Digits>>
  readonly currents?: Readonly<Record<string, Digits>>
}
