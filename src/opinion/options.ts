/** What can be asked of a second opinion. */
import type { Supply } from '../answer/supply.ts'

/** How a second opinion is to be had. */
export interface OpinionOptions {
  /** Decimal digits, 16 to 100; doubles when absent. */
  readonly digits?: number
  /** Told what is being done, for a person who waits. */
  readonly progress?: (says: string) => void
  /** Who solves at first; the solver when absent. */
  readonly supply?: Supply
}
