import { describe, expect, it } from 'vitest'
import { type Cell, filled, refill, solved } from './sparse-rows.ts'

const kinds = [false, true] as const

describe('refactoring', () => {
  it('chooses pivots itself where none were chosen', () => {
    const engine = filled([
      [0, 1],
      [1, 0],
    ])
    expect(engine.refactor()).toEqual({ ok: true, growth: 1 })
    expect(solved(engine, [1, 2])).toEqual([2, 1])
  })

  it.each(kinds)('keeps pivots while they serve, and says how much grew (complex: %s)', (complex) => {
    const engine = filled(
      [
        [4, 1],
        [1, 4],
      ],
      complex,
    )
    engine.factor()
    // a fresh choice would leave the diagonal; kept pivots make U(1,1) = 1 - 1 / 0.02 = -49
    refill(engine, [
      [0.02, 1],
      [1, 1],
    ])
    const outcome = engine.refactor()
    expect(outcome.ok && outcome.growth).toBeCloseTo(49, 10)
    expect(engine.factor()).toEqual({ ok: true, growth: 1 })
  })

  it.each(kinds)('chooses fresh pivots where a kept one is far too small (complex: %s)', (complex) => {
    const engine = filled(
      [
        [4, 1],
        [1, 4],
      ],
      complex,
    )
    engine.factor()
    for (const small of [1e-4, 1e-11, 1e-20, 0]) {
      refill(engine, [
        [4, 1],
        [1, 4],
      ])
      engine.factor()
      refill(engine, [
        [small, 1],
        [1, 1],
      ])
      expect(engine.refactor()).toEqual({ ok: true, growth: 1 })
      expect(solved(engine, [1, 1 + (1 - small)])[0]).toBeCloseTo(1, 14)
    }
  })

  it.each(kinds)('chooses fresh pivots where small steps grow too far together (complex: %s)', (complex) => {
    // ones below the diagonal and in the last column: 2^(n-1) with 1 on the diagonal (J. H. Wilkinson's example; Golub
    // and Van Loan, Matrix Computations, section 3.4, from memory), about 500^(n-1) with 0.002
    const rows = (diagonal: number, beside: number): number[][] =>
      [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (j === 3 || j < i ? 1 : i === j ? diagonal : beside)))
    const engine = filled(rows(4, 0.5), complex)
    engine.factor()
    refill(engine, rows(0.002, 0))
    const outcome = engine.refactor()
    expect(outcome.ok && outcome.growth).toBeLessThan(10)
    expect(outcome).toEqual(engine.factor())
  })

  it('refuses where fresh pivots do not help', () => {
    const engine = filled([
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ])
    engine.factor()
    // kept pivot (0,0) is gone, but column 0 is not empty; column 2 equals column 0
    refill(engine, [
      [0, 1, 0],
      [1, 0, 1],
      [2, 0, 2],
    ])
    expect(engine.refactor()).toEqual({ ok: false, column: 2 })
  })

  it.each(kinds)(
    'takes no rounding for a pivot where a weak one was sound before (complex: %s)',
    (complex) => {
      const engine = filled(
        [
          [1, 1],
          [0, 1e-15],
        ],
        complex,
      )
      expect(engine.factor().ok).toBe(true)
      // 0.3 - 3 · 0.1 = -5.6e-17 in doubles
      refill(engine, [
        [1, 0.1],
        [3, 0.3],
      ])
      expect(engine.refactor()).toEqual({ ok: false, column: 1 })
    },
  )

  it('hands out one object each time, so that nothing is left to collect', () => {
    const engine = filled([
      [2, 1],
      [1, 3],
    ])
    const fresh = engine.factor()
    const first = engine.refactor()
    expect(engine.refactor()).toBe(first)
    expect(first).not.toBe(fresh)
    expect(first).toEqual(fresh)
  })

  it.each(kinds)('does without a list of operations where it would be too long (complex: %s)', (complex) => {
    // a full matrix of 200 has 2.6 million multiply-adds; its diagonal outweighs its rows
    const n = 200
    const value = (i: number, j: number): number => (i === j ? 2 * n : Math.sin(1 + i * 7 + j * 13))
    const rows = Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (_, j): Cell => [value(i, j), i === j ? 0 : Math.cos(i * 3 + j)]),
    )
    const engine = filled(rows, complex)
    expect(engine.factor().ok).toBe(true)
    const b = Float64Array.from({ length: complex ? 2 * n : n }, (_, k) => Math.cos(k))
    const x = b.slice()
    engine.solve(x, 1)
    expect(engine.residual(x, b)).toBeLessThan(1)
    expect(engine.refactor().ok).toBe(true)
    const y = b.slice()
    engine.solve(y, 1)
    expect(y).toEqual(x)
    // and notices a pivot that is lost
    rows[3] = (rows[4] ?? []).slice()
    refill(engine, rows)
    expect(engine.refactor()).toMatchObject({ ok: false })
  })
})
