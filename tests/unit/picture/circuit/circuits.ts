/** Circuits of the demo, solved and placed once each. */
import { type Circuit, type CircuitShown, circuitOf, now, type Placement } from 'ringproof'
import { conditionIn } from 'ringproof/answer/condition-of-request'
import { networkOf } from 'ringproof/answer/solve'
import { placeCircuit } from 'ringproof/layout/place-circuit'
import type { Engine } from 'ringproof/layout/place-with'
import { DEMO } from '../../../support/bench.ts'

export const SETS: readonly string[] = DEMO.names('set')

const solved = new Map<string, CircuitShown>()

/** A set, or the first of premises, in a condition. */
export function shown(target: string, condition: string): CircuitShown {
  const key = `${target} ${condition}`
  const known = solved.get(key) ?? now({ target, condition }, DEMO)
  solved.set(key, known)
  return known
}

const nets = new Map<string, ReturnType<typeof networkOf>>()

/** The same without what flows, which needs no solving. */
export function bare(target: string, condition: string): Circuit {
  const network = nets.get(target) ?? networkOf({ target }, DEMO)
  nets.set(target, network)
  const { net, place } = network
  return circuitOf(net, place, { condition: conditionIn(net, place, condition, 'on-hook') })
}

let engine: Promise<Engine> | undefined

/** The layout library, started once. */
export async function libraryHere(): Promise<Engine> {
  engine ??= import('elkjs/lib/elk.bundled.js').then(({ default: Elk }) => new Elk())
  return engine
}

const placed = new Map<string, Promise<Placement>>()

/** Its placement, which is the same in every condition. */
export function placement(target: string): Promise<Placement> {
  const known = placed.get(target) ?? libraryHere().then((one) => placeCircuit(bare(target, 'on-hook'), one))
  placed.set(target, known)
  return known
}
