/** A figure: a computed quantity with its unit, condition and how well the solve behind it came out. */
import type { Condition } from '../netlist/condition.ts'
import type { Changes, Question } from '../solver/question.ts'

export type { Changes }

/** Published definitions of the ringing load of a set; loads are added within one of them, never across. */
export type RingingLoadName =
  | 'four-kilohm-unit'
  | 'unit-ringer'
  | 'type-a'
  | 'type-b'
  | 'older-european'
  | 'sixteen-kilohm'

/** Ids of the figures of this version; fixed once, then only added to. */
export type FigureId =
  | 'resistance.between'
  | 'impedance.between'
  | 'loop.resistance'
  | 'loop.current'
  | 'loop.voltage'
  | 'transmitter.current'
  | 'receiver.direct-current'
  | 'bell.direct-current'
  | 'leakage.on-hook'
  | 'leakage.earth'
  | 'leakage.ringing'
  | 'ringing.current'
  | 'ringing.voltage'
  | 'ringing.capacitors'
  | 'ringing.power'
  | 'ringing.share'
  | 'ringing.line-current'
  | 'ringing.socket-voltage'
  | `ringing.load.${RingingLoadName}`
  | 'ringing.trip-margin'
  | 'dial.resistance-made'
  | 'dial.leakage-open'
  | 'speech.send'
  | 'speech.receive'
  | 'speech.sidetone'
  | 'speech.impedance'
  | 'speech.return-loss'
  | 'balance.conversion-loss'

/** Why a figure has no number. */
export type State = 'open' | 'undetermined' | 'beyond-range' | 'no-convergence'

/** A unit as JSON and people see it. */
export type FigureUnit = 'Ω' | 'A' | 'V' | '1' | 'dB' | 'VA'

/** What is computed. `value` and `state` exclude each other. */
export interface Figure {
  readonly id: FigureId
  /** Node, branch or place that it is about. */
  readonly subject: string
  readonly condition: Condition
  /** Hz, for alternating current. */
  readonly frequency?: number
  readonly value: number | null
  /** The phasor of which `value` is the size, for figures that have a phase worth telling. */
  readonly phasor?: { readonly re: number; readonly im: number }
  readonly unit: FigureUnit
  readonly state?: State
  /** Why it is approximate: the stand-ins that it rests on. */
  readonly approximate?: string
  /** Scaled residual of the solve; about 1 when healthy. */
  readonly residual: number
}

/** One thing to read off a solution: a voltage between two nodes, or a current in a branch. */
export type Tap =
  | { readonly question: Question; readonly voltage: readonly [number, number] }
  | { readonly question: Question; readonly current: number }

/** A figure before it is read: which taps, and what follows from them. `value` is pure; readings are re, im pairs. */
export interface FigurePlan {
  readonly id: FigureId
  readonly subject: string
  readonly condition: Condition
  readonly unit: FigureUnit
  readonly taps: readonly Tap[]
  /** Its taps are at several frequencies, none of which is its own. */
  readonly mixed?: true
  value(readings: Float64Array): number | State
  /** The phasor behind the value; asked only where that is a number. */
  phasor?(readings: Float64Array): { readonly re: number; readonly im: number }
}

/** What a figure comes to, nothing where it has no number. */
export function amountOf(figure: Figure | null | undefined): number {
  return figure?.value ?? 0
}
