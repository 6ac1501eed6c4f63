/** Where the symbols of a circuit picture go: asked of the layout library in a worker of its own. */
import type { Circuit, Placement } from '../../index.ts'
import { engineBehind } from '../../layout/engine-behind.ts'
import { placeWith } from '../../layout/place-with.ts'

const engine = engineBehind(
  () => new Worker(new URL('../worker/layout-worker.ts', import.meta.url), { type: 'module' }),
)

/** Places a circuit; the library is loaded when the first is asked for. */
export function place(circuit: Circuit): Promise<Placement> {
  return placeWith(engine, circuit)
}

let last = 0

/** The same, but undefined where another was asked for after: only the newest counts. */
export async function placeNewest(circuit: Circuit): Promise<Placement | undefined> {
  last += 1
  const turn = last
  const placement = await place(circuit)
  return turn === last ? placement : undefined
}
