/**
 * Where the symbols of a circuit picture go: asked of the layout library in a worker of its own. That worker is the
 * library's file as it was published: it answers its own half of the talk, in `src/layout/engine-behind.ts`.
 */
import layoutWorker from 'elkjs/lib/elk-worker.min.js?url'
import type { Circuit, Placement } from '../../index.ts'
import { engineBehind } from '../../layout/engine-behind.ts'
import { placeWith } from '../../layout/place-with.ts'

const engine = engineBehind(() => new Worker(layoutWorker))

/** Places a circuit, where it can be like another; the library is loaded when the first is asked for. */
export function place(circuit: Circuit, like?: Placement): Promise<Placement> {
  return placeWith(engine, circuit, like)
}

let last = 0

/** The same, but undefined where another was asked for after: only the newest counts. */
export async function placeNewest(circuit: Circuit, like?: Placement): Promise<Placement | undefined> {
  last += 1
  const turn = last
  const placement = await place(circuit, like)
  return turn === last ? placement : undefined
}
