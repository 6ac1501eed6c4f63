/** Numbers and lists in the lesson's sentences. */
import { formatQuantity } from '../../index.ts'

/** Below this a current is nothing, A: no instrument of a workshop shows it. */
const NOTHING = 1e-8

/** A current as people read it. */
export function milli(amps: number): string {
  return Math.abs(amps) < NOTHING ? 'nothing' : formatQuantity(amps, 'A', 3)
}

/** A ringing load. */
export const loadText = (load: number): string => (load > 999 ? 'more than 999' : load.toFixed(2))

/** How many times as much. */
export const timesText = (ratio: number): string => `${ratio.toFixed(ratio < 10 ? 1 : 0)} times`

/** `a, b and c`. */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`
}
