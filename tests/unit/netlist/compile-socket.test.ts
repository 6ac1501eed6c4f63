import type { Netlist } from 'ringproof/netlist/netlist'
import { placeOf } from 'ringproof/netlist/netlist'
import { currentIn, sizeOf, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { endsOf, premises, replacing, set, specOf, stationHouse } from './_nets.ts'

const HALL = 'hall:  {is: secondary, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 12 m}}'

/** The station house with another socket in the hall, an office set plugged in there when asked. */
function house(hall: string, sets: Parameters<typeof stationHouse>[0] = { sets: {} }): Netlist {
  const porch = [
    'porch: {is: secondary, fed from: hall, over: {type: house-pair, gauge: 0.5 mm, length: 8 m}, ringing lead: no}',
    'porch: {is: secondary, fed from: hall}',
  ] as const
  return stationHouse({ premises: premises(replacing([HALL, `hall: {${hall}}`], porch)), ...sets })
}
const idsOf = (net: Netlist, head: string): readonly string[] =>
  net.branches.map(({ id }) => id).filter((id) => id.startsWith(`${head}/`))
const RINGING = { line: 'ringing', sets: {} } as const
const IDLE = { line: 'idle', sets: {} } as const
const ringing = (net: Netlist) => solve(net, { analysis: 'alternating', frequency: 25, condition: RINGING })
const node = (net: Netlist, id: string): number => net.nodeIndex.get(id) ?? -1

describe('an adapter lead', () => {
  test('without a capacitor brings two wires and no ringing lead', () => {
    const net = house('is: adapter, fed from: front')
    expect(idsOf(net, 'hall')).toEqual(['hall/cable.a', 'hall/cable.b'])
    expect(net.nodes).not.toContain('hall/ringing')
    expect(idsOf(net, 'porch')).toEqual(['porch/cable.a', 'porch/cable.b'])
  })

  test('with a capacitor and a resistor makes a ringing lead of its own, on two wires of any cable', () => {
    const net = house(
      'is: adapter, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 3 m}, capacitance: 1.8 µF, resistance: 470 kΩ',
    )
    expect(idsOf(net, 'hall')).toEqual([
      'hall/cable.a',
      'hall/cable.b',
      'hall/cable.near-a-b',
      'hall/cable.far-a-b',
      'hall/capacitor',
      'hall/resistor',
    ])
    expect(endsOf(net, 'hall/capacitor')).toEqual(['hall/b', 'hall/ringing'])
    expect(endsOf(net, 'hall/resistor')).toEqual(['hall/ringing', 'hall/a'])
    expect(endsOf(net, 'porch/cable.ringing')).toEqual(['hall/ringing', 'porch/ringing'])
  })

  test('rings a set as the master socket does, whose own capacitor then carries nothing of it', () => {
    const office = { set: set('fescue'), in: 'hall' }
    const net = house('is: adapter, fed from: front, capacitance: 1.8 µF, resistance: 470 kΩ', {
      sets: { office },
    })
    const at = (id: string) => sizeOf(currentIn(ringing(net), net.branchIndex.get(id) ?? -1))
    const master = stationHouse({ sets: { office: { ...office, in: 'front' } } })
    const bell = sizeOf(currentIn(ringing(master), master.branchIndex.get('office/bell') ?? -1))
    assertClose(at('office/bell'), bell, { relative: 0.01 }, 'bell current')
    assertClose(at('hall/capacitor'), at('office/bell'), { relative: 0.05 }, 'its own capacitor')
    expect(at('front/capacitor')).toBeLessThan(0.05 * at('office/bell'))
  })
})

describe('an in-line converter', () => {
  const CONVERTER = 'is: converter, fed from: front, series resistance: 40 Ω, load: 100 kΩ'

  test('lies in the pair, half of its resistance in each wire, with its load on the side of the set', () => {
    const net = house(CONVERTER)
    expect(idsOf(net, 'hall')).toEqual([
      'hall/cable.ringing',
      'hall/converter.a',
      'hall/converter.b',
      'hall/converter.load',
    ])
    expect(endsOf(net, 'hall/converter.a')).toEqual(['front/a', 'hall/a'])
    expect(endsOf(net, 'hall/converter.b')).toEqual(['front/b', 'hall/b'])
    expect(endsOf(net, 'hall/converter.load')).toEqual(['hall/a', 'hall/b'])
    const idle = solve(net, { analysis: 'direct', condition: IDLE })
    // closed form: 50 V through the feed and 1 km of 0.5 mm, its own 40 Ω, into 100 kΩ beside 470 kΩ behind nothing
    const loop = 400 + 2 * (specOf(net, 'front/cable.a') as { resistance: number }).resistance + 40 + 100e3
    assertClose(
      currentIn(idle, net.branchIndex.get('hall/converter.load') ?? -1).re,
      50 / loop,
      { relative: 1e-9 },
      'load',
    )
  })

  test('behind a cable has its inlet at the end of it', () => {
    const net = house(`${CONVERTER}, over: {type: house-pair, gauge: 0.5 mm, length: 3 m}`)
    expect(endsOf(net, 'hall/cable.a')).toEqual(['front/a', 'hall/in-a'])
    expect(endsOf(net, 'hall/converter.a')).toEqual(['hall/in-a', 'hall/a'])
    expect(net.nodes).not.toContain('hall/ringing')
  })

  test('ends dial pulses for all that is fed from it', () => {
    const at = (place: string) => {
      const net = house(CONVERTER, { sets: { office: { set: set('fescue'), in: place } } })
      return placeOf(net, 'office').socket?.pulsesEnd
    }
    expect(['front', 'hall', 'porch'].map(at)).toEqual([false, true, true])
  })

  test('passes ringing unless its sheet says no, and speech either way', () => {
    const voltage = (hall: string, line: 'ringing' | 'speech') => {
      const net = house(hall)
      const solution = solve(net, { analysis: 'alternating', frequency: 25, condition: { line, sets: {} } })
      const v = voltageBetween(solution, node(net, 'hall/a'), node(net, 'hall/b'))
      return v === undefined ? undefined : sizeOf(v)
    }
    expect(voltage(CONVERTER, 'ringing')).toBeGreaterThan(70)
    expect(voltage(`${CONVERTER}, passes ringing: no`, 'ringing') ?? 0).toBeLessThan(1)
    expect(voltage(`${CONVERTER}, passes ringing: no`, 'speech')).toBeGreaterThan(0.5)
  })
})

describe('a broadband filter', () => {
  const FILTER =
    'is: filter, fed from: front, inductance: 5 mH, resistance: 10 Ω, capacitance: 22 nF, ringing lead: no'

  test('is a coil in each wire and then a capacitor across the pair', () => {
    const net = house(FILTER)
    expect(idsOf(net, 'hall')).toEqual(['hall/filter.a', 'hall/filter.b', 'hall/filter.capacitor'])
    expect(endsOf(net, 'hall/filter.capacitor')).toEqual(['hall/a', 'hall/b'])
  })

  test('passes direct current and ringing, and stops broadband', () => {
    const net = house(FILTER)
    const between = (p: string, q: string, frequency: number) => {
      const solution = solve(net, {
        analysis: 'alternating',
        frequency,
        condition: { line: 'speech', sets: {} },
      })
      return sizeOf(voltageBetween(solution, node(net, p), node(net, q)) ?? { re: 0, im: 0 })
    }
    // without a load, by hand: two coils of L = 5 mH and C = 22 nF, |1/(1 − 2ω²LC + jω2RC)|
    for (const frequency of [25, 1000, 100e3]) {
      const w = 2 * Math.PI * frequency
      const expected = 1 / Math.hypot(1 - 2 * w * w * 5e-3 * 22e-9, w * 20 * 22e-9)
      const found = between('hall/a', 'hall/b', frequency) / between('front/a', 'front/b', frequency)
      assertClose(found, expected, { relative: 1e-9 }, `${frequency} Hz`)
    }
  })
})

describe('a ringing lead', () => {
  test('goes no further than a cable of two wires, of whatever type', () => {
    for (const type of ['twin', 'house-pair']) {
      const net = house(`is: secondary, fed from: front, over: {type: ${type}, gauge: 0.5 mm, length: 12 m}`)
      expect(net.nodes).not.toContain('hall/ringing')
    }
  })
})

describe('a second master socket', () => {
  const SECOND =
    'is: master, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 12 m}, capacitance: 1.8 µF, resistance: 470 kΩ'

  test('brings a second capacitor and takes the ringing lead along', () => {
    const net = house(SECOND)
    expect(endsOf(net, 'hall/capacitor')).toEqual(['hall/b', 'hall/ringing'])
    expect(endsOf(net, 'hall/cable.ringing')).toEqual(['front/ringing', 'hall/ringing'])
    expect(idsOf(net, 'hall').filter((id) => id.startsWith('hall/cable.a'))).toEqual(['hall/cable.a'])
    expect(endsOf(net, 'hall/cable.a')[0]).toBe('front/a')
  })

  test('doubles the capacitor that bells ring through: two in parallel', () => {
    const office = { set: set('fescue'), in: 'front' }
    const at = (net: Netlist, id: string) => sizeOf(currentIn(ringing(net), net.branchIndex.get(id) ?? -1))
    const two = house(SECOND, { sets: { office } })
    assertClose(at(two, 'front/capacitor'), at(two, 'hall/capacitor'), { relative: 0.01 }, 'halves')
  })

  test('without its ringing lead stands apart', () => {
    const net = house(`${SECOND}, ringing lead: no`)
    expect(idsOf(net, 'hall')).not.toContain('hall/cable.ringing')
  })
})

describe('an outlet', () => {
  test('has two wires and nothing else', () => {
    const net = house('is: outlet, fed from: front')
    expect(idsOf(net, 'hall')).toEqual(['hall/cable.a', 'hall/cable.b'])
    expect(net.nodes).not.toContain('hall/ringing')
  })

  test('is where the line can end', () => {
    const net = house('is: outlet')
    expect(endsOf(net, 'hall/cable.a')).toEqual(['exchange/a', 'hall/a'])
    expect(net.nodes).not.toContain('hall/ringing')
  })
})

describe('a socket made up by the mirrored numbering', () => {
  const plugged = (more: string) =>
    house(`is: secondary, fed from: front${more}`, { sets: { office: { set: set('fescue'), in: 'hall' } } })
  const bell = (net: Netlist) => sizeOf(currentIn(ringing(net), net.branchIndex.get('office/bell') ?? -1))

  test('crosses the pair and gives the ringing lead to the contact of the earth: k is 7 − k', () => {
    const net = plugged(', earth: yes, mirrored: yes')
    const meets = (contact: number) => endsOf(net, `office/plug.${contact}`)[0]
    expect([5, 2, 4, 3].map(meets)).toEqual(['hall/b', 'hall/a', 'hall/ringing', 'earth'])
    expect(placeOf(net, 'office').socket?.mirrored).toBe(true)
  })

  test('leaves a bell on the ringing lead silent where no earth comes', () => {
    expect(bell(plugged(', mirrored: yes'))).toBeLessThan(1e-6)
    expect(bell(plugged(''))).toBeGreaterThan(3e-3)
  })

  test('hangs that bell between the line and earth where earth comes, past every capacitor', () => {
    const net = plugged(', earth: yes, mirrored: yes')
    const idle = solve(net, { analysis: 'direct', condition: IDLE })
    expect(sizeOf(currentIn(idle, net.branchIndex.get('office/bell') ?? -1))).toBeGreaterThan(1e-3)
  })
})
