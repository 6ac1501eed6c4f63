/** Conditions of a whole line: everybody on-hook. */
import type { Condition, LineState } from '../../netlist/condition.ts'

/** The line in a state, and every set on it on-hook with dial at rest and key up. */
export function everybody(line: LineState): Condition {
  return { line, sets: {} }
}
