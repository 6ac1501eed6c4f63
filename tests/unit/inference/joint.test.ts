import fc from 'fast-check'
import { believe } from 'ringproof/inference/belief'
import type { Hypotheses, Loose, Observation } from 'ringproof/inference/hypotheses'
import { curveAt, lineOf } from 'ringproof/inference/joint/curve'
import { given } from 'ringproof/inference/joint/given'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../../support/hypotheses.ts'
import { SEED } from '../../support/seed.ts'
import { anyHypotheses, anyObservation } from './_any.ts'

/** Two straight values and one curved one, their steps drawn from a list. */
function looseFrom(steps: readonly number[], observables: number): Loose {
  return {
    straight: 2,
    curved: 1,
    steps(k, observable, into) {
      for (let s = 0; s < 6; s++) into[s] = steps[(k * observables + observable + 7 * s) % steps.length] ?? 0
    },
  }
}

const anyCase = fc
  .tuple(
    anyHypotheses,
    fc.array(fc.tuple(fc.nat(), anyObservation), { maxLength: 6 }),
    fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 30 }),
  )
  .map(([among, raw, steps]): [Hypotheses, Observation[]] => {
    const evidence = new Map(
      raw.map(([nat, one]) => {
        const observable = nat % among.observables.length
        return [observable, { ...one, observable }]
      }),
    )
    return [{ ...among, loose: looseFrom(steps, among.observables.length) }, [...evidence.values()]]
  })

describe('what observations share', () => {
  test('leaves belief normalised, and what is expected no NaN that was a number', () => {
    fc.assert(
      fc.property(anyCase, ([among, evidence]) => {
        const belief = believe(among, evidence)
        const sum = belief.of.reduce((all, one) => all + one, belief.none)
        expect(Math.abs(sum - 1)).toBeLessThan(1e-9)
        const after = given(among, belief)
        after.expected.forEach((x, i) => {
          expect(Number.isFinite(x)).toBe(Number.isFinite(among.expected[i] ?? 0))
          expect((after.spread[i] ?? Number.NaN) >= 0).toBe(true)
        })
      }),
      { seed: SEED, numRuns: 300 },
    )
  })

  test('does not hang on the order of evidence', () => {
    fc.assert(
      fc.property(anyCase, ([among, evidence]) => {
        const [one, other] = [believe(among, evidence), believe(among, [...evidence].reverse())]
        expect([...other.of]).toEqual([...one.of].map((p) => expect.closeTo(p, 9)))
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('is nothing where nothing is loose', () => {
    fc.assert(
      fc.property(anyCase, ([among, evidence]) => {
        const { loose, ...alone } = among
        const still: Loose = { straight: 2, curved: 1, steps: (_, __, into) => into.fill(0) }
        expect(believe({ ...alone, loose: still }, evidence)).toEqual(believe(alone, evidence))
        const belief = believe(alone, evidence)
        expect(given(alone, belief)).toBe(alone)
      }),
      { seed: SEED, numRuns: 100 },
    )
  })

  test('one slip leaves what is expected as it was', () => {
    const reading = asked({ error: () => 0.1, slip: 0.01 })
    const loose: Loose = { straight: 1, curved: 0, steps: (_, __, into) => into.fill(0.1) }
    const among = { ...hypotheses([0.9], [reading, reading], [[1, 1]], 0.1), loose }
    const slipped = given(among, believe(among, [{ observable: 0, x: 9000 }]))
    expect(slipped.expected[1]).toBeCloseTo(1, 4)
    expect(slipped.spread[1]).toBeCloseTo(0.1, 4)
    const told = given(among, believe(among, [{ observable: 0, x: 1.1 }]))
    expect(told.expected[1]).toBeGreaterThan(1.02)
    expect(told.spread[1]).toBeLessThan(0.08)
  })

  test('an answer tells of it too', () => {
    const [word, reading] = [asked({ cuts: [0], slip: 0 }), asked({ error: () => 0.01 })]
    const loose: Loose = { straight: 1, curved: 0, steps: (_, __, into) => into.fill(0.5) }
    const among = { ...hypotheses([0.9], [word, reading], [[0, 0]], 0.5), loose }
    const after = given(among, believe(among, [{ observable: 0, answer: 1 }]))
    // Source: the half normal distribution has the mean √(2/π) and the variance 1 − 2/π
    expect(Math.asinh(after.expected[1] ?? 0)).toBeCloseTo(0.5 * Math.sqrt(2 / Math.PI), 7)
    expect(after.spread[1]).toBeCloseTo(0.5 * Math.sqrt(1 - 2 / Math.PI), 7)
    // whatever none explains knows nothing of it
    expect(after.origin).toBe(among)
  })
})

describe('a curve', () => {
  const bent = [-0.5, -0.3, 0.4, 1]

  test('passes through what was worked out, and goes on straight', () => {
    expect([-2, -1, 0, 1, 2].map((z) => curveAt(bent, 0, z))).toEqual(
      [-0.5, -0.3, 0, 0.4, 1].map((u) => expect.closeTo(u, 12)),
    )
    expect([-3, 3].map((z) => curveAt(bent, 0, z))).toEqual([
      expect.closeTo(-0.7, 12),
      expect.closeTo(1.6, 12),
    ])
  })

  test('that is a line is that line', () => {
    const line = [-0.6, -0.3, 0.3, 0.6]
    for (const z of [-4, -1.7, -0.4, 0.1, 1.2, 5]) expect(curveAt(line, 0, z)).toBeCloseTo(0.3 * z, 12)
    const { mean, slope, noise } = lineOf(line, 0, 0.7, 0.5)
    expect([mean, slope, noise]).toEqual([0.21, 0.3, 0].map((one) => expect.closeTo(one, 12)))
  })

  test('is a line with noise where z is not known, and hardly any noise where it is', () => {
    // z² between the nodes: the mean is the variance, and what no line follows has twice its square
    const square = [4, 1, 1, 4]
    const { mean, slope, noise } = lineOf(square, 0, 0, 1 / 3)
    expect([mean, slope, noise]).toEqual([1 / 3, 0, 2 / 9].map((one) => expect.closeTo(one, 9)))
    expect(lineOf(square, 0, 1, 1e-4).slope).toBeCloseTo(2, 1)
    expect(lineOf(square, 0, 1, 1e-4).noise).toBeLessThan(1e-5)
  })
})
