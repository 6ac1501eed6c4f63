import { compile } from 'ringproof/netlist/compile'
import { wiringNumber } from 'ringproof/netlist/compile-set'
import { branchAt, nodeName, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { circuit, DEMO, endsOf, premises, replacing, set, SKELETONS, specOf, stationHouse } from './_nets.ts'

const terminals = ['A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'B1', 'B2', 'B3', 'B4', 'B5', 'C1', 'C2', 'C3', 'C4']
const others = ['joint-1', 'joint-2', 'joint-3', 'plug.a', 'plug.b', 'plug.ringing', 'plug.spare', 'handset.t1', 'handset.t2', 'handset.r1', 'handset.r2']
/** The ids of fescue's branches, by its sheet and by design 3b. */
const branches = [
  'B2-B3', 'B4-B5', 'C3-A1',
  'hook', 'impulse', 'mute-ear', 'mute-speech', 'hush',
  'impulse-quench', 'coil.a', 'coil.b', 'coil.c', 'balance-c', 'balance-r', 'balance-r2', 'balance-c2', 'click', 'hush-r', 'bell-resistor', 'bell',
  'regulator.series', 'regulator.clamp',
  'line.a', 'line.b', 'line.ringing', 'line.spare', 'handset.t1', 'handset.t2', 'handset.r1', 'handset.r2',
  'transmitter', 'receiver',
]
const alone = (shelf = DEMO, place = 'fescue') => compile({ name: 'fescue', sets: { [place]: { set: set('fescue', shelf) } } })

describe('a set alone', () => {
  test.each([['packaged', DEMO], ['skeleton', SKELETONS]])('has its ids by place, of the %s sheet', (_, shelf) => {
    const net = alone(shelf)
    expect(net.nodes[0]).toBe('earth')
    expect(net.nodes.slice(1, 16)).toEqual(terminals.map((one) => `fescue/${one}`))
    expect(net.nodes.slice(16).toSorted()).toEqual(others.map((one) => `fescue/${one}`).toSorted())
    expect(net.branches.map(({ id }) => id)).toEqual(branches.map((one) => `fescue/${one}`))
    expect(net.line).toBeUndefined()
  })

  test('has each branch between the ends that its sheet names', () => {
    const net = alone()
    for (const [id, from, to] of [
      ['B2-B3', 'B2', 'B3'], ['hook', 'A1', 'A2'], ['coil.b', 'A5', 'A6'], ['hush', 'C1', 'joint-3'],
      ['regulator.series', 'A3', 'A4'], ['regulator.clamp', 'A4', 'B5'],
      ['line.a', 'plug.a', 'A1'], ['handset.r1', 'handset.r1', 'B1'], ['receiver', 'handset.r1', 'handset.r2'],
    ]) expect(endsOf(net, `fescue/${id}`)).toEqual([`fescue/${from}`, `fescue/${to}`])
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
    const ids = (nodes: readonly (number | undefined)[]) => nodes.map((node) => (node === undefined ? undefined : nodeName(net, node)))
    expect(ids(place.terminals)).toEqual(terminals.map((one) => `fescue/${one}`))
    expect(ids(place.spare)).toEqual(['fescue/C4'])
    expect(place.touchable).toEqual([{ name: 'cradle', node: undefined }])
    expect(place.slots).toMatchObject([{ name: 'regulator', needsUnit: true, fitted: 'vetch' }])
    expect(ids(place.slots[0]?.sockets ?? [])).toEqual(['fescue/A3', 'fescue/A4', 'fescue/B5'])
    expect(place.cores.map(({ name }) => name)).toEqual(['line.a', 'line.b', 'line.ringing', 'line.spare', 'handset.t1', 'handset.t2', 'handset.r1', 'handset.r2'])
    expect(place.socket).toBeUndefined()
  })

  test('renamed, changes nothing but its place in the ids', () => {
    const [one, two] = [alone(), alone(DEMO, 'hut')]
    const moved = (id: string) => id.replace(/^fescue\//, 'hut/')
    expect(two.nodes).toEqual(one.nodes.map(moved))
    expect(two.branches.map(({ id, from, to, form }) => [id, from, to, form])).toEqual(one.branches.map(({ id, from, to, form }) => [moved(id), from, to, form]))
  })

  test('has no branch for a parked core, no slot parts without a unit, and metal joined where its sheet says', () => {
    const bare = replacing(['fitted: vetch', 'fitted: none'], ['{lands: B3, colour: turquoise}', '{lands: parked, colour: turquoise}'], ['{cradle: none}', '{cradle: C4}'], ['needs unit: yes, ', ''])
    const net = compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, bare) } } })
    expect(net.branches.map(({ id }) => id)).toEqual(branches.filter((id) => !['handset.r2', 'regulator.series', 'regulator.clamp'].includes(id)).map((id) => `fescue/${id}`))
    const place = placeOf(net, 'fescue')
    expect(place.cores.at(-1)).toMatchObject({ name: 'handset.r2', lands: undefined, branch: undefined, colour: 'turquoise' })
    expect(place.slots).toMatchObject([{ fitted: undefined, needsUnit: false }])
    expect(place.touchable).toEqual([{ name: 'cradle', node: nodeOf(net, 'fescue/C4') }])
  })

  test('takes resistances of straps and cores from its sheet, and may name earth', () => {
    const change = replacing(['B2-B3: {hold: screw}', 'B2-B3: {hold: screw, resistance: 0 Ω}'], ['{lands: A1, colour: brown}', '{lands: A1, colour: brown, resistance: 3 Ω}'], ['hush-r:        {kind: resistor, from: joint-3, to: A1', 'hush-r:        {kind: resistor, from: joint-3, to: earth'])
    const net = compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, change) } } })
    expect(specOf(net, 'fescue/B2-B3')).toMatchObject({ resistance: { value: 0 } })
    expect(specOf(net, 'fescue/line.a')).toMatchObject({ resistance: { value: 3 } })
    expect(endsOf(net, 'fescue/hush-r')).toEqual(['fescue/joint-3', 'earth'])
  })

  test('with two parts of one name is refused by that name', () => {
    const change = replacing(['  receiver:    {kind', '  bell:    {kind'])
    expect(() => compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, change) } } })).toThrow(/key-doubled: found two branches called fescue\/bell/)
  })
})

describe('premises', () => {
  test('have the ids of their exchange, sockets and sets, in this order', () => {
    const net = stationHouse()
    const heads = ['exchange/feed.a', 'exchange/feed.b', 'exchange/ringing', 'exchange/ringing-return', 'exchange/speech.a', 'exchange/speech.b']
    const sockets = ['front/capacitor', 'front/resistor', 'front/gas-tube', 'front/cable.a', 'front/cable.b', 'hall/cable.a', 'hall/cable.b', 'hall/cable.ringing', 'porch/cable.a', 'porch/cable.b']
    const office = [...branches, 'plug.2', 'plug.3', 'plug.5'].map((one) => `office/${one}`)
    const ids = net.branches.map(({ id }) => id)
    expect(ids.slice(0, heads.length + sockets.length + office.length)).toEqual([...heads, ...sockets, ...office])
    expect(ids).toContain('kitchen/plug.3')
    for (const id of ['exchange/a', 'exchange/b', 'earth', 'front/a', 'front/b', 'front/ringing', 'hall/a', 'hall/b', 'hall/ringing', 'porch/a', 'porch/b', 'kitchen/B3', 'kitchen/plug.a']) {
      expect(nodeName(net, nodeOf(net, id))).toBe(id)
    }
    expect(net.nodes).not.toContain('porch/ringing')
  })

  test('compile twice into the same ids in the same order', () => {
    const shape = () => {
      const net = stationHouse()
      return JSON.stringify([net.nodes, net.branches.map(({ id, index, from, to, form }) => [id, index, from, to, form]), net.places])
    }
    expect(shape()).toBe(shape())
  })

  test('give a set the same ids whatever stands beside it', () => {
    const ids = (sets: object) => stationHouse({ sets: sets as never }).branches.map(({ id }) => id).filter((id) => id.startsWith('office/'))
    const office = { set: set('fescue'), in: 'front' }
    expect(ids({ kitchen: { set: set('sedge'), in: 'hall' }, office })).toEqual(ids({ office }))
  })

  test('put a socket after the one that feeds it, whatever the order of the sheet', () => {
    const late = replacing(['  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, gas tube: 250 V}\n', ''], ['ringing lead: no}\n', 'ringing lead: no}\n  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}\n'])
    const net = stationHouse({ premises: premises(late) })
    expect(net.branches.filter(({ part }) => part.sort === 'socket' || part.sort === 'cable').map(({ id }) => id)).toEqual([
      'front/capacitor', 'front/resistor', 'front/cable.a', 'front/cable.b', 'hall/cable.a', 'hall/cable.b', 'hall/cable.ringing', 'porch/cable.a', 'porch/cable.b',
    ])
  })

  test('stand without a line, and have no lead then', () => {
    const { line: _, ...rest } = { line: undefined, name: 'station-house', premises: premises(), sets: {} }
    const net = compile(rest)
    expect(net.branches.map(({ id }) => id)).not.toContain('front/cable.a')
    expect(net.line).toBeUndefined()
  })

  test('have the capacitor of the master socket from the b wire to the ringing lead, its resistor from there to the a wire', () => {
    const net = stationHouse()
    expect(endsOf(net, 'front/capacitor')).toEqual(['front/b', 'front/ringing'])
    expect(endsOf(net, 'front/resistor')).toEqual(['front/ringing', 'front/a'])
    expect(specOf(net, 'front/capacitor')).toMatchObject({ capacitance: { value: 1.8e-6 } })
  })

  test('reversed at the exchange, cross the pair between exchange and master socket alone', () => {
    const net = stationHouse({ premises: premises(replacing(['reversed: no                ', 'reversed: yes'])) })
    expect(endsOf(net, 'front/cable.a')).toEqual(['exchange/a', 'front/b'])
    expect(endsOf(net, 'front/cable.b')).toEqual(['exchange/b', 'front/a'])
    expect(endsOf(net, 'office/plug.5')).toEqual(['front/a', 'office/plug.a'])
    expect(endsOf(stationHouse(), 'front/cable.a')).toEqual(['exchange/a', 'front/a'])
  })

  test('with a set reversed at its plug, cross its pair there alone', () => {
    const net = stationHouse({ sets: { office: { set: set('fescue'), in: 'front', reversed: true } } })
    expect(endsOf(net, 'office/plug.5')).toEqual(['front/b', 'office/plug.a'])
    expect(endsOf(net, 'office/plug.2')).toEqual(['front/a', 'office/plug.b'])
    expect(endsOf(net, 'office/plug.3')).toEqual(['front/ringing', 'office/plug.ringing'])
    expect(endsOf(net, 'front/cable.a')).toEqual(['exchange/a', 'front/a'])
  })

  test('have no ringing lead where the cable is a pair, and no plug contact on it', () => {
    const net = stationHouse({ sets: { office: { set: set('fescue'), in: 'porch' } } })
    expect(net.branches.map(({ id }) => id).filter((id) => id.startsWith('office/plug.'))).toEqual(['office/plug.2', 'office/plug.5'])
    const further = premises(replacing([', ringing lead: no', ''], ['house-pair', 'house-three'], ['house-three, gauge: 0.5 mm, length: 12 m', 'house-pair, gauge: 0.5 mm, length: 12 m']))
    expect(stationHouse({ premises: further }).nodes).not.toContain('porch/ringing')
  })

  test('join plug contact 4 to earth at a socket that has one', () => {
    const net = stationHouse({ premises: premises(replacing(['gas tube: 250 V}', 'gas tube: 250 V, earth: yes}'])) })
    expect(endsOf(net, 'office/plug.4')).toEqual(['earth', 'office/plug.spare'])
  })

  test('leave a set open whose socket is not theirs', () => {
    const net = stationHouse({ sets: { office: { set: set('fescue'), in: 'attic' } } })
    expect(placeOf(net, 'office').socket).toBeUndefined()
    expect(net.branches.map(({ id }) => id)).not.toContain('office/plug.5')
  })

  test('with a socket that is fed from nothing, are a mistake of ours', () => {
    const whole = premises()
    const { front: _, ...sockets } = whole.sockets
    expect(() => compile({ name: 'x', premises: { ...whole, sockets }, sets: {} })).toThrow(RangeError)
  })
})

describe('the two numberings of a plug', () => {
  // mirror map k → 7 − k: BS 6312 against the installers' numbering, national information sheet, secondary copy
  test('are mirrors of each other', () => {
    expect([1, 2, 3, 4, 5, 6].map((k) => wiringNumber('contact', k))).toEqual([6, 5, 4, 3, 2, 1])
    expect([1, 2, 3, 4, 5, 6].map((k) => wiringNumber('wiring', k))).toEqual([1, 2, 3, 4, 5, 6])
  })

  test('give one plug when each number is mirrored', () => {
    const mirrored = replacing(['{numbered by: wiring, contacts: {5: a, 2: b, 3: ringing, 4: spare}}', '{numbered by: contact, contacts: {2: a, 5: b, 4: ringing, 3: spare}}'])
    const plain = stationHouse({ sets: { office: { set: set('fescue'), in: 'front' } } })
    const other = stationHouse({ sets: { office: { set: set('fescue', DEMO, mirrored), in: 'front' } } })
    expect(other.branches.map(({ id, from, to }) => [id, from, to])).toEqual(plain.branches.map(({ id, from, to }) => [id, from, to]))
    expect(placeOf(other, 'office').plug).toEqual(placeOf(plain, 'office').plug)
  })

  test('swap ringing lead and earth when the numbers are kept', () => {
    const taken = replacing(['numbered by: wiring', 'numbered by: contact'])
    const net = stationHouse({ sets: { office: { set: set('fescue', DEMO, taken), in: 'front' } } })
    expect(endsOf(net, 'office/plug.3')).toEqual(['front/ringing', 'office/plug.spare'])
    expect(endsOf(net, 'office/plug.5')).toEqual(['front/a', 'office/plug.b'])
  })
})

describe('a free circuit', () => {
  test('has its nodes and parts under its own name, and earth', () => {
    const net = circuit('r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}\nt: {kind: induction-coil, windings: {x: {from: p, to: q, resistance: 1 Ω, inductance: 1 H}, y: {from: q, to: earth, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}')
    expect(net.nodes).toEqual(['earth', 'net/p', 'net/q'])
    expect(net.branches.map(({ id }) => id)).toEqual(['net/r', 'net/t.x', 'net/t.y'])
    expect(net.parts.map(({ id, role }) => [id, role])).toEqual([['net/r', undefined], ['net/t', 'winding']])
  })

  test('asked for what it has not, says so at once', () => {
    const net = circuit('r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}')
    expect(() => nodeOf(net, 'net/q')).toThrow('no node is called net/q')
    expect(() => nodeName(net, 7)).toThrow('no node has the index 7')
    expect(() => branchAt(net, 7)).toThrow('no branch has the index 7')
    expect(() => placeOf(net, 'attic')).toThrow('no set stands at attic')
  })
})
