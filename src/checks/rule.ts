/** Checks: one question each, answered by a verdict with its evidence. */
import type { Figure, FigureUnit } from '../figures/figure.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Limit } from './limits.ts'

export type VerdictState = 'holds' | 'marginal' | 'fails' | 'unknown'
export type Reason = 'not-modelled' | 'no-limit' | 'no-line' | 'no-convergence' | 'undetermined'

/** The limit as a verdict shows it, SI units. */
export interface VerdictLimit {
  readonly value: number
  readonly side: 'at-most' | 'at-least'
  readonly unit: FigureUnit
  readonly source: string
  readonly clause: string
  readonly grade: Limit['grade']
}

/** What every verdict says. */
interface Judged {
  readonly check: string
  /** Place, core, part or terminal that it is about. */
  readonly subject: string
  readonly condition: Condition
  /** What was found, in a sentence or two. */
  readonly says: string
  readonly figure: Figure | null
  readonly limit: VerdictLimit | null
  /** How far within the limit, as a fraction of it; negative when beyond. */
  readonly margin: number | null
  /** Ids of terminals and joints, in order. */
  readonly path: readonly string[]
  /** Figures that show what follows. */
  readonly consequences?: readonly Consequence[]
}

/** A figure as it is, and as it would be with the mend. */
export interface Consequence {
  readonly figure: Figure
  readonly mended?: Figure
}

export interface Holds extends Judged {
  readonly state: 'holds'
  /** Worth a word although nothing fails. */
  readonly remark?: string
}
export interface Marginal extends Judged {
  readonly state: 'marginal'
  readonly mend: string
}
export interface Fails extends Judged {
  readonly state: 'fails'
  readonly mend: string
}
export interface Unknown extends Judged {
  readonly state: 'unknown'
  readonly reason: Reason
}
export type Verdict = Holds | Marginal | Fails | Unknown
