/** Where the symbols of a circuit picture go, by a layout library that is there already. */
import type { Circuit, Placement } from '../index.ts'
import { isClear } from './clear.ts'
import type Elk from './elk.d.ts'
import { graphOf, type Manner } from './graph.ts'
import { fits, isLike } from './hint.ts'
import { below, placementOf } from './placement.ts'
import { withoutStrays } from './strays.ts'

/** Whatever lays a graph out: the library in this thread, or behind a worker. */
export type Engine = Pick<Elk, 'layout'>

/**
 * Places every node, symbol and wire of a circuit; whatever flows in it, it goes to the same places. Wires that lead
 * nowhere lie below the rest, where they stretch nothing.
 * @param like a placement of before: taken as it is where it is one of this very circuit, as in another condition; after
 *   a move what has not changed mostly keeps its place among the rest; one of another circuit says nothing
 */
export async function placeWith(engine: Engine, circuit: Circuit, like?: Placement): Promise<Placement> {
  if (like !== undefined && fits(circuit, like)) return like
  const { joined, strays } = withoutStrays(circuit)
  const known = like !== undefined && isLike(joined, like) ? like : undefined
  const placed =
    (known === undefined ? undefined : await placedClose(engine, joined, 'close', known)) ??
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
  like?: Placement,
): Promise<Placement | undefined> {
  try {
    const placed = await placedBy(engine, circuit, manner, like)
    return isClear(circuit, placed) ? placed : undefined
  } catch {
    return undefined
  }
}

async function placedBy(
  engine: Engine,
  circuit: Circuit,
  manner: Manner,
  like?: Placement,
): Promise<Placement> {
  const made = graphOf(circuit, manner, like)
  return placementOf(circuit, made, await engine.layout(made.graph))
}
