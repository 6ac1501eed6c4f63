import * as fc from 'fast-check'
import { isPreferred, nearestPreferred, PREFERRED, type Series } from 'ringproof/quantities/preferred'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

const SERIES = ['E3', 'E6', 'E12', 'E24'] as const satisfies readonly Series[]

// IEC 60063:2015, table 1, secondary copy: SEEN-S; E3 from memory
describe('preferred values', () => {
  it('are those of the standard', () => {
    expect(PREFERRED.E6.join(' ')).toBe('10 15 22 33 47 68')
    expect(PREFERRED.E12.join(' ')).toBe('10 12 15 18 22 27 33 39 47 56 68 82')
    expect(PREFERRED.E24.join(' ')).toBe(
      '10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91',
    )
  })

  it('of a series are every second of the next, and as many as its name says', () => {
    SERIES.forEach((series, at) => {
      const next = SERIES[at + 1]
      expect(PREFERRED[series]).toHaveLength(Number(series.slice(1)))
      if (next !== undefined) expect(PREFERRED[next].filter((_, k) => k % 2 === 0)).toEqual(PREFERRED[series])
    })
  })

  it('of E24 are the rounded powers 10^(k/24) but for 27, 30, 33, 36, 39, 43, 47 and 82', () => {
    const off = PREFERRED.E24.filter((value, k) => value !== Math.round(10 * 10 ** (k / 24)))
    expect(off).toEqual([27, 30, 33, 36, 39, 43, 47, 82])
  })
})

describe('the nearest preferred value', () => {
  it.each<[number, Series, number]>([
    [3300, 'E24', 3300],
    [3450, 'E24', 3600],
    [3400, 'E24', 3300],
    [3400, 'E3', 4700],
    [3200, 'E3', 2200],
    [9.6, 'E24', 10],
    [9.5, 'E24', 9.1],
    [9.9, 'E3', 10],
    [1.8e-6, 'E12', 1.8e-6],
    [1.75e-6, 'E6', 1.5e-6],
    [5_000_000, 'E6', 4_700_000],
    [0.47, 'E3', 0.47],
    [0.97, 'E24', 1],
  ])('to %d in %s is %d', (value, series, nearest) => {
    expect(nearestPreferred(value, series)).toBe(nearest)
  })

  it('is never farther by ratio than any other value of its series', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 1e12, noNaN: true }),
        fc.constantFrom(...SERIES),
        (value, series) => {
          const found = nearestPreferred(value, series)
          const apart = (one: number) => Math.abs(Math.log(one / value))
          for (let power = -14; power <= 12; power += 1) {
            for (const digits of PREFERRED[series]) {
              expect(apart(found)).toBeLessThanOrEqual(apart(digits * 10 ** power) + 1e-12)
            }
          }
          expect(isPreferred(found, series)).toBe(true)
        },
      ),
      { seed: SEED, numRuns: 300 },
    )
  })

  it('is known to be preferred: 1.8 µF in E12, not in E6; 470 kΩ in E3; 4300 Ω in E24 alone', () => {
    expect(isPreferred(1.8e-6, 'E12')).toBe(true)
    expect(isPreferred(1.8e-6, 'E6')).toBe(false)
    expect(isPreferred(470_000, 'E3')).toBe(true)
    expect(isPreferred(4300, 'E24')).toBe(true)
    expect(isPreferred(4300, 'E12')).toBe(false)
    for (const value of [0, -10, Number.NaN, Number.POSITIVE_INFINITY])
      expect(isPreferred(value, 'E3')).toBe(false)
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('is refused for %d', (value) => {
    expect(() => nearestPreferred(value, 'E12')).toThrow(RangeError)
  })
})
