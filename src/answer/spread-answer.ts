/** The answer to `spread`, as JSON shows it. */
import type { Reason, VerdictState } from '../checks/rule.ts'
import type { AgedRow } from '../spread/aged.ts'
import type { FigureSpread } from '../spread/study.ts'
import type { VerdictSpread } from '../spread/verdicts.ts'
import type { LooseValue } from '../spread/world.ts'
import type { Envelope } from './answer.ts'

/** A value and the limits within which it lies, in its unit. */
export interface SpreadValue {
  readonly id: string
  readonly part: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly unit: LooseValue['unit']
}

/** Figures and verdicts with every value somewhere within its limits. */
export interface SpreadAnswer extends Envelope {
  readonly outcome: 'answered'
  /** Years that the sets were aged by, and what that did; absent without age. */
  readonly aged?: { readonly years: number; readonly changes: readonly AgedRow[] }
  readonly values: readonly SpreadValue[]
  /** Values of parts, line and sockets that state no tolerance and stay as they are. */
  readonly 'without tolerance': number
  readonly figures: readonly FigureSpread[]
  readonly verdicts: readonly VerdictSpread[]
  /** Verdicts that compare no figure with a limit, as `check` gives them: nothing of them could spread. */
  readonly 'not followed': readonly {
    readonly check: string
    readonly subject: string
    readonly state: VerdictState
    readonly reason?: Reason
  }[]
}
