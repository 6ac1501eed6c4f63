import { NetlistBuilder } from 'ringproof/netlist/builder'
import { compile } from 'ringproof/netlist/compile'
import { wiringNumber } from 'ringproof/netlist/compile-set'
import { compileSocket } from 'ringproof/netlist/compile-socket'
import { nodeName, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { DEMO, endsOf, FESCUE, premises, replacing, set, specOf, stationHouse } from './_nets.ts'

describe('premises', () => {
  test('have the ids of their exchange, sockets and sets, in this order', () => {
    const net = stationHouse()
    const heads = [
      'exchange/feed.a',
      'exchange/feed.b',
      'exchange/ringing',
      'exchange/ringing-return',
      'exchange/speech.a',
      'exchange/speech.b',
    ]
    const sockets = [
      'front/capacitor',
      'front/resistor',
      'front/gas-tube',
      'front/cable.a',
      'front/cable.b',
      'front/cable.near-a-b',
      'front/cable.far-a-b',
      'hall/cable.a',
      'hall/cable.b',
      'hall/cable.ringing',
      'hall/cable.near-a-b',
      'hall/cable.near-a-ringing',
      'hall/cable.near-b-ringing',
      'hall/cable.far-a-b',
      'hall/cable.far-a-ringing',
      'hall/cable.far-b-ringing',
      'porch/cable.a',
      'porch/cable.b',
      'porch/cable.near-a-b',
      'porch/cable.far-a-b',
    ]
    const office = [...FESCUE, 'plug.2', 'plug.3', 'plug.5'].map((one) => `office/${one}`)
    const ids = net.branches.map(({ id }) => id)
    expect(ids.slice(0, heads.length + sockets.length + office.length)).toEqual([
      ...heads,
      ...sockets,
      ...office,
    ])
    expect(ids).toContain('kitchen/plug.3')
    for (const id of [
      'exchange/a',
      'exchange/b',
      'earth',
      'front/a',
      'front/b',
      'front/ringing',
      'hall/a',
      'hall/b',
      'hall/ringing',
      'porch/a',
      'porch/b',
      'kitchen/B3',
      'kitchen/plug.a',
    ]) {
      expect(nodeName(net, nodeOf(net, id))).toBe(id)
    }
    expect(net.nodes).not.toContain('porch/ringing')
  })

  test('compile twice into the same ids in the same order', () => {
    const shape = () => {
      const net = stationHouse()
      return JSON.stringify([
        net.nodes,
        net.branches.map(({ id, index, from, to, form }) => [id, index, from, to, form]),
        net.places,
      ])
    }
    expect(shape()).toBe(shape())
  })

  test('give a set the same ids whatever stands beside it', () => {
    const ids = (sets: object) =>
      stationHouse({ sets: sets as never })
        .branches.map(({ id }) => id)
        .filter((id) => id.startsWith('office/'))
    const office = { set: set('fescue'), in: 'front' }
    expect(ids({ kitchen: { set: set('sedge'), in: 'hall' }, office })).toEqual(ids({ office }))
  })

  test('put a socket after the one that feeds it, whatever the order of the sheet', () => {
    const late = replacing(
      ['  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, gas tube: 250 V}\n', ''],
      [
        'ringing lead: no}\n',
        'ringing lead: no}\n  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}\n',
      ],
    )
    const net = stationHouse({ premises: premises(late) })
    expect(
      net.branches.filter(({ part }) => part.sort === 'socket' || part.sort === 'cable').map(({ id }) => id),
    ).toEqual([
      'front/capacitor',
      'front/resistor',
      'front/cable.a',
      'front/cable.b',
      'front/cable.near-a-b',
      'front/cable.far-a-b',
      'hall/cable.a',
      'hall/cable.b',
      'hall/cable.ringing',
      'hall/cable.near-a-b',
      'hall/cable.near-a-ringing',
      'hall/cable.near-b-ringing',
      'hall/cable.far-a-b',
      'hall/cable.far-a-ringing',
      'hall/cable.far-b-ringing',
      'porch/cable.a',
      'porch/cable.b',
      'porch/cable.near-a-b',
      'porch/cable.far-a-b',
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
    const net = stationHouse({
      premises: premises(replacing(['reversed: no                ', 'reversed: yes'])),
    })
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
    expect(net.branches.map(({ id }) => id).filter((id) => id.startsWith('office/plug.'))).toEqual([
      'office/plug.2',
      'office/plug.5',
    ])
    const further = premises(
      replacing(
        [', ringing lead: no', ''],
        ['house-pair', 'house-three'],
        ['house-three, gauge: 0.5 mm, length: 12 m', 'house-pair, gauge: 0.5 mm, length: 12 m'],
      ),
    )
    expect(stationHouse({ premises: further }).nodes).not.toContain('porch/ringing')
  })

  test('join plug contact 4 to earth at a socket that has one', () => {
    const net = stationHouse({
      premises: premises(replacing(['gas tube: 250 V}', 'gas tube: 250 V, earth: yes}'])),
    })
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
    expect(() => compile({ name: 'x', premises: { ...whole, sockets }, sets: {} })).toThrow(
      'socket hall is fed from nothing',
    )
    expect(() => compileSocket(new NetlistBuilder(), whole, undefined, 'attic', new Map())).toThrow(
      'no socket is called attic',
    )
  })
})

describe('the two numberings of a plug', () => {
  // mirror map k → 7 − k: BS 6312 against the installers' numbering, national information sheet, secondary copy
  test('are mirrors of each other', () => {
    expect([1, 2, 3, 4, 5, 6].map((k) => wiringNumber('contact', k))).toEqual([6, 5, 4, 3, 2, 1])
    expect([1, 2, 3, 4, 5, 6].map((k) => wiringNumber('wiring', k))).toEqual([1, 2, 3, 4, 5, 6])
  })

  test('give one plug when each number is mirrored', () => {
    const mirrored = replacing([
      '{numbered by: wiring, contacts: {5: a, 2: b, 3: ringing, 4: spare}}',
      '{numbered by: contact, contacts: {2: a, 5: b, 4: ringing, 3: spare}}',
    ])
    const plain = stationHouse({ sets: { office: { set: set('fescue'), in: 'front' } } })
    const other = stationHouse({ sets: { office: { set: set('fescue', DEMO, mirrored), in: 'front' } } })
    expect(other.branches.map(({ id, from, to }) => [id, from, to])).toEqual(
      plain.branches.map(({ id, from, to }) => [id, from, to]),
    )
    expect(placeOf(other, 'office').plug).toEqual(placeOf(plain, 'office').plug)
  })

  test('swap ringing lead and earth when the numbers are kept', () => {
    const taken = replacing(['numbered by: wiring', 'numbered by: contact'])
    const net = stationHouse({ sets: { office: { set: set('fescue', DEMO, taken), in: 'front' } } })
    expect(endsOf(net, 'office/plug.3')).toEqual(['front/ringing', 'office/plug.spare'])
    expect(endsOf(net, 'office/plug.5')).toEqual(['front/a', 'office/plug.b'])
  })
})
