/** Ringing loads by each published definition, on sets that are nothing but a ringer. Loads of different definitions are never added. */
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import {
  amountOf,
  bell,
  farads,
  figuresOf,
  ohms,
  PLUG,
  parts,
  plainBell,
  premises,
  type Wiring,
} from './_premises.ts'

const LINE = { battery: 48, feed: 400 }
/** A resistance and a capacitor in series across the pair. */
const ringer = (resistance: number, capacitance: number): Wiring =>
  parts(plainBell('bell', 'A1', 'A4', resistance - PLUG), farads('capacitor', 'A4', 'A2', capacitance))
/** A ringer of resistance alone across the pair. */
const resistive = (resistance: number): Wiring => parts(plainBell('bell', 'A1', 'A2', resistance - PLUG))
const load = (definition: string, wiring: Wiring): number =>
  amountOf(figuresOf(premises(LINE, [wiring]), 'ringing.load'), `ringing.load.${definition}`, 'set1')
const printed = (places: number) => ({ relative: 0, absolute: 0.5 * 10 ** -places })

/** AS/CA S002:2010, clauses 6.7.6.2 and 6.7.6.3, SEEN-P: identical sets are added until the line falls below 40 V; 3 over their number. */
describe('by counting, 75 V at 25 Hz, AS/CA S002:2010 clause 6.7.6', () => {
  test('the unit ringer of 4 kΩ and 1 µF is one load', () => {
    assertClose(load('unit-ringer', ringer(4000, 1e-6)), 1, { relative: 1e-6 }, 'load')
  })

  // n times 4 kΩ/n·3 in parallel are three unit ringers: the count is n by the construction, whatever the source
  test.each([
    [1, 3],
    [2, 1.5],
    [5, 0.6],
    [10, 0.3],
    // 3/31 = 0.0968, and below 0.1 it is called 0.1
    [31, 0.1],
  ])('a ringer of which %d fill the line is %f loads', (count, loads) => {
    const share = count / 3
    assertClose(load('unit-ringer', ringer(4000 * share, 1e-6 / share)), loads, { relative: 1e-6 }, 'load')
  })

  test('a ringer between two counts has a load between theirs', () => {
    // 3.5 of it would fill the line: not yet with three, more than full with four
    const share = 3.5 / 3
    const found = load('unit-ringer', ringer(4000 * share, 1e-6 / share))
    expect(found).toBeGreaterThanOrEqual(3 / 4)
    expect(found).toBeLessThan(1)
  })
})

/** TIA-968 table 6, secondary copy, SEEN-S: 5 × limit / smallest impedance; 1400 Ω at 20 Hz, 1000 Ω at 30 Hz. */
describe('of type A, TIA-968 table 6', () => {
  test.each([
    [7000, 1],
    [1400, 5],
    [10_000, 0.7],
    // the ceiling of 40 kΩ of 47 CFR 68.312(b)(1)(iv), SEEN-P
    [40_000, 0.175],
  ])('a ringer of %d Ω is %f loads', (size, loads) => {
    assertClose(load('type-a', resistive(size)), loads, { relative: 1e-9 }, 'load')
  })

  /** A ringer that is tuned: its impedance is least at the frequency, where it is that resistance and no more. */
  const tuned = (hertz: number, resistance: number): Wiring => {
    const inductance = 200
    const omega = 2 * Math.PI * hertz
    return parts(
      bell('bell', 'A1', 'A4', resistance - PLUG, inductance),
      farads('capacitor', 'A4', 'A2', 1 / (omega * omega * inductance)),
    )
  }
  test.each([
    // 7001.0260 Ω is what 6930 Ω and 8 µF have at 20 Hz; DERIVED
    [20, 7001.026, 0.999853],
    [20, 7000, 1],
    [30, 5000, 1],
  ])(
    'a ringer tuned to %d Hz with %f Ω there, and more elsewhere, is %f loads',
    (hertz, resistance, loads) => {
      assertClose(load('type-a', tuned(hertz, resistance)), loads, printed(6), 'load')
    },
  )

  test('the equivalent ringer of 6930 Ω and 8 µF is 0.999853 loads, by its 7001.0260 Ω at 20 Hz', () => {
    // DERIVED; the ± 3 Hz of the table are how far the generator may be off
    assertClose(load('type-a', ringer(6930, 8e-6)), 0.999853, printed(6), 'load')
  })

  test('five equivalent ringers fill a line, each by its own share', () => {
    const shelf = premises(
      LINE,
      Array.from({ length: 5 }, () => tuned(20, 7000)),
    )
    const all = figuresOf(shelf, 'ringing.load').filter(({ id }) => id === 'ringing.load.type-a')
    expect(all).toHaveLength(5)
    for (const { value } of all) assertClose(value, 1, { relative: 1e-6 }, 'load beside others')
  })
})

/** TIA-968 table 6, secondary copy, SEEN-S: limit 1600 Ω from 15.3 Hz to 68 Hz. */
describe('of type B, TIA-968 table 6', () => {
  test.each([
    [8000, 1],
    [40_000, 0.2],
  ])('a ringer of %d Ω is %f loads', (size, loads) => {
    assertClose(load('type-b', resistive(size)), loads, { relative: 1e-9 }, 'load')
  })

  test('a capacitor counts at the highest frequency, 68 Hz', () => {
    const capacitance = 1 / (2 * Math.PI * 68 * 8000)
    assertClose(load('type-b', ringer(PLUG, capacitance)), 1, { relative: 1e-8 }, 'load')
  })
})

/** Encyclopaedia text, secondary copy, SEEN-S: 1800 Ω and 1 µF; 6615.7746 Ω at 25 Hz, DERIVED. */
describe('of the older European unit', () => {
  test('that ringer itself is one load', () => {
    assertClose(load('older-european', ringer(1800, 1e-6)), 1, { relative: 1e-9 }, 'load')
  })
  test('the unit ringer of 4 kΩ and 1 µF is less than one', () => {
    assertClose(load('older-european', ringer(4000, 1e-6)), 6615.7746 / 7518.542, { relative: 1e-7 }, 'load')
  })
})

/** ETSI text of 2003-09, secondary copy, SEEN-S: one load is 16 kΩ at 25 Hz and 50 Hz. */
describe('in units of 16 kΩ', () => {
  test('16 kΩ is one load', () => {
    assertClose(load('sixteen-kilohm', resistive(16_000)), 1, { relative: 1e-9 }, 'load')
  })
  test('the worse of 25 Hz and 50 Hz counts', () => {
    // 5111.9584 Ω at 50 Hz, DERIVED
    assertClose(load('sixteen-kilohm', ringer(4000, 1e-6)), 16_000 / 5111.9584, { relative: 1e-7 }, 'load')
  })
})

/** Collectors' text, secondary copy, SEEN-S: a ringer of 4000 Ω is one load. */
describe('in units of 4 kΩ', () => {
  test.each([
    ['on the pair', resistive(4000)],
    ['on a ringing lead', parts(plainBell('bell', 'A3', 'A1', 4000 - PLUG))],
  ])('a ringer of 4 kΩ %s is one load', (_, wiring) => {
    assertClose(load('four-kilohm-unit', wiring), 1, { relative: 1e-4 }, 'load')
  })

  test('the resistor of the master socket is no load of the set', () => {
    const shelf = premises(LINE, [parts(plainBell('bell', 'A3', 'A1', 4000 - PLUG))], { ohms: 470e3 })
    const found = amountOf(figuresOf(shelf, 'ringing.load'), 'ringing.load.four-kilohm-unit', 'set1')
    assertClose(found, 1, { relative: 1e-4 }, 'load')
  })

  // common practice, no source
  test('3.3 kΩ in series with a bell of about 1 kΩ makes it nearly one load, without them it is four', () => {
    const withResistor = parts(plainBell('bell', 'A3', 'A4', 1000), ohms('resistor', 'A4', 'A1', 3300 - PLUG))
    const one = load('four-kilohm-unit', withResistor)
    assertClose(one, 4000 / 4300, { relative: 1e-4 }, 'with its resistor')
    expect(Math.abs(one - 1)).toBeLessThan(0.1)
    assertClose(
      load('four-kilohm-unit', parts(plainBell('bell', 'A3', 'A1', 1000 - PLUG))),
      4,
      { relative: 1e-4 },
      'bare',
    )
  })
})

test('a unit of one definition is no unit of another: they are never to be added', () => {
  const found = figuresOf(premises(LINE, [ringer(4000, 1e-6)]), 'ringing.load')
  const values = found.map(({ value }) => Number((value ?? Number.NaN).toPrecision(6)))
  expect(found.length).toBeGreaterThanOrEqual(6)
  expect(new Set(values).size).toBe(values.length)
})
