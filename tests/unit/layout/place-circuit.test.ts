/** Placing: the same circuit goes to the same places, wires end at their pins. */
import { type CircuitShown, frameOf, nodeFrame, now } from 'ringproof'
import { engineBehind } from 'ringproof/layout/engine-behind'
import { placeCircuit } from 'ringproof/layout/place-circuit'
import { withoutStrays } from 'ringproof/layout/strays'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const shown = (target: string, condition: string): CircuitShown => now({ target, condition }, DEMO)

test('is the same each time and in each condition, to the last byte', async () => {
  const first = await placeCircuit(shown('brome', 'on-hook').circuit)
  const again = await placeCircuit(shown('brome', 'on-hook').circuit)
  const other = await placeCircuit(shown('brome', 'off-hook/break').circuit)
  expect(JSON.stringify(again)).toBe(JSON.stringify(first))
  expect(JSON.stringify(other)).toBe(JSON.stringify(first))
})

test('wires begin in the middle of their nodes and end at their pins', async () => {
  const { circuit } = shown('foxtail', 'on-hook')
  const { boxes, wires } = await placeCircuit(circuit)
  const near = (p: readonly number[] | undefined, x: number, y: number): void => {
    expect(p?.[0]).toBeCloseTo(x, 1)
    expect(p?.[1]).toBeCloseTo(y, 1)
  }
  const nodes = new Map(circuit.nodes.map((node) => [node.id, node]))
  for (const piece of circuit.pieces) {
    const box = boxes[piece.id]
    for (const { pin, node } of piece.ends) {
      const points = wires.find(({ id }) => id === `${piece.id}:${pin}`)?.points ?? []
      const end = frameOf(piece, box?.turn).pins[pin]?.end
      near(points.at(-1), (box?.x ?? 0) + (end?.[0] ?? 0), (box?.y ?? 0) + (end?.[1] ?? 0))
      const at = nodes.get(node)
      const middle = at === undefined ? undefined : nodeFrame(at).middle
      near(points[0], (boxes[node]?.x ?? 0) + (middle?.[0] ?? 0), (boxes[node]?.y ?? 0) + (middle?.[1] ?? 0))
    }
  }
})

test('nothing lies over anything else', async () => {
  const { boxes } = await placeCircuit(shown('fescue', 'on-hook').circuit)
  const all = Object.entries(boxes)
  all.forEach(([id, p], k) => {
    for (const [other, q] of all.slice(k + 1)) {
      const over = p.x < q.x + q.width && q.x < p.x + p.width && p.y < q.y + q.height && q.y < p.y + p.height
      expect(over, `${id} over ${other}`).toBe(false)
    }
  })
})

test('the way goes from left to right, zone by zone', async () => {
  const { circuit } = shown('sedge', 'on-hook')
  const { boxes } = await placeCircuit(circuit)
  const middleOf = (zone: string): number => {
    const all = circuit.nodes.filter((node) => node.zone === zone && node.looks !== 'earth')
    return all.reduce((sum, { id }) => sum + (boxes[id]?.x ?? 0), 0) / all.length
  }
  const zones = ['exchange', 'premises', 'cord', 'set', 'handset'].map(middleOf)
  expect(zones).toEqual(zones.toSorted((p, q) => p - q))
})

test('wires that lead nowhere lie below the rest and stretch nothing', async () => {
  const { circuit } = shown('sedge', 'on-hook')
  const { joined, strays } = withoutStrays(circuit)
  expect(strays.links.map(({ thing }) => thing)).toEqual(['core:line.spare'])
  expect(strays.nodes.map(({ label }) => label).sort()).toEqual(['C4', 'plug.spare'])
  expect(joined.nodes.length + strays.nodes.length).toBe(circuit.nodes.length)
  const whole = await placeCircuit(circuit)
  const alone = await placeCircuit(joined)
  const lowest = Math.max(...Object.values(alone.boxes).map(({ y, height }) => y + height))
  for (const { id } of strays.nodes) expect(whole.boxes[id]?.y).toBeGreaterThan(lowest)
  for (const { id } of joined.nodes) expect(whole.boxes[id]).toEqual(alone.boxes[id])
  expect(whole.width).toBe(alone.width)
})

test('bare wires stay together', () => {
  const { circuit } = shown('sedge', 'on-hook')
  const wires = { ...circuit, pieces: [] }
  expect(withoutStrays(wires).joined).toBe(wires)
  expect(withoutStrays(wires).strays.nodes).toEqual([])
})

test('a circuit with nothing in it has no size to speak of', async () => {
  const { boxes, wires } = await placeCircuit({ name: 'none', nodes: [], pieces: [], links: [] })
  expect([boxes, wires]).toEqual([{}, []])
})

test('behind a worker the same library gives the same places', async () => {
  const { circuit } = shown('marram', 'on-hook')
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js')
  const here = new Elk()
  // a worker as the library's near half sees one
  const worker = {
    onmessage: (_: { data: unknown }): void => {},
    postMessage({ id, cmd, graph }: { id: number; cmd: string; graph: never }): void {
      const answer = cmd === 'layout' ? here.layout(graph) : Promise.resolve(undefined)
      void answer.then((data) => this.onmessage({ data: { id, data } }))
    },
    terminate: (): void => {},
  }
  const near = await placeCircuit(circuit)
  const far = await placeCircuit(
    circuit,
    engineBehind(() => worker),
  )
  expect(JSON.stringify(far)).toBe(JSON.stringify(near))
})
