/** Numbers and lists in the lesson's sentences. */
import { formatQuantity } from '../../index.ts'
import type { BellReading } from './rig/reading.ts'

/** Below this a current is nothing, A: no instrument of a workshop shows it. */
const NOTHING = 1e-8

/** Below this share of what it rings from, no armature stirs: common practice, no source. */
const STIRS = 0.1

/** A current as people read it. */
export function milli(amps: number): string {
  return Math.abs(amps) < NOTHING ? 'nothing' : formatQuantity(amps, 'A', 3)
}

/** What a bell does: whatever gets something, but less than it rings from, need not be silent. */
export function soundText({ current, need, rings }: Pick<BellReading, 'current' | 'need' | 'rings'>): string {
  if (rings) return 'rings'
  return current < need * STIRS ? 'silent' : 'too little to ring'
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
