/** Whether a placement can be read, and what is done where it cannot. */
import { now, type Placement } from 'ringproof'
import { isClear } from 'ringproof/layout/clear'
import type { Engine } from 'ringproof/layout/place-with'
import { placeWith } from 'ringproof/layout/place-with'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const { circuit } = now({ target: 'darnel', condition: 'on-hook' }, DEMO)

async function library(): Promise<Engine> {
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js')
  return new Elk()
}

test('a placement is clear until something lies over something else', async () => {
  const placed = await placeWith(await library(), circuit)
  expect(isClear(circuit, placed)).toBe(true)
  const [node, other] = circuit.nodes.map(({ id }) => id)
  const box = placed.boxes[node ?? '']
  if (box === undefined) throw new Error('no box')
  const over: Placement = { ...placed, boxes: { ...placed.boxes, [other ?? '']: box } }
  expect(isClear(circuit, over)).toBe(false)
  const [wire] = placed.wires
  const foreign = circuit.pieces.find(({ id }) => !wire?.id.startsWith(id))
  const at = placed.boxes[foreign?.id ?? '']
  const y = (at?.y ?? 0) + (at?.height ?? 0) / 2
  const across: Placement['wires'][number] = {
    id: wire?.id ?? '',
    points: [
      [-10, y],
      [placed.width + 10, y],
    ],
  }
  expect(isClear(circuit, { ...placed, wires: [across] })).toBe(false)
})

test('where close layers cannot be had, everything is placed without', async () => {
  const elk = await library()
  let refused = 0
  const shy: Engine = {
    layout(graph) {
      if (graph.layoutOptions?.['elk.layered.compaction.postCompaction.strategy'] === undefined)
        return elk.layout(graph)
      refused += 1
      return Promise.reject(new Error('no'))
    },
  }
  const placed = await placeWith(shy, circuit)
  expect(refused).toBe(2)
  expect(isClear(circuit, placed)).toBe(true)
  const broken: Engine = { layout: () => Promise.reject(new Error('nothing goes')) }
  await expect(placeWith(broken, circuit)).rejects.toThrow('nothing goes')
})
