/** The answer to `diagnose`, as JSON shows it. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Envelope } from './answer.ts'

/** What a test showed, or would show: answers in words, or a number, or `open`. */
export interface Seen {
  /** Ids of answers; several where it was said only that it is one of them. */
  readonly answers?: readonly string[]
  /** The same in words. */
  readonly says?: string
  readonly value?: number | null
  readonly state?: 'open'
  readonly unit: BenchTest['unit']
}

/** A cause with all that helps to find and to mend it. */
export interface PossibleCause {
  /** Ids of its faults; none, the set is sound. */
  readonly faults: readonly string[]
  readonly says: string
  /** What eye, hand or ear would find. */
  readonly sign: string
  readonly mend: string
  readonly probability: number
}

/** Causes that no allowed test tells apart. */
export interface PossibleGroup {
  readonly probability: number
  /** Causes in it; of the leading group the first hundred are told, of the others the most probable. */
  readonly size: number
  readonly causes: readonly PossibleCause[]
  /** A test that would tell them apart though it was not allowed. */
  readonly apart?: { readonly test: string; readonly asks: string }
}

/** What one observation says. */
export interface Weighed {
  readonly test: string
  readonly asks: string
  readonly observed: Seen
  /** What the leading cause, and the sound set, would show; null where that is not known. */
  readonly leading: Seen | null
  readonly sound: Seen | null
  readonly speaks: 'for' | 'against' | 'neither'
  /** How many times as probable the leading group makes it as all other causes do. */
  readonly ratio: number
}

/** What an outcome of the next question would point at. */
export interface WhatIf {
  /** Id of an answer. */
  readonly answer?: string
  readonly says?: string
  /** Numbers between these, in the test's unit. */
  readonly least?: number
  readonly most?: number
  readonly state?: 'open'
  readonly probability: number
  readonly points: readonly {
    readonly says: string
    /** Causes that cannot be told from it by what is allowed, itself among them. */
    readonly size: number
    readonly probability: number
  }[]
}

/** The next question. */
export interface NextQuestion {
  readonly test: string
  readonly asks: string
  readonly how: string
  readonly site: BenchTest['site']
  readonly live: boolean
  readonly condition: Condition
  readonly unit: BenchTest['unit']
  /** Minutes of a practised hand. */
  readonly effort: number
  /** What it is expected to tell. */
  readonly bits: number
  readonly cautions: readonly string[]
  readonly outcomes: readonly WhatIf[]
}

/** Whether a group is sure, something still tells more, or nothing that may be asked does. */
export type Decided = 'sure' | 'asking' | 'nothing-tells'

export interface DiagnoseAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly place: string
  readonly instrument: string
  readonly counts: {
    readonly faults: number
    readonly pairs?: number
    readonly tests: number
  }
  readonly decided: Decided
  /** The most probable first, those under a thousandth left out. */
  readonly groups: readonly PossibleGroup[]
  /** The probability that it is none of these. */
  readonly none: number
  readonly evidence: readonly Weighed[]
  readonly skipped: readonly { readonly test: string; readonly asks: string }[]
  /** While something tells more. */
  readonly next?: NextQuestion
  /** What one might begin with, while nothing has been told yet; for a person, not in JSON. */
  readonly complaints?: readonly { readonly id: string; readonly says: string }[]
  readonly cautions: readonly string[]
}
