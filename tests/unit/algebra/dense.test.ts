import fc from 'fast-check'
import { createDense } from 'ringproof/algebra/dense'
import type { LinearSystem } from 'ringproof/algebra/system'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

type Cell = number | readonly [number, number]

/** A full dense engine filled with these rows; a pair is re, im. */
function filled(rows: readonly (readonly Cell[])[], complex = false): LinearSystem {
  const n = rows.length
  const places = [...Array(n * n).keys()]
  const engine = createDense(
    { order: n, rows: places.map((k) => Math.floor(k / n)), columns: places.map((k) => k % n) },
    complex,
  )
  refill(engine, rows)
  return engine
}

function refill(engine: LinearSystem, rows: readonly (readonly Cell[])[]): void {
  engine.clear()
  rows.flat().forEach((cell, k) => {
    const [re, im] = typeof cell === 'number' ? [cell, 0] : (cell as readonly [number, number])
    engine.add(engine.slots[k] ?? -1, re, im)
  })
}

function solved(engine: LinearSystem, b: readonly number[]): number[] {
  const x = Float64Array.from(b)
  engine.solve(x, 1)
  return [...x]
}

/** Ones on the diagonal and in the last column, -1 below. */
function wilkinson(n: number): number[][] {
  return Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => (i === j || j === n - 1 ? 1 : i > j ? -1 : 0)),
  )
}

describe('the growth', () => {
  it.each([false, true])(
    'reaches 2^(n-1) for the matrix that shows the worst of partial pivoting (complex: %s)',
    (complex) => {
      // J. H. Wilkinson's example; Golub and Van Loan, Matrix Computations, section 3.4 (from memory)
      expect(filled(wilkinson(10), complex).factor()).toEqual({ ok: true, growth: 512 })
    },
  )

  it('is 1 for a system of order 0, which has nothing to solve', () => {
    const engine = createDense({ order: 0, rows: [], columns: [] }, false)
    expect(engine.factor()).toEqual({ ok: true, growth: 1 })
    engine.solve(new Float64Array(0), 1)
    expect(engine.residual(new Float64Array(0), new Float64Array(0))).toBe(0)
  })

  it('is large where a kept order no longer fits', () => {
    const engine = filled([
      [1, 1],
      [1e-3, 1],
    ])
    engine.factor()
    refill(engine, [
      [1e-9, 1],
      [1, 1],
    ])
    expect(engine.refactor()).toMatchObject({ ok: true, growth: expect.closeTo(1e9, -2) })
    expect(engine.factor()).toMatchObject({ ok: true, growth: 1 })
  })
})

describe('pivoting', () => {
  it.each([false, true])('keeps what elimination in the given order would lose (complex: %s)', (complex) => {
    // 1e-20 x + y = 1, x + y = 2: without exchange x = 0; Forsythe and Moler, chapter 9 (from memory)
    const engine = filled(
      [
        [1e-20, 1],
        [1, 1],
      ],
      complex,
    )
    engine.factor()
    const x = solved(engine, complex ? [1, 0, 2, 0] : [1, 2])
    expect(complex ? [x[0], x[2]] : x).toEqual([1, 1])
  })

  it('inverts Hilbert matrices as well as their condition allows', () => {
    // the inverse has integer entries; its first column for n = 5: 25 -300 1050 -1400 630 (from memory)
    const engine = filled(
      Array.from({ length: 5 }, (_, i) => Array.from({ length: 5 }, (_, j) => 1 / (i + j + 1))),
    )
    engine.factor()
    const expected = [25, -300, 1050, -1400, 630]
    // κ = 4.8e5, and 1/(i + j + 1) is itself rounded
    solved(engine, [1, 0, 0, 0, 0]).forEach((value, k) => {
      expect(Math.abs(value / (expected[k] ?? 0) - 1)).toBeLessThan(5 * 4.8e5 * Number.EPSILON)
    })
  })
})

describe('singular or only small', () => {
  it.each([false, true])(
    'a floating network is singular in its last column, whatever its rounded sums (complex: %s)',
    (complex) => {
      const network = fc
        .integer({ min: 2, max: 9 })
        .chain((n) =>
          fc.tuple(
            fc.constant(n),
            fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: n * n, maxLength: n * n }),
          ),
        )
      fc.assert(
        fc.property(network, ([n, exponents]) => {
          // every pair of nodes joined by 0.3 … 3: rows and columns sum to zero but for rounding
          const rows = Array.from({ length: n }, () => Array<number>(n).fill(0))
          for (let i = 0; i < n; i++) {
            for (let j = i + 1; j < n; j++) {
              const g = 10 ** (exponents[i * n + j] ?? 0)
              for (const [a, b, sign] of [
                [i, i, 1],
                [j, j, 1],
                [i, j, -1],
                [j, i, -1],
              ] as const) {
                const row = rows[a] ?? []
                row[b] = (row[b] ?? 0) + sign * g
              }
            }
          }
          expect(filled(rows, complex).factor()).toEqual({ ok: false, column: n - 1 })
          // the least conductance to earth makes it solvable, if the sums can hold it
          const last = rows[n - 1] ?? []
          last[n - 1] = (last[n - 1] ?? 0) * 1.001
          expect(filled(rows, complex).factor().ok).toBe(true)
        }),
        { seed: SEED },
      )
    },
  )

  it.each([1e-15, 1e-30, 1e-200])('a conductance of %d that meets nothing larger is a conductance', (g) => {
    // node 0 joined to node 1 by an ideal link with current i
    for (const complex of [false, true]) {
      const engine = filled(
        [
          [g, 0, 1],
          [0, 0, -1],
          [1, -1, 0],
        ],
        complex,
      )
      expect(engine.factor().ok).toBe(true)
      const x = solved(engine, complex ? [3 * g, 0, 0, 0, 0, 0] : [3 * g, 0, 0])
      expect(Math.abs((x[0] ?? 0) - 3)).toBeLessThan(1e-14)
    }
  })

  it.each([false, true])(
    'the row that stands out of its rounding is the pivot, not the largest remnant (complex: %s)',
    (complex) => {
      // after column 0, column 1 is left with 0.3 - 3 · 0.1 = -5.6e-17 in row 1 and with an honest 1e-17 in row 2
      const engine = filled(
        [
          [1, 0.1, 0],
          [3, 0.3, 1],
          [0, 1e-17, 0],
        ],
        complex,
      )
      const outcome = engine.factor()
      expect(outcome.ok).toBe(true)
      const x = solved(engine, complex ? [0, 0, 0, 0, 1e-17, 0] : [0, 0, 1e-17])
      expect(Math.abs((x[complex ? 2 : 1] ?? 0) - 1)).toBeLessThan(1e-14)
    },
  )

  it('columns are judged on their own scale', () => {
    const engine = filled([
      [1e9, 0],
      [0, 1e-9],
    ])
    expect(engine.factor().ok).toBe(true)
    expect(solved(engine, [1e9, 1e-9])).toEqual([1, 1])
  })
})

describe('a refusal at the door', () => {
  it('meets entries outside the order', () => {
    for (const [row, column] of [
      [2, 0],
      [0, 2],
      [-1, 0],
      [0, Number.NaN],
    ] as const) {
      expect(() => createDense({ order: 2, rows: [row], columns: [column] }, false)).toThrow(RangeError)
    }
    expect(() => createDense({ order: 2, rows: [0, 1], columns: [0] }, false)).toThrow(RangeError)
    expect(() => createDense({ order: -1, rows: [], columns: [] }, false)).toThrow(RangeError)
    expect(() => createDense({ order: 1.5, rows: [], columns: [] }, false)).toThrow(RangeError)
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('meets %d among the values', (value) => {
    expect(() =>
      filled([
        [1, 0],
        [value, 1],
      ]).factor(),
    ).toThrow(RangeError)
    expect(() =>
      filled(
        [
          [1, 0],
          [[0, value], 1],
        ],
        true,
      ).factor(),
    ).toThrow(RangeError)
  })

  it('meets solving without factors', () => {
    const engine = filled([
      [1, 2],
      [2, 4],
    ])
    expect(() => engine.solve(new Float64Array(2), 1)).toThrow('without factors')
    expect(engine.factor()).toEqual({ ok: false, column: 1 })
    expect(() => engine.solveTransposed(new Float64Array(2), 1)).toThrow('without factors')
    refill(engine, [
      [1, 2],
      [2, 5],
    ])
    engine.factor()
    expect(solved(engine, [3, 7])).toEqual([1, 1])
    engine.clear()
    expect(() => engine.solve(new Float64Array(2), 1)).toThrow('without factors')
  })

  it('meets right sides that are too short', () => {
    const engine = filled([
      [1, 0],
      [0, 1],
    ])
    engine.factor()
    expect(() => engine.solve(new Float64Array(3), 2)).toThrow(RangeError)
  })
})

describe('refactoring', () => {
  it('orders the rows itself where no order was kept', () => {
    const engine = filled([
      [0, 1],
      [1, 0],
    ])
    expect(engine.refactor()).toEqual({ ok: true, growth: 1 })
    expect(solved(engine, [1, 2])).toEqual([2, 1])
  })

  it('keeps the row order while it serves', () => {
    const engine = filled([
      [4, 1],
      [1, 3],
    ])
    engine.factor()
    // a fresh choice would exchange the rows; the kept order does not, so U(0,0) stays 1
    refill(engine, [
      [1, 0],
      [2, 1],
    ])
    expect(engine.refactor()).toEqual({ ok: true, growth: 0.5 })
    expect(solved(engine, [1, 3])).toEqual([1, 1])
    expect(engine.factor()).toEqual({ ok: true, growth: 1 })
  })

  it('names a dependent column truly even where a kept pivot vanishes first', () => {
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
})

describe('complex division', () => {
  it('overflows nowhere below the largest doubles', () => {
    for (const scale of [1e200, 1e-200]) {
      const engine = filled([[[3 * scale, 4 * scale]]], true)
      expect(engine.factor().ok).toBe(true)
      const [re = 0, im = 0] = solved(engine, [25 * scale, 0])
      expect(Math.hypot(re - 3, im + 4)).toBeLessThan(1e-14)
    }
  })
})
