/** What became of one move: the set after it, or why the wiring it met does not allow it. */
import type { SetSheet } from '../sheet/model.ts'

/** Why a move is refused: what stands there, what would be right, what to write instead. */
export interface Refusal {
  readonly found: string
  readonly expected: string
  readonly mend?: string
  /** The key of the move that is wrong, where it is not the first one. */
  readonly key?: 'onto'
}

/** One of the two, never both. */
export type Outcome = { readonly set: SetSheet } | { readonly refusal: Refusal }

/** A refusal as an outcome; an undefined mend is left out. */
export function refused(found: string, expected: string, mend?: string): Outcome {
  return { refusal: { found, expected, ...(mend === undefined ? {} : { mend }) } }
}
