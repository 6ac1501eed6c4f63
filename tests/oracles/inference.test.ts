/** What is believed and what is worth asking, against textbook examples that were worked by hand. */
import { believe } from 'ringproof/inference/belief'
import { expectedInformation, uncertainty, worthOf } from 'ringproof/inference/information'
import { normalBelow, normalBelowRoughly, normalBetween } from 'ringproof/inference/normal'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../support/hypotheses.ts'

/** Rounding of a few sums and logarithms. */
const EXACT = 1e-12

const YES_NO = [0.5]

describe('Bayes’ rule', () => {
  // Source: the question put to physicians by Casscells, Schoenberger and Graboys, Interpretation by physicians of
  // clinical laboratory results (1978): one in a thousand is ill, 5 % of the healthy test positive; here 5 % of the
  // ill test negative as well. By fractions: 95 / (95 + 999·5) = 95 / 5090. Numbers of the question from memory.
  test('a positive test of a rare illness makes it likely only by a fiftieth', () => {
    const among = hypotheses([1 / 1000, 999 / 1000], [asked({ cuts: YES_NO, slip: 0.05 })], [[1], [0]])
    const { of } = believe(among, [{ observable: 0, answer: 1 }])
    expect(Math.abs((of[0] ?? 0) - 95 / 5090)).toBeLessThan(EXACT)
    expect(Math.abs((of[1] ?? 0) - 4995 / 5090)).toBeLessThan(EXACT)
  })

  // Source: closed form. Two urns, three of four balls white in one, one of four in the other; drawn with replacement.
  // Two white and one black: (3/4)² (1/4) against (1/4)² (3/4), so 3 to 1.
  test('three draws from one of two urns', () => {
    const draw = asked({ cuts: YES_NO, slip: 1 / 4 })
    const among = hypotheses(
      [1 / 2, 1 / 2],
      [draw, draw, draw],
      [
        [1, 1, 1],
        [0, 0, 0],
      ],
    )
    const drawn = [1, 1, 0].map((answer, observable) => ({ observable, answer }))
    expect(Math.abs((believe(among, drawn).of[0] ?? 0) - 3 / 4)).toBeLessThan(EXACT)
  })

  // Source: closed form, the ratio of two normal densities of equal width is exp((d₂² - d₁²) / 2σ²).
  test('a number between two expected ones', () => {
    const reading = asked({ scale: 1e6, error: () => 2 })
    const among = hypotheses([1 / 2, 1 / 2], [reading], [[100], [106]])
    const { of } = believe(among, [{ observable: 0, x: 102 }])
    const ratio = Math.exp((4 ** 2 - 2 ** 2) / (2 * 2 ** 2))
    // the scale is straight to (106 / 1e6)², that much of an exponent of some units
    expect(Math.abs((of[0] ?? 0) / (of[1] ?? 1) / ratio - 1)).toBeLessThan(1e-6)
  })
})

describe('information', () => {
  // Source: Cover and Thomas, Elements of Information Theory, 2nd ed., section 7.1.4: the capacity of the binary
  // symmetric channel is 1 - H(p), reached by equal inputs.
  test.each([0, 0.01, 0.11, 0.25, 0.5])('of an answer that is wrong with probability %f', (p) => {
    const among = hypotheses([0.5, 0.5], [asked({ cuts: YES_NO, slip: p })], [[0], [1]])
    const h = p === 0 ? 0 : -p * Math.log2(p) - (1 - p) * Math.log2(1 - p)
    const bits = expectedInformation(among, worthOf(believe(among, [])), 0)
    expect(Math.abs(bits - (1 - h))).toBeLessThan(EXACT)
  })

  // Source: Cover and Thomas, 2nd ed., problem 2.7 (coin weighing): a weighing has three outcomes, so at most log₂ 3.
  test('of a weighing: twelve coins, one of them lighter or heavier, four against four', () => {
    const weighing =
      (left: readonly number[], right: readonly number[]) => (coin: number, heavier: boolean) => {
        const side = left.includes(coin) ? -1 : right.includes(coin) ? 1 : 0
        return heavier ? side : -side
      }
    const balance = asked({ cuts: [-0.5, 0.5] })
    const four = weighing([0, 1, 2, 3], [4, 5, 6, 7])
    const six = weighing([0, 1, 2, 3, 4, 5], [6, 7, 8, 9, 10, 11])
    const rows = Array.from({ length: 24 }, (_, k) => {
      const [coin, heavier] = [k >> 1, k % 2 === 0] as const
      return [four(coin, heavier), six(coin, heavier)]
    })
    const among = hypotheses(new Array<number>(24).fill(1 / 24), [balance, balance], rows)
    const worth = worthOf(believe(among, []))
    expect(Math.abs(expectedInformation(among, worth, 0) - Math.log2(3))).toBeLessThan(EXACT)
    expect(Math.abs(expectedInformation(among, worth, 1) - 1)).toBeLessThan(EXACT)
    const after = worthOf(believe(among, [{ observable: 0, answer: 1 }]))
    expect(Math.abs(uncertainty(after) - Math.log2(8))).toBeLessThan(EXACT)
  })

  // Source: the mutual information of an equal binary input ±1 in Gaussian noise, Cover and Thomas, 2nd ed., section
  // 9.1 (definition), by Simpson's rule here. Cells of one standard deviation lose some of it and add none.
  test.each([0.4, 1, 2])('of a number in noise of %f', (sigma) => {
    const reading = asked({ scale: 1e6, error: () => sigma })
    const among = hypotheses([0.5, 0.5], [reading], [[-1], [1]])
    const density = (y: number) => Math.exp(-0.5 * (y / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI))
    const term = (y: number) =>
      density(y - 1) * Math.log2((2 * density(y - 1)) / (density(y - 1) + density(y + 1)))
    const [n, most] = [2000, 12 * sigma]
    let sum = 0
    for (let k = 0; k <= n; k++)
      sum += term(1 - most + (2 * most * k) / n) * (k % n === 0 ? 1 : k % 2 === 0 ? 2 : 4)
    const whole = (sum * 2 * most) / n / 3
    const bits = expectedInformation(among, worthOf(believe(among, [])), 0)
    expect(bits).toBeLessThan(whole + 1e-6)
    expect(bits).toBeGreaterThan(0.88 * whole)
  })
})

describe('the normal distribution', () => {
  // Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (P(x)); from memory.
  const TABLE = [
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [1.5, 0.933192798731142],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
  ] as const
  test.each(TABLE)('lies below %f with its tabled probability', (z, p) => {
    expect(Math.abs(normalBelow(z) - p)).toBeLessThan(1e-14)
    expect(Math.abs(normalBelow(-z) - (1 - p))).toBeLessThan(1e-14)
    expect(Math.abs(normalBelowRoughly(z) - p)).toBeLessThan(7.5e-8)
    expect(Math.abs(normalBelowRoughly(-z) - (1 - p))).toBeLessThan(7.5e-8)
  })

  // Source: the same, table 26.2: -log₁₀ Q(5) = 6.54265, -log₁₀ Q(10) = 23.11805; from memory.
  test('keeps its digits far out', () => {
    expect(Math.abs(-Math.log10(normalBelow(-5)) - 6.54265)).toBeLessThan(5e-6)
    expect(Math.abs(-Math.log10(normalBetween(10, Number.POSITIVE_INFINITY)) - 23.11805)).toBeLessThan(5e-6)
    expect(normalBelow(-50)).toBe(0)
    expect(normalBelow(Number.NaN)).toBeNaN()
    expect(normalBetween(1, 1)).toBe(0)
  })
})
