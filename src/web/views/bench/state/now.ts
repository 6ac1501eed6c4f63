/** What flows in the condition that the set is put in, and the circuit picture with it. */
import { effect, type Signal, signal } from '@preact/signals'
import type { Circuit, Placement } from '../../../../index.ts'
import { condition, onBench, reversed, side } from '../../../state/work.ts'
import { placeNewest } from '../../../talk/place.ts'
import type { Now } from '../../../talk/protocol.ts'
import { bench } from '../../../talk/solver.ts'
import { judged, tookTrouble } from './judgement.ts'

export const now: Signal<Now | undefined> = signal(undefined)
/** Circuit and places that belong together. */
export const placed: Signal<{ readonly circuit: Circuit; readonly places: Placement } | undefined> =
  signal(undefined)

/** Asks again whenever the wiring, the side or the condition changes, until it is ended. */
export function watchNow(): () => void {
  return effect(() => {
    const work = judged.value?.of
    if (work === undefined) return
    const ask = {
      bench: onBench(work),
      side: side.value,
      condition: condition.value,
      reversed: reversed.value,
    }
    void bench
      .newest('now', 'now', ask)
      .then((answer) => {
        if (answer === undefined) return
        now.value = answer
        return placeAgain(answer.shown.circuit)
      })
      .catch(tookTrouble)
  })
}

/** What decides where things go: currents do not. */
function shapeOf({ nodes, pieces, links }: Circuit): string {
  return JSON.stringify([
    nodes.map(({ id, label }) => [id, label]),
    pieces.map(({ id, label, values, gate, ends }) => [
      id,
      label,
      values,
      gate,
      ends.map(({ pin, node }) => [pin, node]),
    ]),
    links.map(({ id, from, to }) => [id, from, to]),
  ])
}

/** Few are kept: as found, as proposed, and the last moves back and forth. */
const KEPT = 12
const known = new Map<string, Placement>()

async function placeAgain(circuit: Circuit): Promise<void> {
  const shape = shapeOf(circuit)
  const before = known.get(shape)
  if (before !== undefined) {
    placed.value = { circuit, places: before }
    return
  }
  // after a move most of it stays where it was
  const places = await placeNewest(circuit, placed.peek()?.places)
  if (places === undefined) return
  known.set(shape, places)
  for (const oldest of known.keys()) {
    if (known.size <= KEPT) break
    known.delete(oldest)
  }
  // currents may have changed while it was being placed
  const newest = now.peek()?.shown.circuit
  if (newest !== undefined && shapeOf(newest) === shape) placed.value = { circuit: newest, places }
}
