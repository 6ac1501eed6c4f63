import * as fc from 'fast-check'
import type { FigurePlan } from 'ringproof/figures/figure'
import { Spots } from 'ringproof/spread/sensitivity'
import { study } from 'ringproof/spread/study'
import type { World } from 'ringproof/spread/world'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { SEED } from '../support/seed.ts'
import { circuitWorld, currentOf, voltageAt } from '../unit/spread/_circuit.ts'

/** Interval arithmetic: exact where every value stands in the expression once. Moore, Interval Analysis (1966), from memory */
type Interval = readonly [least: number, most: number]
const around = (value: number, percent: number): Interval => [
  value * (1 - percent / 100),
  value * (1 + percent / 100),
]
const sum = ([a, b]: Interval, [c, d]: Interval): Interval => [a + c, b + d]
const inverse = ([a, b]: Interval): Interval => [1 / b, 1 / a]
const times = ([a, b]: Interval, [c, d]: Interval): Interval => [a * c, b * d] // all above 0

function worst(world: World, plan: FigurePlan) {
  const [one] = study(new Spots(world, () => [plan]), () => {})
  if (one?.worst === undefined) throw new Error('no worst case')
  return one.worst
}

describe('the worst case is the interval', () => {
  test('of a divider: V = E/(1 + R1/R2)', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V ± 3 %}',
      'r1: {kind: resistor, from: p, to: q, resistance: 3 kΩ ± 10 %}',
      'r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ ± 20 %}',
    )
    const ratio = times(around(3000, 10), inverse(around(2000, 20)))
    const [least, most] = times(around(10, 3), inverse(sum([1, 1], ratio)))
    const found = worst(world, voltageAt(world.net, 'q'))
    assertClose(found.least.value, least, { relative: 1e-12 }, 'least')
    assertClose(found.most.value, most, { relative: 1e-12 }, 'most')
    expect(found.steady).toBe(true)
  })

  test('of a ladder: I = E/(R1 + 1/(1/R2 + 1/(R3 + R4)))', () => {
    const ohms = fc.integer({ min: 10, max: 9000 })
    const percent = fc.integer({ min: 1, max: 40 })
    const four = fc.tuple(ohms, ohms, ohms, ohms)
    fc.assert(
      fc.property(four, fc.tuple(percent, percent, percent, percent), (values, percents) => {
        const name = (k: number): string => `${values[k]} Ω ± ${percents[k]} %`
        const world = circuitWorld(
          'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}',
          `r1: {kind: resistor, from: p, to: q, resistance: ${name(0)}}`,
          `r2: {kind: resistor, from: q, to: earth, resistance: ${name(1)}}`,
          `r3: {kind: resistor, from: q, to: s, resistance: ${name(2)}}`,
          `r4: {kind: resistor, from: s, to: earth, resistance: ${name(3)}}`,
        )
        const [i1, i2, i3, i4] = values.map((value, k) => around(value, percents[k] ?? 0)) as [
          Interval,
          Interval,
          Interval,
          Interval,
        ]
        const shunt = inverse(sum(inverse(i2), inverse(sum(i3, i4))))
        const [least, most] = times([10, 10], inverse(sum(i1, shunt)))
        const found = worst(world, currentOf(world.net, 'r1'))
        assertClose(found.least.value, least, { relative: 1e-10 }, 'least')
        assertClose(found.most.value, most, { relative: 1e-10 }, 'most')
      }),
      { seed: SEED, numRuns: 30 },
    )
  })
})

describe('where a figure turns within the limits', () => {
  // closed form: the power taken from E behind R is most where the load is R itself, E²/(4 R); Jacobi, from memory
  test('a value as stated is found to be worse than both its ends, and no steadiness is claimed', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      'load: {kind: resistor, from: q, to: earth, resistance: 1.01 kΩ ± 50 %}',
    )
    const volts = voltageAt(world.net, 'q')
    const amps = currentOf(world.net, 'load')
    const power: FigurePlan = {
      ...volts,
      taps: [...volts.taps, ...amps.taps],
      value: ([v = 0, , i = 0]) => v * i,
    }
    const found = worst(world, power)
    expect(found.steady).toBe(false)
    assertClose(found.most.value, 0.025, { relative: 1e-4 }, 'most')
    const end = (ohms: number): number => (10 / (1000 + ohms)) ** 2 * ohms
    assertClose(found.least.value, Math.min(end(505), end(1515)), { relative: 1e-9 }, 'least')
  })

  test('a load that is matched as stated has no slope, and yet a worst case', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      'load: {kind: resistor, from: q, to: earth, resistance: 1 kΩ ± 50 %}',
    )
    const volts = voltageAt(world.net, 'q')
    const amps = currentOf(world.net, 'load')
    const found = worst(world, {
      ...volts,
      taps: [...volts.taps, ...amps.taps],
      value: ([v = 0, , i = 0]) => v * i,
    })
    const end = (ohms: number): number => (10 / (1000 + ohms)) ** 2 * ohms
    assertClose(found.most.value, 0.025, { relative: 1e-9 }, 'most')
    assertClose(found.least.value, Math.min(end(500), end(1500)), { relative: 1e-9 }, 'least')
    expect(found.steady).toBe(false)
  })

  // closed form: V = E·(R2/(R1 + R2) − R4/(R3 + R4)), nought as stated; its size has a point there, not a slope
  test('a bridge in balance is out of it in its worst case', () => {
    const four = [
      'r1: {from: p, to: q',
      'r2: {from: q, to: earth',
      'r3: {from: p, to: s',
      'r4: {from: s, to: earth',
    ]
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, alternating: 10 V}',
      ...four.map((one) => `${one}, kind: resistor, resistance: 1 kΩ ± 10 %}`),
    )
    const at = (node: string) => voltageAt(world.net, node, 1000).taps
    const found = worst(world, {
      ...voltageAt(world.net, 'q', 1000),
      taps: [...at('q'), ...at('s')],
      value: ([re = 0, im = 0, re2 = 0, im2 = 0]) => Math.hypot(re - re2, im - im2),
    })
    assertClose(found.most.value, 10 * (1.1 / 2 - 0.9 / 2), { relative: 1e-9 }, 'most')
    expect(found.least.value).toBeLessThan(1e-12)
    expect(found.steady).toBe(false)
  })
})
