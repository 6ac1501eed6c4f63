/** The answer to `faults`, as JSON shows it. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Family } from '../book/fault.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Envelope } from './answer.ts'

/** What a person notices: an answer to a question that is not as it should be. */
export interface Notice {
  /** Id of the test. */
  readonly test: string
  readonly asks: string
  readonly answer: string
  readonly says: string
}

/** A number, or null with its state. */
export interface Shown {
  readonly value: number | null
  readonly state?: 'open' | 'undetermined' | 'no-convergence'
}

/** A reading that tells a fault from the set as its sheet says. */
export interface Telling {
  readonly test: string
  readonly asks: string
  readonly how: string
  readonly site: BenchTest['site']
  readonly live: boolean
  readonly condition: Condition
  readonly unit: BenchTest['unit']
  /** What the instrument shows last of it; less is nothing. */
  readonly resolution: number
  readonly sound: Shown
  readonly faulty: Shown
  /** By how many standard deviations of tolerance and reading they differ; 10 stands for more. */
  readonly clearness: number
}

/** A fault with its signature. */
export interface FaultRow {
  readonly fault: string
  readonly subjects: readonly string[]
  readonly family: Family
  readonly says: string
  readonly sign: string
  readonly mend: string
  readonly weight: number
  readonly source: string
  readonly notices: readonly Notice[]
  readonly tells: readonly Telling[]
}

/** Two faults at once and what a person notices of them. */
export interface PairRow {
  readonly faults: readonly [string, string]
  readonly says: readonly [string, string]
  readonly notices: readonly Notice[]
}

/** The pairs of a book. */
export interface PairsAnswer {
  /** All that can be at once. */
  readonly count: number
  /** Those that show the symptoms asked for. */
  readonly matching: number
  /** Of those, pairs of which neither fault shows them alone; all where no symptom is asked for. */
  readonly 'only together': number
  /** The likeliest of these last, a hundred at most. */
  readonly likeliest: readonly PairRow[]
}

export interface FaultsAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly place: string
  readonly instrument: string
  readonly counts: {
    readonly faults: number
    /** With the symptoms asked for. */
    readonly matching: number
    /** Of those, faults that neither a symptom nor a reading tells from the sound set. */
    readonly 'moving nothing': number
    readonly symptoms: number
    readonly readings: number
  }
  /** What is not as it should be although nothing is wrong with the set: the line's doing, or the sheet's. */
  readonly sound: readonly Notice[]
  /** Faults with the symptoms asked for, in the order of the netlist; those that move nothing left out. */
  readonly faults: readonly FaultRow[]
  readonly 'moving nothing': readonly FaultRow[]
  readonly pairs?: PairsAnswer
  readonly cautions: readonly string[]
}
