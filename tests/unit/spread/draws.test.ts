import { deviationOf, drawer, quantileOf } from 'ringproof/spread/draws'
import type { LooseValue } from 'ringproof/spread/world'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

const value = (least: number, most: number, byRatio = false): LooseValue => ({
  id: 'x',
  part: 'x',
  value: 1,
  unit: 'Ω',
  least,
  most,
  byRatio,
  site: { part: 0, path: [] },
})

function many(one: LooseValue, law: 'normal' | 'uniform', count = 20_000, seed = 5): number[] {
  const draw = drawer([one], law, seed)
  const into = new Float64Array(1)
  return Array.from({ length: count }, () => {
    draw(into)
    return into[0] ?? Number.NaN
  })
}

const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length
const deviation = (all: readonly number[]): number => {
  const middle = mean(all)
  return Math.sqrt(mean(all.map((one) => (one - middle) ** 2)))
}

describe('draws', () => {
  test('are the same for the same seed, and others for another', () => {
    expect(many(value(0.9, 1.1), 'normal', 5)).toEqual(many(value(0.9, 1.1), 'normal', 5))
    expect(many(value(0.9, 1.1), 'normal', 5)).not.toEqual(many(value(0.9, 1.1), 'normal', 5, 6))
  })

  test('normal: three standard deviations to each limit', () => {
    const all = many(value(0.9, 1.1), 'normal')
    assertClose(mean(all), 1, { relative: 1e-3 }, 'mean')
    assertClose(deviation(all), 0.1 / 3, { relative: 0.02 }, 'deviation')
    assertClose(deviationOf(value(0.9, 1.1), 'normal'), 0.1 / 3, { relative: 1e-12 }, 'as told')
  })

  // a uniform number of width w deviates by w/√12; any textbook, from memory
  test('uniform: within the limits', () => {
    const all = many(value(0.9, 1.1), 'uniform')
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0.9)
    expect(Math.max(...all)).toBeLessThanOrEqual(1.1)
    assertClose(deviation(all), 0.2 / Math.sqrt(12), { relative: 0.02 }, 'deviation')
    assertClose(deviationOf(value(0.9, 1.1), 'uniform'), 0.2 / Math.sqrt(12), { relative: 1e-12 }, 'as told')
  })

  test('of a factor up and down by its logarithm', () => {
    const logs = many(value(1 / 3, 3, true), 'normal').map(Math.log)
    assertClose(mean(logs), 0, { relative: 0, absolute: 0.01 }, 'middle')
    assertClose(deviation(logs), Math.log(3) / 3, { relative: 0.02 }, 'deviation')
  })

  test('never turn the sign of a value', () => {
    expect(many(value(0, 2), 'normal').every((one) => one > 0)).toBe(true)
  })
})

describe('quantiles', () => {
  // Hyndman and Fan (1996), definition 7: h = (n − 1) p + 1; by hand
  test('lie between the members of a list', () => {
    expect(quantileOf([1, 2, 3, 4], 0.5)).toBe(2.5)
    expect(quantileOf([1, 2, 3, 4], 0)).toBe(1)
    expect(quantileOf([1, 2, 3, 4], 1)).toBe(4)
    assertClose(quantileOf([10, 20, 30], 0.05), 11, { relative: 1e-12 }, 'a twentieth')
    expect(quantileOf([7], 0.95)).toBe(7)
  })
})
