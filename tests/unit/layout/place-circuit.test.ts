/** Placing: the same circuit goes to the same places, wires end at their pins. */
import { type CircuitShown, frameOf, nodeFrame, now, type Placement } from 'ringproof'
import { isClear } from 'ringproof/layout/clear'
import { engineBehind } from 'ringproof/layout/engine-behind'
import { isLike } from 'ringproof/layout/hint'
import { placeCircuit } from 'ringproof/layout/place-circuit'
import { placeWith } from 'ringproof/layout/place-with'
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

/** Pairs that both placements have, and of them those that have changed sides, upright or across. */
function flips(before: Placement, after: Placement): readonly [pairs: number, flipped: number] {
  const ids = Object.keys(before.boxes).filter((id) => after.boxes[id] !== undefined)
  let [pairs, flipped] = [0, 0]
  ids.forEach((id, k) => {
    for (const other of ids.slice(k + 1))
      for (const axis of ['x', 'y'] as const) {
        const away = ({ boxes }: Placement): number => (boxes[id]?.[axis] ?? 0) - (boxes[other]?.[axis] ?? 0)
        if (Math.abs(away(before)) < 15 || Math.abs(away(after)) < 15) continue
        pairs += 1
        if (away(before) * away(after) < 0) flipped += 1
      }
  })
  return [pairs, flipped]
}

test.each([
  ['fescue', 'land core: handset.r2, onto: B2'],
  ['sedge', 'lift strap: A1-C3'],
])('after a move most of %s stays where it was, if asked', async (set, move) => {
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js')
  const engine = new Elk()
  const text = `ringproof: 1\nsheet: rewire\nname: mine\nset: ${set}\nmoves:\n  - {${move}}\n`
  const { circuit } = now({ target: '', text: { file: 'mine.yaml', text } }, DEMO)
  const before = await placeWith(engine, shown(set, 'on-hook').circuit)
  const anew = await placeWith(engine, circuit)
  const kept = await placeWith(engine, circuit, before)
  const [pairs, flipped] = flips(before, kept)
  expect(flipped / pairs).toBeLessThan(0.06)
  // laid out by itself, a quarter of it changes sides
  expect(flipped).toBeLessThan(flips(before, anew)[1] / 4)
  expect(isClear(circuit, kept)).toBe(true)
  expect(await placeWith(engine, circuit, before)).toEqual(kept)
})

test('a placement of before serves another condition as it is, and no other set', async () => {
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js')
  const engine = new Elk()
  const before = await placeWith(engine, shown('brome', 'on-hook').circuit)
  expect(await placeWith(engine, shown('brome', 'off-hook').circuit, before)).toBe(before)
  expect(isLike(shown('brome', 'on-hook').circuit, before)).toBe(true)
  expect(isLike(shown('marram', 'on-hook').circuit, before)).toBe(false)
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
