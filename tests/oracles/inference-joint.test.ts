/** Observations that share what nobody knows, against the multivariate normal distribution and against quadrature. */
import { determinant, Matrix, solve } from 'ml-matrix'
import { seededRandom } from 'ringproof/algebra/random'
import { believe } from 'ringproof/inference/belief'
import type { Hypotheses, Loose } from 'ringproof/inference/hypotheses'
import { given } from 'ringproof/inference/joint/given'
import { cutNormal, normalBetween } from 'ringproof/inference/normal'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../support/hypotheses.ts'
import { SEED } from '../support/seed.ts'

const EXACT = 1e-9

/** Steps of straight values: one row for each hypothesis and observable. */
function straight(rows: readonly (readonly (readonly number[])[])[]): Loose {
  return {
    straight: rows[0]?.[0]?.length ?? 0,
    curved: 0,
    steps: (k, observable, into) => into.fill(0).set(rows[k]?.[observable] ?? []),
  }
}

/** A reading whose error is σ on the scale u = asinh(x). */
const reading = (sigma: number) => asked({ error: (x) => sigma * Math.hypot(x, 1) })

/** Density of N(0, Σ) by determinant and inverse. */
function density(off: readonly number[], covariance: Matrix): number {
  const column = Matrix.columnVector([...off])
  const exponent = column.transpose().mmul(solve(covariance, column)).get(0, 0)
  return Math.exp(-exponent / 2) / Math.sqrt((2 * Math.PI) ** off.length * determinant(covariance))
}

const covarianceOf = (rows: readonly (readonly number[])[], sigma: number): Matrix => {
  const j = new Matrix(rows.map((row) => [...row]))
  return j.mmul(j.transpose()).add(Matrix.eye(rows.length).mul(sigma * sigma))
}

describe('readings that share a value', () => {
  // Source: the bivariate normal density, Anderson, An Introduction to Multivariate Statistical Analysis, 2.3; from
  // memory. Two readings, 2σ high alike, of a value that spreads by 0.3 in both, read to within 0.1: each has the
  // variance 0.1, and their correlation is 0.09 / 0.1 = 0.9. Worked by hand: with d = (0.6, 0.6) the quadratic form is
  // (d₁² − 2ρ d₁ d₂ + d₂²) / (0.1 (1 − ρ²)) = 0.072 / 0.019, about the other mean, (0, 0), it is 0.
  test('as the bivariate normal density says', () => {
    const among = {
      ...hypotheses(
        [0.5, 0.5],
        [reading(0.1), reading(0.1)],
        [
          [0, 0],
          [Math.sinh(0.6), Math.sinh(0.6)],
        ],
        0.3,
      ),
      loose: straight([
        [[0.3], [0.3]],
        [[0.3], [0.3]],
      ]),
    }
    const { of } = believe(among, [
      { observable: 0, x: Math.sinh(0.6) },
      { observable: 1, x: Math.sinh(0.6) },
    ])
    expect(Math.abs(Math.log((of[1] ?? 0) / (of[0] ?? 0)) - 0.072 / 0.019 / 2)).toBeLessThan(EXACT)
  })

  test('as the density by determinant and inverse says, and further readings as the conditional distribution', () => {
    const random = seededRandom(SEED)
    const draw = (): number => 2 * random() - 1
    for (let round = 0; round < 20; round++) {
      const rows = [0, 1].map(() => Array.from({ length: 5 }, () => [draw(), draw(), draw()]))
      const means = [0, 1].map(() => Array.from({ length: 5 }, () => draw()))
      const seen = Array.from({ length: 4 }, () => 2 * draw())
      const among: Hypotheses = {
        ...hypotheses(
          [0.4, 0.6],
          Array.from({ length: 5 }, () => reading(0.2)),
          means.map((all) => all.map(Math.sinh)),
          1,
        ),
        loose: straight(rows),
      }
      const belief = believe(
        among,
        seen.map((u, observable) => ({ observable, x: Math.sinh(u) })),
      )
      const likelihoods = [0, 1].map((k) => {
        const off = seen.map((u, i) => u - (means[k]?.[i] ?? 0))
        return density(off, covarianceOf(rows[k]?.slice(0, 4) ?? [], 0.2))
      })
      const odds = (0.4 * (likelihoods[0] ?? 0)) / (0.6 * (likelihoods[1] ?? 1))
      expect(Math.abs(Math.log((belief.of[0] ?? 0) / (belief.of[1] ?? 1)) - Math.log(odds))).toBeLessThan(
        1e-7,
      )
      // Source: Anderson, as above, 2.5: mean μ + Σ₂₁ Σ₁₁⁻¹ d, variance Σ₂₂ − Σ₂₁ Σ₁₁⁻¹ Σ₁₂; from memory
      const after = given(among, belief)
      const k = (belief.of[0] ?? 0) > (belief.of[1] ?? 0) ? 0 : 1
      const all = covarianceOf(rows[k] ?? [], 0)
      const first = covarianceOf(rows[k]?.slice(0, 4) ?? [], 0.2)
      const across = all.subMatrix(4, 4, 0, 3)
      const off = Matrix.columnVector(seen.map((u, i) => u - (means[k]?.[i] ?? 0)))
      const mean = (means[k]?.[4] ?? 0) + across.mmul(solve(first, off)).get(0, 0)
      const variance = all.get(4, 4) - across.mmul(solve(first, across.transpose())).get(0, 0)
      expect(Math.abs(Math.asinh(after.expected[5 * k + 4] ?? 0) - mean)).toBeLessThan(1e-7)
      expect(Math.abs((after.spread[5 * k + 4] ?? 0) ** 2 - variance)).toBeLessThan(1e-7)
    }
  })

  // Source: closed form. The mean of n readings is N(μ, s² + σ²/n): the odds never pass those of the value read exactly.
  test('never tell more together than the value itself would', () => {
    const value = 0.5
    const limit = (0.8 ** 2 - 0.2 ** 2) / (2 * value ** 2)
    let before = 0
    for (const n of [1, 2, 5, 20]) {
      const all = Array.from({ length: n }, () => reading(0.2))
      const same = all.map(() => [value])
      const among = {
        ...hypotheses([0.5, 0.5], all, [all.map(() => 0), all.map(() => Math.sinh(1))], value),
        loose: straight([same, same]),
      }
      const { of } = believe(
        among,
        all.map((_, observable) => ({ observable, x: Math.sinh(0.8) })),
      )
      const told = Math.log((of[1] ?? 0) / (of[0] ?? 1))
      const expected = (0.8 ** 2 - 0.2 ** 2) / (2 * (value ** 2 + 0.2 ** 2 / n))
      expect(Math.abs(told - expected)).toBeLessThan(1e-7)
      expect(told).toBeGreaterThan(before)
      expect(told).toBeLessThan(limit)
      before = told
    }
  })
})

describe('answers that share a value', () => {
  /** ∫ φ(z) Π P(answer | z) dz by the trapezoidal rule, which is exact here to many digits. */
  function integral(given: readonly { cut: number; step: number; above: boolean }[], slip: number): number {
    let sum = 0
    for (let z = -9; z <= 9; z += 0.001) {
      let product = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
      for (const { cut, step, above } of given) {
        const right = step * z >= cut === above
        product *= right ? 1 - slip : slip
      }
      sum += product * 0.001
    }
    return sum
  }

  // Source: quadrature. Normal factors are an approximation: within an eighth where one value explains all answers,
  // within a factor of two where they contradict each other, so that one of them must be a slip. Taken as if each spread
  // by itself they are off by up to eleven times.
  test.each([
    [[1, 1, 1], 0.12],
    [[0, 0, 0], 0.12],
    [[0, 0, 1], 0.12],
    [[1, 1, 0], 0.12],
    [[1, 0, 1], 1],
    [[0, 1, 1], 1],
  ])('%j as the integral over the value says, within %d', (answers, within) => {
    const slip = 0.03
    const cuts = [0.5, 0.8, 0.2]
    const steps = [0.6, 0.9, 0.5]
    const seen = cuts.map((cut) => asked({ cuts: [Math.sinh(cut)], slip }))
    const rows = steps.map((step) => [step])
    const among = {
      // under the second each answer is as likely as the other
      ...hypotheses([0.5, 0.5], seen, [seen.map(() => 0), seen.map(() => Number.NaN)], 0.7),
      loose: straight([rows, rows]),
    }
    const { of } = believe(
      among,
      answers.map((answer, observable) => ({ observable, answer })),
    )
    const likelihood = (of[0] ?? 0) / (of[1] ?? 1) / 8
    const exact = integral(
      answers.map((answer, i) => ({ cut: cuts[i] ?? 0, step: steps[i] ?? 0, above: answer === 1 })),
      slip,
    )
    expect(Math.abs(likelihood / exact - 1)).toBeLessThan(within)
  })

  // Source: quadrature of the moments.
  test('a cut normal variable has the moments of its integral', () => {
    for (const [least, most] of [
      [-1, 2],
      [0.5, Number.POSITIVE_INFINITY],
      [Number.NEGATIVE_INFINITY, -2.5],
      [3, 4],
    ] as const) {
      let [mass, first, second] = [0, 0, 0]
      const [from, to] = [Math.max(-12, least), Math.min(12, most)]
      const h = (to - from) / 20_000
      for (let i = 0; i <= 20_000; i++) {
        const z = from + i * h
        const weight =
          ((i === 0 || i === 20_000 ? 0.5 : 1) * h * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
        mass += weight
        first += weight * z
        second += weight * z * z
      }
      const cut = cutNormal(least, most)
      expect(cut.mass).toBe(normalBetween(least, most))
      expect(Math.abs(cut.mean - first / mass)).toBeLessThan(1e-6)
      expect(Math.abs(cut.variance - (second / mass - (first / mass) ** 2))).toBeLessThan(1e-6)
    }
    expect(cutNormal(40, 41)).toMatchObject({ mass: 0, mean: 0, variance: 1 })
  })
})
