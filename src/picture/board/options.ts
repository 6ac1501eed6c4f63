/** How a terminal picture is drawn. */
import type { Flow } from '../circuit/circuit.ts'
import type { Thing } from '../thing.ts'

export interface DrawBoardOptions {
  /** What is taken up. */
  readonly selected?: Thing
  /** Where what is selected could go. */
  readonly offered?: ReadonlySet<Thing>
  /** What a move was refused for. */
  readonly refused?: ReadonlySet<Thing>
  /** Terminals at which the leads of a meter are. */
  readonly leads?: { readonly red?: string; readonly black?: string }
  /** The currents of one condition by thing; what carries nothing is left out. */
  readonly carries?: Readonly<Record<string, Flow>>
  /** Terminals on the way that a verdict speaks of. */
  readonly path?: readonly string[]
  /** Its marks can be operated: focus, names and states for those who do not see them. */
  readonly live?: boolean
  /** How many strips may stand side by side; three when absent. A phone has room for one. */
  readonly columns?: number
}
