/** What a solver can be asked about a netlist. Questions change states and values, never the wiring. */
import type { Condition } from '../netlist/condition.ts'
import type { PartSpec } from '../parts/kind.ts'

/** A current put into one node and taken out of another, A; a test instrument of no impedance of its own. */
export interface Probe {
  readonly into: number
  readonly outOf: number
  readonly re: number
  readonly im?: number
}

/** A voltage in series with a branch, V: v = z·i + e. */
export interface SeriesVoltage {
  readonly branch: number
  readonly re: number
  readonly im?: number
}

/** A strap between two nodes. */
export interface Added {
  readonly from: number
  readonly to: number
}

/** A resistance between two nodes, ohms. */
export interface Bridge extends Added {
  readonly ohms: number
}

/** What a question changes in the network for its own sake; values and links, never the wiring that was compiled. */
export type Changes = Pick<Question, 'lifted' | 'added' | 'bridges' | 'within' | 'instead'>

/** A question: analysis, condition and what is changed for its sake. */
export interface Question {
  readonly analysis: 'direct' | 'alternating'
  /** Hz; for alternating current only. */
  readonly frequency?: number
  readonly condition: Condition
  /** Whether the sheets' own independent sources count; they do when absent. */
  readonly sources?: 'all' | 'none'
  readonly probes?: readonly Probe[]
  readonly series?: readonly SeriesVoltage[]
  /**
   * Parts whose law bends are taken as plain resistances: `true` as they are for currents too small to matter, which is
   * what an ideal meter without battery of its own would read; `fed` as the line finds them in this condition, by the
   * ratio of what they hold to what they carry, those that conduct at rest at all.
   */
  readonly small?: true | 'fed'
  /** Branches taken out: i = 0. */
  readonly lifted?: readonly number[]
  /** Straps added between two nodes. */
  readonly added?: readonly Added[]
  /** Resistances added between two nodes, ohms; 0 Ω is an ideal link. */
  readonly bridges?: readonly Bridge[]
  /** Resistances in series with branches, ohms. */
  readonly within?: readonly { readonly branch: number; readonly ohms: number }[]
  /** Parts, by their index, that have other values than their sheet says. */
  readonly instead?: readonly { readonly part: number; readonly spec: PartSpec }[]
}
