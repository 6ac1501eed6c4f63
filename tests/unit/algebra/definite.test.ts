import fc from 'fast-check'
import { leastEigenvalue } from 'ringproof/algebra/definite'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

function least(rows: readonly (readonly number[])[]): number {
  return leastEigenvalue(Float64Array.from(rows.flat()), rows.length)
}

describe('the least eigenvalue', () => {
  it('of a pair of windings is 1 - |k|', () => {
    // det of [[1 - λ, k], [k, 1 - λ]] is (1 - λ)² - k²
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (k) => {
        expect(
          Math.abs(
            least([
              [1, k],
              [k, 1],
            ]) -
              (1 - Math.abs(k)),
          ),
        ).toBeLessThan(4 * Number.EPSILON)
      }),
      { seed: SEED },
    )
  })

  it('of n windings coupled alike is 1 - k, or 1 + (n - 1) k where k is negative', () => {
    // k on the sum vector's complement: the matrix is (1 - k) I + k 1 1ᵀ
    for (let n = 2; n <= 16; n++) {
      for (const k of [0.985, 0.5, -1 / n]) {
        const rows = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (_, j) => (i === j ? 1 : k)),
        )
        const expected = k > 0 ? 1 - k : 1 + (n - 1) * k
        expect(Math.abs(least(rows) - expected)).toBeLessThan(4 * n * n * Number.EPSILON)
      }
    }
  })

  it('of the second difference matrix of order n is 2 - 2 cos(π / (n + 1))', () => {
    // tridiagonal (-1, 2, -1): Golub and Van Loan, Matrix Computations, section 4.8 (from memory)
    for (let n = 1; n <= 16; n++) {
      const rows = Array.from({ length: n }, (_, i) =>
        Array.from({ length: n }, (_, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
      )
      expect(Math.abs(least(rows) - (2 - 2 * Math.cos(Math.PI / (n + 1))))).toBeLessThan(
        16 * n * Number.EPSILON,
      )
    }
  })

  it('is negative where three couplings contradict each other', () => {
    // det [[1, .9, .9], [.9, 1, -.9], [.9, -.9, 1]]: eigenvalues 1.9, 1.9, -0.8
    expect(
      Math.abs(
        least([
          [1, 0.9, 0.9],
          [0.9, 1, -0.9],
          [0.9, -0.9, 1],
        ]) + 0.8,
      ),
    ).toBeLessThan(1e-14)
  })

  it('moves by c where c is added to the diagonal, and scales with the matrix', () => {
    const values = fc.integer({ min: 1, max: 8 }).chain((n) =>
      fc.array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n, maxLength: n }), {
        minLength: n,
        maxLength: n,
      }),
    )
    fc.assert(
      fc.property(values, fc.double({ min: -3, max: 3, noNaN: true }), (upper, c) => {
        const rows = upper.map((row, i) => row.map((value, j) => (i <= j ? value : (upper[j]?.[i] ?? 0))))
        const own = least(rows)
        const shifted = least(rows.map((row, i) => row.map((value, j) => (i === j ? value + c : value))))
        expect(Math.abs(shifted - own - c)).toBeLessThan(1e-13)
        // no eigenvalue is above the least diagonal entry (Rayleigh), and all sum up to the trace
        expect(own).toBeLessThanOrEqual(Math.min(...rows.map((row, i) => row[i] ?? 0)) + 1e-13)
        expect(Math.abs(least(rows.map((row) => row.map((value) => 4 * value))) - 4 * own)).toBeLessThan(
          1e-13,
        )
      }),
      { seed: SEED },
    )
  })

  it('does not change the matrix, nor read its lower triangle', () => {
    const values = new Float64Array([1, 0.5, 9, 1])
    expect(leastEigenvalue(values, 2)).toBe(0.5)
    expect([...values]).toEqual([1, 0.5, 9, 1])
  })

  it('is refused for what is no such matrix', () => {
    expect(() => leastEigenvalue(new Float64Array(0), 0)).toThrow(RangeError)
    expect(() => leastEigenvalue(new Float64Array(289), 17)).toThrow(RangeError)
    expect(() => leastEigenvalue(new Float64Array(3), 2)).toThrow(RangeError)
    expect(() => leastEigenvalue(new Float64Array([1, Number.NaN, 0, 1]), 2)).toThrow(RangeError)
  })
})
