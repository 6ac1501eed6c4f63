/** Where the symbols of a circuit picture go, by a layout library that is there already. */
import type { Circuit, Placement } from '../index.ts'
import type Elk from './elk.d.ts'
import { graphOf } from './graph.ts'
import { placementOf } from './placement.ts'

/** Whatever lays a graph out: the library in this thread, or behind a worker. */
export type Engine = Pick<Elk, 'layout'>

/** Places every node, symbol and wire of a circuit; whatever flows in it, it goes to the same places. */
export async function placeWith(engine: Engine, circuit: Circuit): Promise<Placement> {
  const made = graphOf(circuit)
  return placementOf(circuit, made, await engine.layout(made.graph))
}
