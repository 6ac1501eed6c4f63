import { erf } from 'mathjs'
import { type DrawLaw, quantileOf } from 'ringproof/spread/draws'
import { drawAll } from 'ringproof/spread/study'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { circuitWorld, voltageAt } from '../unit/spread/_circuit.ts'

const DRAWS = 4000
/**
 * A sample of n from the distribution itself lies further from it than 1.63/√n in one of a hundred cases.
 * Kolmogorov and Smirnov; Abramowitz and Stegun, Handbook of Mathematical Functions (1964), ch. 26, from memory
 */
const CRITICAL = 1.63 / Math.sqrt(DRAWS)

const [E, R1, R2, TOLERANCE] = [10, 3000, 2000, 0.1]

function drawn(law: DrawLaw, first = '± 10 %', second = '± 10 %', seed = 7): Float64Array {
  const world = circuitWorld(
    `e: {kind: voltage-source, from: p, to: earth, direct: ${E} V}`,
    `r1: {kind: resistor, from: p, to: q, resistance: ${R1} Ω ${first}}`,
    `r2: {kind: resistor, from: q, to: earth, resistance: ${R2} Ω ${second}}`,
  )
  const plan = voltageAt(world.net, 'q')
  const { amounts } = drawAll(
    world,
    () => [plan],
    { draws: DRAWS, seed, law },
    () => true,
    () => {},
  )
  return (amounts[0] ?? new Float64Array(0)).slice().sort()
}

/** The largest distance between the steps of a sample and a distribution. */
function distance(sorted: Float64Array, distribution: (value: number) => number): number {
  return sorted.reduce((most, value, k) => {
    const there = distribution(value)
    return Math.max(most, Math.abs(there - k / sorted.length), Math.abs((k + 1) / sorted.length - there))
  }, 0)
}

const normal = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2
const sigma = (value: number): number => (value * TOLERANCE) / 3

// V = E R2/(R1 + R2) ≤ v exactly where (E − v) R2 − v R1 ≤ 0, which is a sum of two independent numbers
describe('a divider whose resistors are drawn comes out as its distribution says', () => {
  test('normal: a weighted sum of two normal numbers is normal', () => {
    const distribution = (v: number): number => {
      const middle = (E - v) * R2 - v * R1
      return normal(-middle / Math.hypot((E - v) * sigma(R2), v * sigma(R1)))
    }
    expect(distance(drawn('normal'), distribution)).toBeLessThan(CRITICAL)
  })

  test('uniform, one resistor: R1 ≥ E R2/v − R2', () => {
    const [least, most] = [R1 * (1 - TOLERANCE), R1 * (1 + TOLERANCE)]
    const distribution = (v: number): number =>
      Math.min(1, Math.max(0, (most - ((E * R2) / v - R2)) / (most - least)))
    expect(distance(drawn('uniform', '± 10 %', ''), distribution)).toBeLessThan(CRITICAL)
  })

  test('uniform, both: the part of a rectangle below a line', () => {
    const [a, b] = [R1 * (1 - TOLERANCE), R1 * (1 + TOLERANCE)]
    const [c, d] = [R2 * (1 - TOLERANCE), R2 * (1 + TOLERANCE)]
    const share = (y: number): number => Math.min(1, Math.max(0, (y - c) / (d - c)))
    const steps = 2000
    const distribution = (v: number): number => {
      let sum = 0
      for (let k = 0; k < steps; k += 1) sum += share(((a + ((k + 0.5) * (b - a)) / steps) * v) / (E - v))
      return sum / steps
    }
    const sorted = drawn('uniform')
    const some = Float64Array.from({ length: 200 }, (_, k) => sorted[k * 20] ?? 0)
    const apart = some.map((v, k) => Math.abs(distribution(v) - (k * 20) / DRAWS))
    expect(Math.max(...apart)).toBeLessThan(CRITICAL)
  })

  test('a wrong law is told from the right one', () => {
    const distribution = (v: number): number => {
      const middle = (E - v) * R2 - v * R1
      return normal(-middle / Math.hypot((E - v) * sigma(R2), v * sigma(R1)))
    }
    expect(distance(drawn('uniform'), distribution)).toBeGreaterThan(2 * CRITICAL)
  })

  // quantiles of the normal distribution: 5 % and 95 % at ∓1.6449 σ; Abramowitz and Stegun, table 26.5, from memory
  test('and so do its percentiles', () => {
    const sorted = drawn('normal', '', '± 10 %', 3)
    const at = (z: number): number => {
      const ohms = R2 + z * sigma(R2)
      return (E * ohms) / (R1 + ohms)
    }
    const width = at(1) - at(-1)
    for (const [share, z] of [
      [0.05, -1.6449],
      [0.5, 0],
      [0.95, 1.6449],
    ] as const)
      assertClose(quantileOf(sorted, share), at(z), { relative: 0, absolute: 0.04 * width }, `${share}`)
  })
})
