import { compile } from 'ringproof/netlist/compile'
import { branchAt, nodeName, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import {
  circuit,
  DEMO,
  endsOf,
  FESCUE,
  problemsOf,
  replacing,
  SKELETONS,
  set,
  specOf,
  stationHouse,
} from './_nets.ts'

const terminals = ['A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'B1', 'B2', 'B3', 'B4', 'B5', 'C1', 'C2', 'C3', 'C4']
const others = [
  'joint-1',
  'joint-2',
  'joint-3',
  'plug.a',
  'plug.b',
  'plug.ringing',
  'plug.spare',
  'handset.t1',
  'handset.t2',
  'handset.r1',
  'handset.r2',
]
const alone = (shelf = DEMO, place = 'fescue') =>
  compile({ name: 'fescue', sets: { [place]: { set: set('fescue', shelf) } } })

describe('a set alone', () => {
  test.each([
    ['packaged', DEMO],
    ['skeleton', SKELETONS],
  ])('has its ids by place, of the %s sheet', (_, shelf) => {
    const net = alone(shelf)
    expect(net.nodes[0]).toBe('earth')
    expect(net.nodes.slice(1, 16)).toEqual(terminals.map((one) => `fescue/${one}`))
    expect(net.nodes.slice(16).toSorted()).toEqual(others.map((one) => `fescue/${one}`).toSorted())
    expect(net.branches.map(({ id }) => id)).toEqual(FESCUE.map((one) => `fescue/${one}`))
    expect(net.line).toBeUndefined()
  })

  test('has each branch between the ends that its sheet names', () => {
    const net = alone()
    for (const [id, from, to] of [
      ['B2-B3', 'B2', 'B3'],
      ['hook', 'A1', 'A2'],
      ['coil.b', 'A5', 'A6'],
      ['hush', 'C1', 'joint-3'],
      ['regulator.series', 'A3', 'A4'],
      ['regulator.clamp', 'A4', 'B5'],
      ['line.a', 'plug.a', 'A1'],
      ['handset.r1', 'handset.r1', 'B1'],
      ['receiver', 'handset.r1', 'handset.r2'],
    ])
      expect(endsOf(net, `fescue/${id}`)).toEqual([`fescue/${from}`, `fescue/${to}`])
  })

  test('has every branch in the graph as well, and every part points at its line of the sheet', () => {
    const net = alone()
    expect(net.graph.order).toBe(net.nodes.length)
    expect(net.graph.edges()).toEqual(net.branches.map(({ id }) => id))
    for (const branch of net.branches) {
      expect(net.graph.extremities(branch.id)).toEqual(endsOf(net, branch.id))
      expect(net.graph.getEdgeAttribute(branch.id, 'branch')).toBe(branch.index)
      expect(net.branchIndex.get(branch.id)).toBe(branch.index)
    }
    for (const part of net.parts) expect(part.origin?.file, part.id).toMatch(/(fescue|vetch)\.yaml$/)
    expect(net.parts.map(({ first, count }) => first + count).at(-1)).toBe(net.branches.length)
  })

  test('tells where its things are', () => {
    const net = alone()
    const place = placeOf(net, 'fescue')
    const ids = (nodes: readonly (number | undefined)[]) =>
      nodes.map((node) => (node === undefined ? undefined : nodeName(net, node)))
    expect(ids(place.terminals)).toEqual(terminals.map((one) => `fescue/${one}`))
    expect(ids(place.spare)).toEqual(['fescue/C4'])
    expect(place.touchable).toEqual([{ name: 'cradle', node: undefined }])
    expect(place.slots).toMatchObject([{ name: 'regulator', needsUnit: true, fitted: 'vetch' }])
    expect(ids(place.slots[0]?.sockets ?? [])).toEqual(['fescue/A3', 'fescue/A4', 'fescue/B5'])
    expect(place.cores.map(({ name }) => name)).toEqual([
      'line.a',
      'line.b',
      'line.ringing',
      'line.spare',
      'handset.t1',
      'handset.t2',
      'handset.r1',
      'handset.r2',
    ])
    expect(place.socket).toBeUndefined()
  })

  test('renamed, changes nothing but its place in the ids', () => {
    const [one, two] = [alone(), alone(DEMO, 'hut')]
    const moved = (id: string) => id.replace(/^fescue\//, 'hut/')
    expect(two.nodes).toEqual(one.nodes.map(moved))
    expect(two.branches.map(({ id, from, to, form }) => [id, from, to, form])).toEqual(
      one.branches.map(({ id, from, to, form }) => [moved(id), from, to, form]),
    )
  })

  test('has no branch for a parked core, no slot parts without a unit, and metal joined where its sheet says', () => {
    const bare = replacing(
      ['fitted: vetch', 'fitted: none'],
      ['{lands: B3, colour: turquoise}', '{lands: parked, colour: turquoise}'],
      ['{cradle: none}', '{cradle: C4}'],
      ['needs unit: yes, ', ''],
    )
    const net = compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, bare) } } })
    expect(net.branches.map(({ id }) => id)).toEqual(
      FESCUE.filter((id) => !['handset.r2', 'regulator.series', 'regulator.clamp'].includes(id)).map(
        (id) => `fescue/${id}`,
      ),
    )
    const place = placeOf(net, 'fescue')
    expect(place.cores.at(-1)).toMatchObject({
      name: 'handset.r2',
      lands: undefined,
      branch: undefined,
      colour: 'turquoise',
    })
    expect(place.slots).toMatchObject([{ fitted: undefined, needsUnit: false }])
    expect(place.touchable).toEqual([{ name: 'cradle', node: nodeOf(net, 'fescue/C4') }])
  })

  test('takes resistances of straps and cores from its sheet, and may name earth', () => {
    const change = replacing(
      ['B2-B3: {hold: screw}', 'B2-B3: {hold: screw, resistance: 0 Ω}'],
      ['{lands: A1, colour: brown}', '{lands: A1, colour: brown, resistance: 3 Ω}'],
      [
        'hush-r:        {kind: resistor, from: joint-3, to: A1',
        'hush-r:        {kind: resistor, from: joint-3, to: earth',
      ],
    )
    const net = compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, change) } } })
    expect(specOf(net, 'fescue/B2-B3')).toMatchObject({ resistance: { value: 0 } })
    expect(specOf(net, 'fescue/line.a')).toMatchObject({ resistance: { value: 3 } })
    expect(endsOf(net, 'fescue/hush-r')).toEqual(['fescue/joint-3', 'earth'])
  })

  test('with two parts of one name is refused by that name', () => {
    // the reader refuses such a sheet; moves could still make one
    const whole = set('fescue')
    const doubled = { ...whole, parts: { ...whole.parts, receiver: whole.handset.receiver as never } }
    const thrown = problemsOf(() => compile({ name: 'fescue', sets: { fescue: { set: doubled } } }))
    expect(thrown).toMatchObject([
      { code: 'key-doubled', found: 'two branches called fescue/receiver', place: { line: 49 } },
    ])
    const placeless = { ...doubled, places: new Map() }
    expect(
      problemsOf(() => compile({ name: 'fescue', sets: { fescue: { set: placeless } } }))[0],
    ).not.toHaveProperty('place')
  })
})

describe('a unit in its slot', () => {
  test('has joints of its own under the slot, and may reach earth', () => {
    const unit = {
      file: 'u.yaml',
      text: 'ringproof: 1\nsheet: unit\nname: vetch\npins: [p1, p2, p3]\njoints: [mid]\nparts:\n  one: {kind: resistor, from: p1, to: mid, resistance: 1 Ω}\n  two: {kind: resistor, from: mid, to: earth, resistance: 1 Ω}\n',
    }
    const whole = set('fescue')
    const { sheet } = readSheet(unit, SKELETONS, 'unit')
    if (sheet === undefined) throw new Error('the unit is not read')
    const net = compile({ name: 'fescue', sets: { fescue: { set: { ...whole, units: { vetch: sheet } } } } })
    expect(endsOf(net, 'fescue/regulator.one')).toEqual(['fescue/A3', 'fescue/regulator.mid'])
    expect(endsOf(net, 'fescue/regulator.two')).toEqual(['fescue/regulator.mid', 'earth'])
  })
})

describe('the landings of a core', () => {
  test('are those of its own sheet and of its bases, whether it is parked or not', () => {
    const net = compile({ name: 'x', sets: { hut: { set: set('sedge-as-found') } } })
    const core = (name: string) => placeOf(net, 'hut').cores.find((one) => one.name === name)
    const meant = (name: string) => core(name)?.meant.map((node) => nodeName(net, node))
    expect(meant('line.ringing')).toEqual(['hut/C1'])
    // fescue lands it on B3, sedge on B2, sedge as found parks it
    expect(meant('handset.r2')).toEqual(['hut/B2', 'hut/B3'])
    expect(core('handset.r2')?.lands).toBeUndefined()
  })

  test('are common where the sheet says so', () => {
    const change = replacing(['joints: [joint-1', 'common cores: [[t2, r2]]\njoints: [joint-1'])
    const net = compile({ name: 'x', sets: { hut: { set: set('fescue', DEMO, change) } } })
    expect(placeOf(net, 'hut').common).toEqual([['handset.t2', 'handset.r2']])
    expect(placeOf(stationHouse(), 'office').common).toEqual([])
  })

  test('are none, and there is no plug, in a set that stands by itself', () => {
    const whole = { ...set('fescue'), landings: {} }
    const { plug: _, ...bare } = whole
    const net = compile({ name: 'x', sets: { hut: { set: bare as never } } })
    expect(placeOf(net, 'hut').plug).toEqual({})
    expect(placeOf(net, 'hut').cores.every(({ meant }) => meant.length === 0)).toBe(true)
  })
})

describe('a free circuit', () => {
  test('has its nodes and parts under its own name, and earth', () => {
    const net = circuit(
      'r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}\nt: {kind: induction-coil, windings: {x: {from: p, to: q, resistance: 1 Ω, inductance: 1 H}, y: {from: q, to: earth, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}',
    )
    expect(net.nodes).toEqual(['earth', 'net/p', 'net/q'])
    expect(net.branches.map(({ id }) => id)).toEqual(['net/r', 'net/t.x', 'net/t.y'])
    expect(net.parts.map(({ id, role }) => [id, role])).toEqual([
      ['net/r', undefined],
      ['net/t', 'winding'],
    ])
  })

  test('asked for what it has not, says so at once', () => {
    const net = circuit('r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}')
    expect(() => nodeOf(net, 'net/q')).toThrow('no node is called net/q')
    expect(() => nodeName(net, 7)).toThrow('no node has the index 7')
    expect(() => branchAt(net, 7)).toThrow('no branch has the index 7')
    expect(() => placeOf(net, 'attic')).toThrow('no set stands at attic')
  })
})
