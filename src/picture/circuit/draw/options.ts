/** How a circuit is drawn. */
import type { Thing } from '../../thing.ts'

export interface DrawCircuitOptions {
  readonly selected?: Thing
  /** Things that a next step may go to. */
  readonly offered?: readonly Thing[]
  /** Node or branch ids of a way through the circuit that is marked. */
  readonly path?: readonly string[]
  /** Marks that stand for things can be reached and worked by keyboard. */
  readonly live?: boolean
  /** Draws what flows; it does when absent. */
  readonly flows?: boolean
}
