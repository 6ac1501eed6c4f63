import fc from 'fast-check'
import { type Belief, believe } from 'ringproof/inference/belief'
import type { Hypotheses, Observation } from 'ringproof/inference/hypotheses'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../../support/hypotheses.ts'
import { SEED } from '../../support/seed.ts'
import { anyHypotheses, anyObservation } from './_any.ts'

const sumOf = ({ of, none }: Belief): number => of.reduce((sum, one) => sum + one, none)

const casesOf = fc
  .tuple(anyHypotheses, fc.array(fc.tuple(fc.nat(), anyObservation), { maxLength: 6 }))
  .map(([among, raw]): [Hypotheses, Observation[]] => {
    const evidence = new Map(
      raw.map(([nat, one]) => {
        const observable = nat % among.observables.length
        return [observable, { ...one, observable }]
      }),
    )
    return [among, [...evidence.values()]]
  })

describe('belief', () => {
  test('is normalised and no NaN, whatever is observed', () => {
    fc.assert(
      fc.property(casesOf, ([among, evidence]) => {
        const belief = believe(among, evidence)
        expect(Math.abs(sumOf(belief) - 1)).toBeLessThan(1e-9)
        for (const one of belief.of) expect(one >= 0 && one <= 1 + 1e-12).toBe(true)
      }),
      { seed: SEED, numRuns: 300 },
    )
  })

  test('does not hang on the order of evidence about different observables', () => {
    fc.assert(
      fc.property(casesOf, ([among, evidence]) => {
        const [one, other] = [believe(among, evidence), believe(among, [...evidence].reverse())]
        one.of.forEach((p, k) => {
          expect(Math.abs(p - (other.of[k] ?? 0))).toBeLessThan(1e-9)
        })
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('takes the later of two observations of one observable', () => {
    const among = hypotheses([0.5, 0.5], [asked({ cuts: [0.5], slip: 0.1 })], [[0], [1]])
    const twice = [0, 1, 1, 0].map((answer) => ({ observable: 0, answer }))
    expect(believe(among, twice)).toEqual(believe(among, [{ observable: 0, answer: 0 }]))
  })

  test('survives a thousand observations that make every hypothesis absurd', () => {
    const readings = Array.from({ length: 1000 }, () => asked({ error: () => 1e-3, slip: 0.001 }))
    const rows = [readings.map(() => 1), readings.map(() => 2)]
    const among = hypotheses([0.5, 0.5], readings, rows)
    const belief = believe(
      among,
      readings.map((_, observable) => ({ observable, x: 900 })),
    )
    expect(sumOf(belief)).toBe(1)
  })

  test('lets `none` grow when nothing fits, and shrink when something does', () => {
    const reading = asked({ scale: 0.1, error: (x) => 0.01 * Math.abs(x) + 0.1, slip: 0.001 })
    const among = hypotheses([0.45, 0.45], [reading], [[100], [1000]])
    expect(believe(among, [{ observable: 0, x: 300 }]).none).toBeGreaterThan(0.9)
    expect(believe(among, [{ observable: 0, x: 100.3 }]).none).toBeLessThan(0.01)
    expect(believe(among, [{ observable: 0, x: Number.POSITIVE_INFINITY }]).none).toBeGreaterThan(0.9)
  })

  test('tells `open` from a number, but for a slip', () => {
    const reading = asked({ scale: 0.1, error: () => 1, slip: 0.01 })
    const among = hypotheses([0.5, 0.5], [reading], [[100], [Number.POSITIVE_INFINITY]])
    const open = believe(among, [{ observable: 0, x: Number.POSITIVE_INFINITY }]).of
    // one in a hundred is a slip, a quarter of slips read open
    expect(Math.abs((open[0] ?? 0) / (open[1] ?? 1) - 0.0025 / 0.9925)).toBeLessThan(1e-9)
    const [number, other] = believe(among, [{ observable: 0, x: 100 }]).of
    expect(other ?? 1).toBeLessThan(0.01 * (number ?? 0))
  })

  test('learns nothing where anything may be observed, from what was not observed, and without hypotheses', () => {
    const reading = asked({ scale: 0.1, error: () => 1 })
    const among = hypotheses([0.25, 0.25], [reading], [[Number.NaN], [Number.NEGATIVE_INFINITY]])
    const prior = believe(among, [])
    const after = believe(among, [{ observable: 0, x: 7 }])
    expect([...after.of, after.none].map((p) => p.toFixed(9))).toEqual(
      [...prior.of, prior.none].map((p) => p.toFixed(9)),
    )
    expect(believe(among, [{ observable: 0 }, { observable: 0, x: Number.NaN }])).toEqual(prior)
    expect(believe(among, [{ observable: 7, x: 1 }])).toEqual(prior)
    expect(believe(hypotheses([], [], []), []).none).toBe(1)
    expect(believe(hypotheses([0, 0], [reading], [[1], [2]]), []).none).toBe(1)
  })

  test('takes a number for the answer in whose stretch it lies; a strange answer tells nothing', () => {
    const among = hypotheses([0.5, 0.5], [asked({ cuts: [0.2, 0.7], slip: 0.03 })], [[0], [1]])
    for (const [x, answer] of [
      [0.1, 0],
      [0.2, 1],
      [0.7, 2],
      [Number.POSITIVE_INFINITY, 2],
    ] as const)
      expect(believe(among, [{ observable: 0, x }])).toEqual(believe(among, [{ observable: 0, answer }]))
    expect(believe(among, [{ observable: 0, answer: 9 }])).toEqual(believe(among, []))
  })

  test('takes one of several answers for what they have in common', () => {
    const among = hypotheses([0.3, 0.3, 0.3], [asked({ cuts: [1, 2], slip: 0.1 })], [[0], [1.5], [3]])
    const { of } = believe(among, [{ observable: 0, answers: [1, 2, 2] }])
    // 0.1 against 0.95 twice
    expect(Math.abs((of[0] ?? 0) / (of[1] ?? 1) - 0.1 / 0.95)).toBeLessThan(1e-9)
    expect(of[1]).toBe(of[2])
    expect(believe(among, [{ observable: 0, answers: [0, 1, 2] }]).of[0]?.toFixed(9)).toBe('0.300000000')
    expect(believe(among, [{ observable: 0, answers: [] }])).toEqual(believe(among, []))
  })

  test('is soft near a cut', () => {
    const among = hypotheses([0.5, 0.5], [asked({ cuts: [1] })], [[0.98], [3]], 0.1)
    const { of } = believe(among, [{ observable: 0, answer: 1 }])
    expect(of[0]).toBeGreaterThan(0.2)
    expect(of[0]).toBeLessThan(0.4)
  })
})
