/** What flows, in words. */
import { formatQuantity } from '../../quantities/format.ts'
import type { Flow } from './circuit.ts'

/** A current as a person reads it: `30.5 mA`, or that none flows. */
export function flowText({ size, weight }: Flow): string {
  return weight === 0 ? 'no current' : formatQuantity(size, 'A', 3)
}
