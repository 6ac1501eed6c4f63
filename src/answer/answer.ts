/** The answers to the questions that Ringproof takes, as JSON shows them (design 3b). */
import type { Verdict, VerdictState } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import type { Figure } from '../figures/figure.ts'
import type { Problem } from '../problem.ts'
import type { EqualBells } from './equal-bells.ts'
import type { SecondOpinion } from './second-opinion.ts'
import type { Stands } from './stands.ts'

export type Outcome = 'holds' | 'marginal' | 'fails' | 'unknown' | 'answered'
/** How many verdicts of each state, and how many faults by name. */
export type Counts = Readonly<Record<VerdictState | 'faults', number>>

/** The head of every answer. */
export interface Envelope {
  /** Which answer in which version: `check/1`. */
  readonly ringproof: string
  /** Version of the program. */
  readonly 'made by': string
  /** What was asked, as understood. */
  readonly request: Readonly<Record<string, unknown>>
  readonly problems: readonly Problem[]
  /** What stands where, and the numbers of its plugs' contacts; absent where the answer is about nothing that stands. */
  readonly stands?: Stands
}

export interface CheckAnswer extends Envelope {
  readonly outcome: Outcome
  readonly counts: Counts
  readonly verdicts: readonly Verdict[]
  readonly faults: readonly NamedFault[]
  readonly figures: readonly Figure[]
  /** Of premises whose bells all get the same: what a resistor in them would change. */
  readonly 'equal bells'?: EqualBells
  readonly 'second opinion'?: SecondOpinion
}

/** All figures of the sets that stand somewhere, or those whose id begins as asked. */
export interface FiguresAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly figures: readonly Figure[]
  readonly 'second opinion'?: SecondOpinion
}

/** A figure or verdict on both sides; undefined where a side lacks it. */
/** A check on one side: its gravest verdict. */
export interface BecauseSide {
  readonly state: VerdictState
  readonly says: string
}

/** One check that changes its state. */
export interface Because {
  readonly check: string
  /** Numbers, from 1, of the moves without which it would not come out so, or else of those each of which does it alone. */
  readonly moves: readonly number[]
  readonly says: string
  /** Null where the check has nothing to judge on that side. */
  readonly found: BecauseSide | null
  readonly proposed: BecauseSide | null
}

export interface CompareAnswer extends Envelope {
  /** The proposed side's. */
  readonly outcome: Outcome
  readonly counts: Counts
  /** Moves that lead from found to proposed, in words. */
  readonly moves: readonly string[]
  readonly found: {
    readonly name: string
    readonly verdicts: readonly Verdict[]
    readonly faults: readonly NamedFault[]
    readonly figures: readonly Figure[]
  }
  readonly proposed: {
    readonly name: string
    readonly verdicts: readonly Verdict[]
    readonly faults: readonly NamedFault[]
    readonly figures: readonly Figure[]
  }
  /** Checks whose state differs, and figures that differ by more than a thousandth. */
  readonly changed: {
    readonly checks: readonly string[]
    readonly figures: readonly string[]
    /** Of each check that changes: its words on both sides, and the moves that do it. */
    readonly because: readonly Because[]
  }
}

/** A direct value, a phasor, or null with its reason in `states`. */
export type Amount = number | { readonly re: number; readonly im: number } | null

export interface SolveAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly analysis: 'direct' | 'alternating'
  readonly frequency: number | null
  readonly condition: unknown
  readonly voltages: Readonly<Record<string, Amount>>
  readonly currents: Readonly<Record<string, Amount>>
  readonly units: { readonly voltages: 'V'; readonly currents: 'A' }
  /** Why a voltage or current is null. */
  readonly states: Readonly<Record<string, string>>
  readonly islands: readonly (readonly string[])[]
  readonly shared: readonly string[]
  readonly residual: number
  readonly approximate?: string
  /** Source and grade of a textbook circuit, from its sheet. */
  readonly source?: string
  readonly grade?: string
  readonly 'second opinion'?: SecondOpinion
}

export interface FollowAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly condition: unknown
  readonly analysis: 'direct' | 'alternating'
  readonly frequency: number | null
  /** From the start to the end: node, then the branch that leads on with the size of its current, A. */
  readonly steps: readonly {
    readonly node: string
    readonly branch?: string
    readonly current?: number
    /** What the branch is: strap, core, contact, part … */
    readonly sort?: string
    /** file:line of the sheet that it comes from */
    readonly origin?: string
    /** Where the rest goes, or comes from, when the branch carries less or more than the one before: the largest others. */
    readonly rest?: readonly { readonly branch: string; readonly current: number }[]
  }[]
  readonly approximate?: string
}

export interface ListAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly what: string
  readonly rows: readonly Readonly<Record<string, string | number | null>>[]
}
