/** Where the symbols of a circuit picture go, with the layout library in this very thread. */
import type { Circuit, Placement } from '../index.ts'
import { type Engine, placeWith } from './place-with.ts'

async function engineHere(): Promise<Engine> {
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js')
  return new Elk()
}

/**
 * Places every node, symbol and wire of a circuit. Deterministic: the same circuit, whatever flows in it and however
 * its contacts stand, goes to the same places. Not for a web worker, which the library would take for its own.
 * @param engine the library in this thread when absent
 */
export async function placeCircuit(circuit: Circuit, engine?: Engine): Promise<Placement> {
  return placeWith(engine ?? (await engineHere()), circuit)
}
