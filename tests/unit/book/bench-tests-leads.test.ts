import { faultsOf } from 'ringproof/book/faults/index'
import { makeBook } from 'ringproof/book/make-book'
import { clearness, TOLD } from 'ringproof/book/tell-apart'
import { type Change, OPEN } from 'ringproof/figures/variants'
import type { PartSpec } from 'ringproof/parts/kind'
import type { VaristorSpec } from 'ringproof/parts/varistor'
import type { Quantity } from 'ringproof/quantities/quantity'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { type OnBench, onBench } from './_bench-tests.ts'

const fescue = onBench({ target: 'fescue' })
const sedge = onBench({ target: 'sedge' })
const foxtail = onBench({ target: 'foxtail' })
const melick = onBench({ target: 'melick' })

const across = (on: OnBench, part: string, ohms: number): Change => {
  const { from, to } = on.branch(part)
  return { bridge: { from, to, ohms } }
}

/** The same part with the value at a key so many times as large. */
const times = (on: OnBench, part: string, key: string, factor: number): Change =>
  on.becomes(part, (spec) => {
    const quantity = (spec as PartSpec & Readonly<Record<string, Quantity>>)[key]!
    return { ...spec, [key]: { ...quantity, value: factor * quantity.value } } as PartSpec
  })

/** Two resistors and a capacitor, all across the same two terminals. */
const beside = onBench({
  text: {
    file: 'beside.yaml',
    text: [
      'ringproof: 1',
      'sheet: set',
      'name: beside',
      'strips: {A: 3}',
      'parts:',
      '  one: {kind: resistor, from: A1, to: A3, resistance: 1 kΩ}',
      '  two: {kind: resistor, from: A1, to: A3, resistance: 3 kΩ}',
      '  three: {kind: capacitor, from: A1, to: A3, capacitance: 2 µF}',
      'cords: {line: {ends in: plug, cores: {a: {lands: A1}, b: {lands: A3}}}}',
      'plug: {numbered by: wiring, contacts: {5: a, 2: b}}',
      '',
    ].join('\n'),
  },
  on: 'none',
})

const apartIn = (on: OnBench) => on.tests.filter(({ id }) => /(?<!cord)-off$/.test(id))

describe('a part at its own leads', () => {
  test('is read where it ends on joints, and so are contacts, open and closed', () => {
    // a capacitor blocks direct current; everything else that lies beside does so by its sheet
    assertClose(fescue.score('ohms joint-1 joint-2 on-hook'), 390, { relative: 1e-6 }, 'resistor')
    assertClose(fescue.score('ohms joint-2 B5 on-hook'), 1500, { relative: 1e-6 }, 'resistor')
    assertClose(fescue.score('ohms joint-3 A1 on-hook'), 100, { relative: 1e-6 }, 'resistor')
    // the contact open: the bell, its resistor and the hush resistor in series; 1 kΩ + 3.3 kΩ + 100 Ω
    assertClose(fescue.score('ohms C1 joint-3 on-hook'), 4400, { relative: 1e-4 }, 'around the contact')
    assertClose(fescue.score('ohms C1 joint-3 off-hook/make'), 0.05, { relative: 1e-3 }, 'contact')
  })

  test('is read on capacitance where something conducts beside it', () => {
    // 2 µF with at least 2 kΩ beside it
    const score = fescue.score('capacitance A6 joint-1 on-hook')
    assertClose(score, 2e-6, { relative: 0.02 }, 'capacitor')
    const half = fescue.score('capacitance A6 joint-1 on-hook', fescue.mode('balance-c', 'lost-value'))
    expect(half).toBeLessThan(0.6 * score)
    expect(fescue.tests.some(({ id }) => id === 'capacitance A6 joint-1 off-hook')).toBe(false)
  })

  test('is told with what meets where no screw is, and what lies beside it', () => {
    expect(fescue.test('ohms joint-2 B5 on-hook').how).toBe(
      'Unplug the set; open the case; handset down; set the instrument to ohms; red lead on joint-2, where the balance-r, the balance-r2 and the balance-c2 meet, black lead on terminal B5; that is across the balance-r2 and the balance-c2, and what else of the circuit lies beside reads with it.',
    )
    expect(fescue.test('ohms handset.t1 A4 on-hook').how).toContain('that is across winding a of the coil')
  })
})

describe('a part with one lead off', () => {
  test('reads what it is by itself', () => {
    assertClose(sedge.score('ohms B1 B2 coil.c-off'), 30, { relative: 1e-9 }, 'winding')
    expect(fescue.score('ohms A6 joint-1 balance-c-off')).toBe(OPEN)
    assertClose(beside.score('ohms A1 A3 one-off'), 1000, { relative: 1e-9 }, 'resistor')
    assertClose(beside.score('ohms A1 A3 two-off'), 3000, { relative: 1e-9 }, 'resistor')
    // in the circuit they are beside each other: 1 kΩ and 3 kΩ. @source any textbook of circuits
    assertClose(beside.score('ohms plug.a plug.b on-hook'), 750, { relative: 1e-3 }, 'resistor')
    const drifted = [times(beside, 'two', 'resistance', 2)]
    assertClose(beside.score('ohms A1 A3 two-off', drifted), 6000, { relative: 1e-9 }, 'resistor')
    expect(beside.score('ohms A1 A3 one-off', drifted)).toBe(beside.score('ohms A1 A3 one-off'))
    assertClose(beside.score('capacitance A1 A3 three-off'), 2e-6, { relative: 1e-6 }, 'capacitor')
  })

  test('reads what leaks of it', () => {
    const leaky = fescue.mode('balance-c', 'leaky')
    assertClose(fescue.score('ohms A6 joint-1 balance-c-off', leaky), 100_000, { relative: 1e-6 }, 'leak')
    const both = [...leaky, across(fescue, 'balance-c', 50_000)]
    // two resistances beside each other. @source any textbook of circuits
    assertClose(fescue.score('ohms A6 joint-1 balance-c-off', both), 1e5 / 3, { relative: 1e-6 }, 'leak')
    assertClose(
      fescue.score('ohms joint-2 B5 balance-c2-off', fescue.mode('balance-c2', 'leaky')),
      100_000,
      { relative: 1e-6 },
      'leak',
    )
  })

  test('reads its capacitance', () => {
    const id = 'capacitance joint-2 B5 balance-c2-off'
    assertClose(fescue.score(id), 1e-7, { relative: 1e-6 }, 'capacitor')
    const half = fescue.score(id, fescue.mode('balance-c2', 'lost-value'))
    assertClose(half, 0.5e-7, { relative: 1e-6 }, 'capacitor')
    expect(fescue.score(id, fescue.mode('balance-c2', 'open'))).toBe(0)
  })

  test('of a varistor is what the instrument’s current makes of its law', () => {
    const id = 'ohms B1 B3 click-off'
    const { spec } = fescue.branch('click').part
    const { exponent, 'voltage at 1 A': unit } = spec as VaristorSpec
    const shown = fescue.score(id)
    const ranges = fescue.kit.instrument.ranges
    // V = V₁·I^(1/α), by the definition of the law; the range is the first that holds V / I
    const held = Object.values(ranges)
      .flatMap((range) => (range.method === 'constant-current' ? [range] : []))
      .map((range) => ({
        most: range['full scale'].value,
        ohms: unit.value * range.current.value ** (1 / exponent - 1),
      }))
      .find(({ most, ohms }) => ohms <= most)
    assertClose(shown, held!.ohms, { relative: 1e-6 }, 'varistor')
    expect(fescue.score(id, fescue.mode('click', 'open'))).toBe(OPEN)
  })

  test('hears nothing of the set that it is lifted from', () => {
    const id = 'ohms A6 joint-1 balance-c-off'
    const short: Change = { bridge: { from: fescue.node('plug.a'), to: fescue.node('plug.b'), ohms: 1 } }
    const strap: Change = { bridge: { from: fescue.node('A6'), to: fescue.node('B1'), ohms: 0.01 } }
    expect(fescue.score(id, [short, strap, ...fescue.mode('balance-r', 'shorted')])).toBe(OPEN)
    // a handset on the wrong terminals lies across the part no longer once the part's lead is off
    const crossed = [
      ...['handset.r1', 'handset.r2'].map((core): Change => ({ lifted: fescue.branch(core).index })),
      { bridge: { from: fescue.node('handset.r1'), to: fescue.node('B3'), ohms: 0.01 } },
      { bridge: { from: fescue.node('handset.r2'), to: fescue.node('B1'), ohms: 0.01 } },
    ]
    expect(fescue.score('ohms B1 B3 click-off', crossed)).toBe(fescue.score('ohms B1 B3 click-off'))
    expect(fescue.score('ohms B1 B2 coil.c-off', [short, { lifted: fescue.branch('B2-B3').index }])).toBe(30)
  })

  test('says nothing where it cannot be known whose the short is', () => {
    const id = 'ohms joint-2 B5 balance-c2-off'
    // the resistor across the same two ends: its short goes with it, the capacitor's own stays
    expect(fescue.score(id, fescue.mode('balance-r2', 'shorted'))).toBeNaN()
    expect(fescue.score(id, fescue.mode('balance-r2', 'open'))).toBe(OPEN)
    expect(fescue.score(id, fescue.mode('balance-r2', 'drifted-up'))).toBe(OPEN)
    // a strap or damp between the two terminals stays at the terminals
    const damp = fescue.odds['damp-resistance'].value.value
    for (const ohms of [0.01, damp])
      expect(
        fescue.score('capacitance A2 A3 impulse-quench-off', [across(fescue, 'impulse-quench', ohms)]),
      ).toBeNaN()
  })

  test('is told lead by lead, and costs the most', () => {
    const one = fescue.test('ohms joint-2 B5 balance-c2-off')
    expect(one.asks).toBe('What is read on ohms across the balance-c2 by itself, one of its leads off?')
    expect(one.how).toBe(
      'Unplug the set; open the case; take the lead of the balance-c2 off terminal B5 and keep it clear of everything; set the instrument to ohms; red lead on joint-2, where the balance-r, the balance-r2 and the balance-c2 meet, black lead on the lead that is off; put the lead back where it was.',
    )
    expect([one.site, one.live, one.effort]).toEqual(['inside', false, fescue.odds.efforts.lifted.effort])
    expect(one.effort).toBe(Math.max(...fescue.tests.map(({ effort }) => effort)))
  })

  test('of a unit is its own at the pins, out of the slot, and costs no soldering', () => {
    const one = fescue.test('ohms A4 B5 regulator.clamp-off')
    expect(one.how).toBe(
      'Unplug the set; open the case; take the unit out of the slot regulator; set the instrument to ohms; red lead on the pin that belongs to A4, black lead on that to B5; put the unit back.',
    )
    expect(one.asks).toContain('the unit out of its slot')
    expect(one.effort).toBe(fescue.odds.efforts.inside.effort)
    expect(fescue.score(one.id, [across(fescue, 'mute-speech', 10)])).toBe(fescue.score(one.id))
    expect(fescue.score(one.id, fescue.mode('regulator.clamp', 'open'))).toBe(OPEN)
  })

  test('is read only where its own ends show something else in the circuit, and where a fault of it shows', () => {
    const ids = apartIn(fescue).map(({ id }) => id)
    // by themselves in the circuit: bell and its resistor, and the resistors of the balance
    for (const part of ['bell', 'bell-resistor', 'balance-r', 'balance-r2', 'hush-r'])
      expect(ids.some((id) => id.endsWith(` ${part}-off`))).toBe(false)
    // a surge arrester of 60 V carries nothing at the volts of an instrument, whatever is wrong with it short of a leak
    for (const on of [fescue, sedge, foxtail, melick]) {
      expect(on.tests.length).toBeLessThanOrEqual(160)
      for (const { id } of apartIn(on)) expect([id, on.score(id)]).not.toEqual([id, Number.NaN])
    }
  })
})

describe('a book with these readings', () => {
  test.each([sedge, fescue])('tells the parts that end on joints', ({ net, place, odds, tests, ...on }) => {
    const wanted = [
      'balance-c2 leaky',
      'balance-c2 lost-value',
      'balance-c leaky',
      'balance-r open',
      'balance-r drifted-up',
      'click open',
      'hush-r open',
      'impulse-quench lost-value',
    ].map((id) => `${place.place}/${id}`)
    const faults = faultsOf(net, place, odds).filter(({ id }) => wanted.includes(id))
    expect(faults.length).toBe(wanted.length)
    const book = makeBook({
      net,
      place: place.place,
      faults,
      tests: tests.filter(({ words }) => words === undefined),
      transmitterSpread: on.kit.habits['transmitter-spread'].value,
    })
    faults.forEach(({ id }, fault) => {
      const clear = Math.max(...book.tests.map((_, k) => clearness(book, fault, k)))
      expect(clear, id).toBeGreaterThanOrEqual(TOLD)
    })
  })
})
