import {
  allOrNone,
  FAR,
  inverse,
  joined,
  least,
  type Measure,
  most,
  share,
} from 'ringproof/book/bench-tests/measure'
import type { FigurePlan } from 'ringproof/figures/figure'
import { OPEN, UNFIXED, UNSETTLED } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'

const plan = (subject: string): FigurePlan => ({
  id: 'loop.current',
  subject,
  condition: { line: 'idle', sets: {} },
  unit: 'A',
  taps: [],
  value: () => 0,
})

const one = share(plan('one'), 2)
const other = share(plan('other'), 4)
const specs = () => ({ kind: '' })
const of = (measure: Measure, ...figures: number[]): number => measure.of(figures, specs)

describe('a measure', () => {
  test('is a share of what is due; where nothing can flow nothing flows', () => {
    expect(of(one, 3)).toBe(1.5)
    expect(of(one, OPEN)).toBe(0)
    expect(of(one, UNSETTLED)).toBe(UNSETTLED)
    expect(of(one, UNFIXED)).toBeNaN()
  })

  test('of several takes each its own figures, in their order', () => {
    expect(least(one, other).plans.map(({ subject }) => subject)).toEqual(['one', 'other'])
    expect([of(least(one, other), 3, 4), of(most(one, other), 3, 4)]).toEqual([1, 1.5])
    expect(of(least(most(one, other), other), 3, 4, 8)).toBe(1.5)
    expect(
      of(
        joined([other, one], ([p = 0, q = 0]) => p - q),
        4,
        2,
      ),
    ).toBe(0)
  })

  test('of what is not settled is not settled', () => {
    expect(of(least(one, other), 3, UNSETTLED)).toBe(UNSETTLED)
    expect(of(least(one, other), UNFIXED, 4)).toBeNaN()
    expect([UNSETTLED, UNFIXED].map((code) => of(inverse(one), code))).toEqual([UNSETTLED, UNFIXED])
    expect([UNSETTLED, UNFIXED].map((code) => of(allOrNone(one, 0.1), code))).toEqual([UNSETTLED, UNFIXED])
  })

  test('of all or none lies on its cut at what it takes, and is three times that a tenth above', () => {
    const made = allOrNone(one, 0.03)
    expect(of(made, 2)).toBe(0.03)
    expect(of(made, 2.2)).toBeGreaterThan(3 * 0.03)
    expect(of(made, 1.8)).toBeLessThan(0.03 / 3)
    expect(of(made, 1e9)).toBe(of(made, 4))
    expect(of(made, OPEN)).toBe(0)
  })

  test('turned upside down has a top', () => {
    expect([of(inverse(one), 4), of(inverse(one), 0), of(inverse(one), 1e-9)]).toEqual([0.5, FAR, FAR])
  })
})
