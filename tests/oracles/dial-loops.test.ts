/** Made and broken loops of AS/CA S002:2010 clause 5.5.1.8, and direct loops of law, off sets that are one resistance. */
import { describe, expect, test } from 'vitest'
import { verdictOf } from '../support/bench.ts'
import { assertClose } from '../support/close.ts'
import {
  amountOf,
  checksOf,
  type Exchange,
  figuresOf,
  ohms,
  PLUG,
  premises,
  type Wiring,
} from './_premises.ts'

/** A hook and an impulse contact without resistance: so many ohms when made, and when broken. */
const dialSet = (made: number, broken = 1e12): Wiring => [
  'contacts:',
  '  hook: {from: A1, to: A4, closed when: off-hook, resistance: 0 Ω, leakage: open}',
  '  impulse: {from: A4, to: A5, open when: break, resistance: 0 Ω, leakage: open}',
  `parts: {${ohms('load', 'A5', 'A2', made - PLUG)}, ${ohms('leak', 'A4', 'A5', broken - made)}}`,
]

/** AS/CA S002:2010, clause 5.5.1.8, SEEN-P: into 48 V and 1900 Ω; break below 2.8 mA, make above 12 mA. */
const PULSES: Exchange = {
  battery: 48,
  feed: 1900,
  more: [
    'limits: {loop current: 10 mA to 100 mA, pulses: {understood: yes, rate: 7 Hz to 12 Hz, break: 60 % to 72 %}}',
  ],
}

describe('into 48 V and 1900 Ω (AS/CA S002:2010 clause 5.5.1.8)', () => {
  test('2100 Ω is the last make, 12.000 mA', () => {
    const figures = figuresOf(premises(PULSES, [dialSet(2100)]))
    const made = amountOf(figures, 'dial.resistance-made', 'set1')
    assertClose(made, 2100, { relative: 1e-9 }, 'resistance made')
    assertClose(48 / (1900 + made), 0.012, { relative: 1e-9 }, 'current made')
    assertClose(amountOf(figures, 'loop.current', 'set1'), 0.012, { relative: 1e-9 }, 'loop current')
  })

  test('15 242.857 Ω is the first break, 2.800 mA', () => {
    const figures = figuresOf(premises(PULSES, [dialSet(600, 15_242.857)]))
    // the printed resistance has three places: 2.8 mA to 1e-8 of itself
    assertClose(amountOf(figures, 'dial.leakage-open', 'set1'), 0.0028, { relative: 1e-7 }, 'current broken')
  })

  test.each([
    ['a hair less than 2100 Ω made', 2100 * (1 - 1e-6), 1e6, /^(holds|marginal)$/],
    ['a hair more than 2100 Ω made', 2100 * (1 + 1e-6), 1e6, /^fails$/],
  ])('pulses of %s are judged by that', (_, made, broken, state) => {
    expect(verdictOf(checksOf(premises(PULSES, [dialSet(made, broken)])), 'dial.understood').state).toMatch(
      state,
    )
  })
})

describe('the loop current of law', () => {
  // ministerial ordinance on telecommunications facilities (Japan), article 27, secondary copy, SEEN-S; feeds DERIVED
  test.each([
    ['42 V behind 2500 Ω into 300 Ω', 42, 2500, 300, '15.000'],
    ['53 V behind 357.692 Ω into 50 Ω', 53, 357.692, 50, '130.000'],
    // loop simulator of 47 CFR 68.3, limits from memory
    ['42.5 V behind 1740 Ω into 200 Ω', 42.5, 1740, 200, '21.907'],
    ['56.5 V behind 400 Ω into 200 Ω', 56.5, 400, 200, '94.167'],
  ])('of %s', (_, battery, feed, load, milliamperes) => {
    const figures = figuresOf(premises({ battery, feed }, [dialSet(load)]))
    const last = { relative: 0, absolute: 0.5e-3 }
    assertClose(
      1e3 * amountOf(figures, 'loop.current', 'set1'),
      Number(milliamperes),
      last,
      'current in milliamperes',
    )
    assertClose(amountOf(figures, 'loop.resistance', 'set1'), load, { relative: 1e-9 }, 'resistance')
    assertClose(
      amountOf(figures, 'loop.voltage', 'set1'),
      (battery * load) / (feed + load),
      { relative: 1e-3 },
      'voltage',
    )
  })
})

describe('a loop current of 20 mA to 100 mA that a line asks for', () => {
  const line: Exchange = {
    battery: 50,
    feed: 400,
    more: ['limits: {loop current: 20 mA to 100 mA, pulses: {understood: yes}}'],
  }
  const state = (load: number) => verdictOf(checksOf(premises(line, [dialSet(load)])), 'line.current').state
  // Ohm's law: 50/0.02 − 400 = 2100 Ω and 50/0.1 − 400 = 100 Ω
  test.each([
    [2100 * (1 - 1e-6), /^(holds|marginal)$/],
    [2100 * (1 + 1e-6), /^fails$/],
    [100 * (1 + 1e-6), /^(holds|marginal)$/],
    [100 * (1 - 1e-6), /^fails$/],
  ])('a set of %f Ω is judged by it', (load, expected) => {
    expect(state(load)).toMatch(expected)
  })
})
