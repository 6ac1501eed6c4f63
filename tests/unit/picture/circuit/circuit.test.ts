/** Circuit pictures of every demo set: complete, orthogonal, legible, and true to the numbers. */
import { type Circuit, drawCircuit, type Mark, markText, readCondition, solve } from 'ringproof'
import { textWidth } from 'ringproof/picture/text-size'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../../support/bench.ts'
import { placement, SETS, shown } from './circuits.ts'

const CONDITIONS = ['on-hook', 'on-hook/ringing', 'off-hook', 'off-hook/break']

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly says: string
}

function* marksIn(mark: Mark): Generator<Mark> {
  yield mark
  for (const child of mark.children) if (typeof child !== 'string') yield* marksIn(child)
}

function textBoxes(drawn: Mark): readonly Box[] {
  return [...marksIn(drawn)]
    .filter(({ tag, attributes }) => tag === 'text' && attributes.class !== 'letters')
    .map(({ attributes, children }) => {
      const says = children.join('')
      const width = textWidth(says, 11)
      const x = Number(attributes.x)
      const left = attributes['text-anchor'] === 'middle' ? x - width / 2 : x
      const y = Number(attributes.y)
      return { left, right: left + width, top: y - 9, bottom: y + 2.5, says }
    })
}

/** Straight pieces of every wire that is drawn. */
function wirePieces(drawn: Mark): readonly Box[] {
  return [...marksIn(drawn)]
    .filter(({ attributes }) => String(attributes.class).split(' ').includes('wire'))
    .flatMap(({ attributes }) => {
      const points = String(attributes.d)
        .slice(1)
        .split('L')
        .map((one) => one.split(' ').map(Number))
      return points.slice(1).map(([x = 0, y = 0], k) => {
        const [u = 0, v = 0] = points[k] ?? []
        return {
          left: Math.min(x, u),
          right: Math.max(x, u),
          top: Math.min(y, v),
          bottom: Math.max(y, v),
          says: String(attributes.d),
        }
      })
    })
}

function overlaps(p: Box, q: Box): boolean {
  return p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom
}

const overlapsLine = (text: Box, wire: Box): boolean =>
  text.left < wire.right + 1 &&
  wire.left - 1 < text.right &&
  text.top < wire.bottom + 1 &&
  wire.top - 1 < text.bottom

describe.each([...SETS, 'cottage', 'museum-hall'])('the circuit of %s', (target) => {
  test('is the same in every condition but for contacts and currents', () => {
    const bare = ({ nodes, pieces, links }: Circuit) => ({
      nodes,
      pieces: pieces.map(({ id, label, values, ends }) => [
        id,
        label,
        values,
        ends.map(({ pin, node }) => [pin, node]),
      ]),
      links: links.map(({ id, from, to }) => [id, from, to]),
    })
    const first = bare(shown(target, 'on-hook').circuit)
    for (const condition of CONDITIONS) expect(bare(shown(target, condition).circuit)).toEqual(first)
  })

  test('is placed and drawn whole, with orthogonal wires', async () => {
    const { circuit } = shown(target, 'off-hook')
    const placed = await placement(target)
    for (const { id } of [...circuit.nodes, ...circuit.pieces]) expect(placed.boxes).toHaveProperty([id])
    const wires = new Map(placed.wires.map(({ id, points }) => [id, points]))
    const wanted = [
      ...circuit.links.map(({ id }) => id),
      ...circuit.pieces.flatMap(({ id, ends }) => ends.map(({ pin }) => `${id}:${pin}`)),
    ]
    expect([...wires.keys()].sort()).toEqual([...wanted].sort())
    for (const points of wires.values()) {
      expect(points.length).toBeGreaterThan(1)
      points.slice(1).forEach(([x, y], k) => {
        const [u, v] = points[k] ?? [Number.NaN, Number.NaN]
        expect(x === u || y === v).toBe(true)
      })
    }
    const things = new Set(
      [...marksIn(drawCircuit(circuit, placed))].map(({ attributes }) => attributes['data-thing']),
    )
    for (const { thing } of [...circuit.nodes, ...circuit.pieces, ...circuit.links])
      if (thing !== undefined) expect(things).toContain(thing)
  })

  test('has no words over other words or over wires', async () => {
    const placed = await placement(target)
    for (const condition of CONDITIONS) {
      const drawn = drawCircuit(shown(target, condition).circuit, placed)
      const texts = textBoxes(drawn)
      const wires = wirePieces(drawn)
      texts.forEach((one, k) => {
        const words = texts.slice(k + 1).filter((other) => overlaps(one, other))
        expect(words.map(({ says }) => `${one.says} over ${says}`)).toEqual([])
        const lines = wires.filter((wire) => overlapsLine(one, wire))
        expect(lines.map(({ says }) => `${one.says} over ${says}`)).toEqual([])
      })
    }
  })

  test.each(CONDITIONS)('%s: carries what `solve` finds, and nothing is lost at a node', (condition) => {
    const { circuit, frequency } = shown(target, condition)
    const { currents } = solve({ target, condition, ...(frequency === null ? {} : { frequency }) }, DEMO)
    for (const { id, flow } of circuit.links) {
      const found = currents[id]
      const [re, im] =
        found === null || found === undefined
          ? []
          : typeof found === 'number'
            ? [found, 0]
            : [found.re, found.im]
      expect(flow?.current?.[0]).toBeCloseTo(re ?? Number.NaN, 12)
      expect(flow?.current?.[1]).toBeCloseTo(im ?? Number.NaN, 12)
    }
    for (const { id, looks } of circuit.nodes) {
      if (looks === 'earth') continue
      let [re, im, most] = [0, 0, 0]
      const add = (current: readonly [number, number] | undefined, sign: number): void => {
        re += sign * (current?.[0] ?? 0)
        im += sign * (current?.[1] ?? 0)
        most = Math.max(most, Math.abs(current?.[0] ?? 0))
      }
      for (const { from, to, flow } of circuit.links) {
        if (from === id) add(flow?.current, 1)
        if (to === id) add(flow?.current, -1)
      }
      for (const { ends } of circuit.pieces)
        for (const { node, flow } of ends) if (node === id) add(flow?.current, 1)
      expect(Math.hypot(re, im), id).toBeLessThan(1e-9 + 1e-6 * most)
    }
  })

  test('draws each contact as it stands', () => {
    for (const condition of ['on-hook', 'off-hook']) {
      const { pieces } = shown(target, condition).circuit
      const said = readCondition(condition)
      const hooks = pieces.filter(({ values }) => values === 'closes, off-hook')
      for (const { gate } of hooks) expect(gate).toBe(said?.hook === 'off-hook' ? 'closed' : 'open')
    }
  })
})

test('the greatest current is drawn the heaviest, and what carries nothing the lightest', () => {
  const { circuit, carries } = shown('fescue', 'off-hook')
  const flows = circuit.links.flatMap(({ flow }) => (flow === undefined ? [] : [flow]))
  const most = Math.max(...flows.map(({ size }) => size))
  expect(flows.find(({ size }) => size === most)?.weight).toBe(4)
  for (const { size, weight, sense } of flows) {
    if (size === 0) expect([weight, sense]).toEqual([0, 0])
  }
  expect(carries['core:line.a']?.weight).toBe(4)
  expect(carries['core:line.spare']).toBeUndefined()
})

test('foreign words stay words', async () => {
  const { circuit } = shown('sedge', 'on-hook')
  const nasty = '<script>alert("1")</script>&'
  const bad: Circuit = {
    ...circuit,
    name: nasty,
    nodes: circuit.nodes.map((node, k) => (k === 0 ? { ...node, label: nasty } : node)),
  }
  const text = markText(drawCircuit(bad, await placement('sedge'), { live: true }))
  expect(text).not.toContain('<script')
  expect(text).toContain('&lt;script&gt;')
})

test('a live picture can be worked by keyboard, and says what is chosen', async () => {
  const { circuit } = shown('fescue', 'off-hook')
  const placed = await placement('fescue')
  const things = (live: boolean) =>
    [
      ...marksIn(drawCircuit(circuit, placed, { live, selected: 'part:hook', offered: ['part:bell'] })),
    ].filter(({ attributes }) => attributes['data-thing'] !== undefined)
  for (const { attributes } of things(true)) {
    expect(attributes.tabindex).toBe(0)
    expect(attributes['aria-pressed']).toBe(attributes['data-thing'] === 'part:hook' ? 'true' : 'false')
    expect(String(attributes['aria-label'])).not.toBe('')
  }
  for (const { attributes } of things(false)) expect(attributes.tabindex).toBeUndefined()
  const offered = things(true).filter(({ attributes }) => String(attributes.class).includes('offered'))
  expect(offered.map(({ attributes }) => attributes['data-thing'])).toEqual(['part:bell'])
})

test('a way is marked, and currents can be left out', async () => {
  const { circuit } = shown('fescue', 'off-hook')
  const placed = await placement('fescue')
  const drawn = drawCircuit(circuit, placed, {
    flows: false,
    path: ['bench/a', 'fescue/plug.a', 'fescue/A1', 'fescue/A2'],
  })
  const classes = [...marksIn(drawn)].map(({ attributes }) => String(attributes.class))
  expect(classes.filter((one) => one === 'way').length).toBeGreaterThanOrEqual(3)
  expect(classes.filter((one) => one.includes('flow-') || one === 'arrow')).toEqual([])
})
