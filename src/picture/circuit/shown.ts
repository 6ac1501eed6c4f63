/** A circuit in one condition, with what flows. */
import type { Condition } from '../../netlist/condition.ts'
import type { Thing } from '../thing.ts'
import type { Circuit, Flow } from './circuit.ts'

export interface CircuitShown {
  readonly circuit: Circuit
  readonly condition: Condition
  readonly analysis: 'direct' | 'alternating'
  /** Hz, or null for direct current. */
  readonly frequency: number | null
  /** The same currents by thing, for the terminal picture; what carries nothing is left out. */
  readonly carries: Readonly<Record<Thing, Flow>>
  /** Why it is approximate. */
  readonly approximate?: string
}
