/** Circuit pictures of every demo set: complete, orthogonal, legible, and true to the numbers. */
import { type Circuit, circuitOf, drawCircuit, markText, readCondition, solve } from 'ringproof'
import { conditionIn } from 'ringproof/answer/condition-of-request'
import { networkOf } from 'ringproof/answer/solve'
import { gateOf } from 'ringproof/picture/circuit/circuit-of'
import { carriedBy, flowOf } from 'ringproof/picture/circuit/flows'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../../support/bench.ts'
import { bare, placement, SETS, shown } from './circuits.ts'
import { collisions, marksIn } from './legible.ts'

const CONDITIONS = ['on-hook', 'on-hook/ringing', 'off-hook', 'off-hook/break']

/** Rewires that change what hangs on what in ways of their own. */
const REWIRES = [
  'sedge-converted',
  'fescue-converted',
  'fescue-cores-bridged',
  'fescue-transmitter-parked',
  'fescue-unit-left-out',
  'marram-converted',
  'melick-to-three-wires',
  'brome-earth-parked',
]

describe.each([...SETS, ...REWIRES, 'cottage', 'museum-hall'])('the circuit of %s', (target) => {
  test('is the same in every condition but for contacts and currents', () => {
    const still = ({ nodes, pieces, links }: Circuit) => ({
      nodes,
      pieces: pieces.map(({ id, label, values, ends }) => [
        id,
        label,
        values,
        ends.map(({ pin, node }) => [pin, node]),
      ]),
      links: links.map(({ id, from, to }) => [id, from, to]),
    })
    const first = still(bare(target, 'on-hook'))
    for (const condition of CONDITIONS) expect(still(bare(target, condition))).toEqual(first)
    expect(still(shown(target, 'off-hook').circuit)).toEqual(first)
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
    // the words are the same in every condition, but for contacts that stand open or closed
    for (const condition of ['on-hook', 'off-hook/break'])
      expect(collisions(drawCircuit(bare(target, condition), placed))).toEqual([])
  })

  test.each(['on-hook/ringing', 'off-hook'])(
    '%s: carries what `solve` finds, and nothing is lost at a node',
    (condition) => {
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
    },
  )

  test('draws each contact as it stands', () => {
    for (const condition of ['on-hook', 'off-hook']) {
      const { pieces } = bare(target, condition)
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

test('what leaks through an idle set is drawn lightly, without an arrow', async () => {
  const { circuit, carries } = shown('fescue', 'on-hook')
  const flows = [...circuit.links, ...circuit.pieces].flatMap(({ flow }) =>
    flow === undefined ? [] : [flow],
  )
  const leaks = flows.filter(({ size, weight }) => weight > 0 && size < 10e-6)
  expect(leaks.length).toBeGreaterThan(0)
  for (const { weight, sense } of [...leaks, ...Object.values(carries)]) {
    expect([weight, sense]).toEqual([1, 0])
  }
  const drawn = markText(drawCircuit(circuit, await placement('fescue')))
  expect(drawn).not.toContain('arrowhead')
})

test('no arrow stands in an open contact, however much gets through it', () => {
  const { net, place } = networkOf({ target: 'fescue' }, DEMO)
  const condition = conditionIn(net, place, 'on-hook', 'on-hook')
  const { pieces } = circuitOf(net, place, { condition, currents: () => ({ re: 0.03, im: 0 }) })
  const senses = (gate: 'open' | 'closed') =>
    new Set(pieces.filter((one) => one.gate === gate).map(({ flow }) => flow?.sense))
  expect(senses('open')).toEqual(new Set([0]))
  expect(senses('closed')).toEqual(new Set([1]))
  const flows = new Map(net.branches.map(({ index }) => [index, flowOf([0.03, 0], 0.03)]))
  const carries = carriedBy(net, place, flows, (part) => gateOf(part, condition) === 'open')
  for (const { gate, thing } of pieces) {
    if (gate !== undefined && thing !== undefined) expect(carries[thing]?.sense).toBe(gate === 'open' ? 0 : 1)
  }
})

test('each winding has the current of its own', () => {
  const { net } = networkOf({ target: 'fescue' }, DEMO)
  const { circuit, carries } = shown('fescue', 'off-hook')
  const coils = circuit.pieces.filter(({ thing }) =>
    net.parts.some(({ name, count, sort }) => `part:${name}` === thing && count > 1 && sort === 'part'),
  )
  expect(coils.length).toBeGreaterThan(0)
  for (const { thing } of coils) {
    const own = Object.entries(carries).filter(([key]) => key.startsWith(`${thing}.`))
    expect(Math.max(...own.map(([, { size }]) => size))).toBe(thing && carries[thing]?.size)
  }
  expect(carries['part:coil.a']?.weight).toBe(4)
  expect(carries['part:coil.b']?.weight ?? 0).toBeLessThan(2)
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

test('a symbol is joined by lines as heavy as the wires that come to it', async () => {
  const { circuit } = shown('fescue', 'off-hook')
  const drawn = drawCircuit(circuit, await placement('fescue'))
  for (const piece of circuit.pieces) {
    const group = [...marksIn(drawn)].find(({ attributes }) => attributes['data-thing'] === piece.thing)
    const legs = [...(group === undefined ? [] : marksIn(group))]
      .map(({ attributes }) => String(attributes.class))
      .filter((one) => one.startsWith('leg'))
    const weights = piece.ends.map(({ flow }) => `leg flow-${flow?.weight}`)
    expect([piece.id, new Set(legs)]).toEqual([piece.id, new Set(weights)])
  }
})

test('drawn again, only what has changed is another mark', async () => {
  const { circuit } = shown('marram', 'off-hook')
  const placed = await placement('marram')
  const marks = (selected: 'part:hook' | 'part:bell' | undefined) =>
    new Map(
      [
        ...marksIn(
          drawCircuit(circuit, placed, { live: true, ...(selected === undefined ? {} : { selected }) }),
        ),
      ]
        .filter(({ attributes }) => attributes['data-thing'] !== undefined)
        .map((mark) => [String(attributes(mark)), mark] as const),
    )
  const attributes = (mark: { readonly attributes: Readonly<Record<string, unknown>> }): unknown =>
    `${mark.attributes['data-thing']} ${mark.attributes['aria-label']}`
  const [first, second] = [marks('part:hook'), marks('part:bell')]
  const other = [...first].filter(([key, mark]) => second.get(key) !== mark).map(([key]) => key.split(' ')[0])
  expect(new Set(other)).toEqual(new Set(['part:hook', 'part:bell']))
  expect(markText(drawCircuit(structuredClone(circuit), structuredClone(placed), { live: true }))).toBe(
    markText(drawCircuit(circuit, placed, { live: true })),
  )
})

test('a placement that serves another circuit is cut up anew', async () => {
  const { circuit } = shown('marram', 'off-hook')
  const placed = await placement('marram')
  const [link, ...links] = circuit.links
  const fewer: Circuit = { ...circuit, links }
  const wires = (one: Circuit) =>
    [...marksIn(drawCircuit(one, placed))].map(({ attributes }) => attributes['data-thing'])
  expect(wires(circuit)).toContain(link?.thing)
  expect(wires(fewer).filter((thing) => thing === link?.thing).length).toBeLessThan(
    wires(circuit).filter((thing) => thing === link?.thing).length,
  )
})
