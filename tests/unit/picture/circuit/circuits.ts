/** Circuits of the demo, placed once each. */
import { type CircuitShown, now, type Placement } from 'ringproof'
import { placeCircuit } from 'ringproof/layout/place-circuit'
import { DEMO } from '../../../support/bench.ts'

export const SETS: readonly string[] = DEMO.names('set')

const solved = new Map<string, CircuitShown>()

/** A set, or the first of premises, in a condition. */
export function shown(target: string, condition: string, on?: string): CircuitShown {
  const key = `${target} ${condition} ${on ?? ''}`
  const known = solved.get(key) ?? now({ target, condition, ...(on === undefined ? {} : { on }) }, DEMO)
  solved.set(key, known)
  return known
}

const placed = new Map<string, Promise<Placement>>()

/** Its placement, which is the same in every condition. */
export function placement(target: string, on?: string): Promise<Placement> {
  const key = `${target} ${on ?? ''}`
  const known = placed.get(key) ?? placeCircuit(shown(target, 'on-hook', on).circuit)
  placed.set(key, known)
  return known
}
