/** Where the symbols of a circuit picture go, by a layout library that is there already. */
import type { Circuit, Placement } from '../index.ts'
import { isClear } from './clear.ts'
import type Elk from './elk.d.ts'
import { graphOf, type Manner } from './graph.ts'
import { below, placementOf } from './placement.ts'
import { withoutStrays } from './strays.ts'

/** Whatever lays a graph out: the library in this thread, or behind a worker. */
export type Engine = Pick<Elk, 'layout'>

/**
 * Places every node, symbol and wire of a circuit; whatever flows in it, it goes to the same places. Wires that lead
 * nowhere lie below the rest, where they stretch nothing.
 */
export async function placeWith(engine: Engine, circuit: Circuit): Promise<Placement> {
  const { joined, strays } = withoutStrays(circuit)
  const placed =
    (await placedClose(engine, joined, 'close')) ??
    (await placedClose(engine, joined, 'anew')) ??
    (await placedBy(engine, joined, 'plain'))
  if (strays.nodes.length === 0) return placed
  return below(placed, await placedBy(engine, strays, 'apart'))
}

/** With close layers, unless that fails: the library's step for it gives up on some graphs, and on others has wires
 * run over words. */
async function placedClose(
  engine: Engine,
  circuit: Circuit,
  manner: 'close' | 'anew',
): Promise<Placement | undefined> {
  try {
    const placed = await placedBy(engine, circuit, manner)
    return isClear(circuit, placed) ? placed : undefined
  } catch {
    return undefined
  }
}

async function placedBy(engine: Engine, circuit: Circuit, manner: Manner): Promise<Placement> {
  const made = graphOf(circuit, manner)
  return placementOf(circuit, made, await engine.layout(made.graph))
}
