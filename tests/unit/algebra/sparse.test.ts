import fc from 'fast-check'
import { createSparse } from 'ringproof/algebra/sparse'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { type Cell, filled, refill, solved } from './sparse-rows.ts'

const kinds = [false, true] as const

describe('a system of order 0', () => {
  it.each(kinds)('has nothing to solve (complex: %s)', (complex) => {
    const engine = createSparse({ order: 0, rows: [], columns: [] }, complex)
    expect(engine.factor()).toEqual({ ok: true, growth: 1 })
    expect(engine.refactor()).toEqual({ ok: true, growth: 1 })
    engine.solve(new Float64Array(0), 1)
    expect(engine.residual(new Float64Array(0), new Float64Array(0))).toBe(0)
  })
})

describe('a system of order 1', () => {
  it.each(kinds)('is a division (complex: %s)', (complex) => {
    const engine = filled([[4]], complex)
    expect(engine.factor().ok).toBe(true)
    expect(solved(engine, [10])).toEqual([2.5])
    expect(solved(engine, [10], 'solveTransposed')).toEqual([2.5])
  })

  it('overflows nowhere below the largest doubles', () => {
    for (const scale of [1e200, 1e-200])
      for (const [re, im] of [
        [3, 4],
        [4, -3],
      ] as const) {
        const engine = filled([[[re * scale, im * scale]]], true)
        expect(engine.factor().ok).toBe(true)
        const x = new Float64Array([25 * scale, 0])
        engine.solve(x, 1)
        expect(Math.hypot((x[0] ?? 0) - re, (x[1] ?? 0) + im)).toBeLessThan(1e-14)
      }
  })
})

describe('pivots', () => {
  it.each(kinds)('keep what elimination in the given order would lose (complex: %s)', (complex) => {
    // 1e-20 x + y = 1, x + y = 2: without exchange x = 0; Forsythe and Moler, chapter 9 (from memory)
    const engine = filled(
      [
        [1e-20, 1],
        [1, 1],
      ],
      complex,
    )
    engine.factor()
    expect(solved(engine, [1, 2])).toEqual([1, 1])
  })

  it('stay on the diagonal above a tenth of their column, and leave it below', () => {
    // kept on the diagonal, U(1,1) = 1 - 5 · 5; exchanged, U(1,1) = 5 - 0.05
    for (const [diagonal, last] of [
      [0.2, 24],
      [0.05, 4.95],
    ] as const) {
      const engine = filled([
        [diagonal, 5],
        [1, 1],
      ])
      const outcome = engine.factor()
      expect(outcome.ok && outcome.growth).toBeCloseTo(last / 5, 10)
    }
  })

  it('that are weak are judged by the rounding that met in them, not by their size', () => {
    // after column 0, column 1 is left with 0.3 - 3 · 0.1 = -5.6e-17 in row 1 and with an honest 1e-17 in row 2
    for (const complex of kinds) {
      const engine = filled(
        [
          [1, 0.1, 0],
          [3, 0.3, 1],
          [0, 1e-17, 0],
        ],
        complex,
      )
      expect(engine.factor().ok).toBe(true)
      expect(Math.abs((solved(engine, [0, 0, 1e-17])[1] ?? 0) - 1)).toBeLessThan(1e-14)
      expect(engine.refactor().ok).toBe(true)
      expect(Math.abs((solved(engine, [0, 0, 1e-17])[1] ?? 0) - 1)).toBeLessThan(1e-14)
    }
  })

  it.each([1e-13, 1e-15, 1e-30, 1e-200])('of %d beside an ideal link are kept for what they are', (g) => {
    // node 0 joined to node 1 by an ideal link with current i
    for (const complex of kinds) {
      const rows = [
        [g, 0, 1],
        [0, 0, -1],
        [1, -1, 0],
      ]
      const engine = filled(rows, complex)
      expect(engine.factor().ok).toBe(true)
      expect(Math.abs((solved(engine, [3 * g, 0, 0])[0] ?? 0) - 3)).toBeLessThan(1e-14)
      refill(engine, rows)
      expect(engine.refactor().ok).toBe(true)
      expect(Math.abs((solved(engine, [3 * g, 0, 0])[0] ?? 0) - 3)).toBeLessThan(1e-14)
    }
  })
})

describe('a singular system', () => {
  it.each(kinds)('that floats names its last column, whatever its rounded sums (complex: %s)', (complex) => {
    const networks = fc
      .integer({ min: 2, max: 9 })
      .chain((n) =>
        fc.tuple(
          fc.constant(n),
          fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: n * n, maxLength: n * n }),
        ),
      )
    fc.assert(
      fc.property(networks, ([n, exponents]) => {
        // every pair of nodes joined by 0.3 … 3: rows and columns sum to zero but for rounding
        const rows = Array.from({ length: n }, () => new Array<number>(n).fill(0))
        const add = (a: number, b: number, g: number): void => {
          const row = rows[a] ?? []
          row[b] = (row[b] ?? 0) + g
        }
        for (let i = 0; i < n; i++) {
          for (let j = i + 1; j < n; j++) {
            const g = 10 ** (exponents[i * n + j] ?? 0)
            add(i, i, g)
            add(j, j, g)
            add(i, j, -g)
            add(j, i, -g)
          }
        }
        const engine = filled(rows, complex)
        expect(engine.factor()).toEqual({ ok: false, column: n - 1 })
        // the least conductance to earth makes it solvable, if the sums can hold it
        add(n - 1, n - 1, (rows[n - 1]?.[n - 1] ?? 0) * 1e-3)
        refill(engine, rows)
        expect(engine.factor().ok).toBe(true)
      }),
      { seed: SEED },
    )
  })

  it.each(kinds)('names the first column that is a sum of others before it (complex: %s)', (complex) => {
    const problems = fc
      .integer({ min: 3, max: 12 })
      .chain((n) =>
        fc.tuple(
          fc.constant(n),
          fc.array(fc.constantFrom(0, 0, 0, 1, 2, -3), { minLength: n * n, maxLength: n * n }),
          fc.tuple(fc.nat(n - 1), fc.nat(n - 1), fc.integer({ min: 2, max: n - 1 })),
        ),
      )
    fc.assert(
      fc.property(problems, ([n, values, [p, q, last]]) => {
        // a strong diagonal keeps all other columns apart
        const rows = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (_, j): number => (i === j ? 50 : (values[i * n + j] ?? 0))),
        )
        for (const row of rows) row[last] = (row[p % last] ?? 0) + 2 * (row[q % last] ?? 0)
        expect(filled(rows, complex).factor()).toEqual({ ok: false, column: last })
      }),
      { seed: SEED },
    )
  })

  it('names its first dependent column where the pattern alone forbids a solution', () => {
    // columns 1 and 3 have entries in row 2 only
    const engine = createSparse({ order: 4, rows: [0, 1, 2, 2, 3, 3], columns: [0, 2, 1, 3, 0, 2] }, false)
    for (let k = 0; k < 6; k++) engine.add(engine.slots[k] ?? -1, k + 1, 0)
    expect(engine.factor()).toEqual({ ok: false, column: 3 })
  })

  it('names one of the columns that depend on each other where the first is too dear to find', () => {
    // a hub that comes first fills in everything in the own order of the columns, and nothing in another
    const n = 600
    const entries = [...Array(n).keys()].flatMap(
      (k) =>
        [
          [k, k],
          [0, k],
          [k, 0],
        ] as const,
    )
    const engine = createSparse(
      { order: n, rows: entries.map(([i]) => i), columns: entries.map(([, j]) => j) },
      false,
    )
    // the last three columns have the row of the hub alone
    entries.forEach(([i, j], k) => {
      if (i !== j || (i > 0 && i < n - 3)) engine.add(engine.slots[k] ?? -1, 1, 0)
    })
    const outcome = engine.factor()
    expect(outcome.ok).toBe(false)
    expect([n - 3, n - 2, n - 1]).toContain(outcome.ok ? -1 : outcome.column)
  })

  it('stays refused, and forgets it with good values', () => {
    const engine = filled([
      [1, 2],
      [2, 4],
    ])
    expect(() => engine.solve(new Float64Array(2), 1)).toThrow('without factors')
    expect(engine.factor()).toEqual({ ok: false, column: 1 })
    expect(() => engine.solve(new Float64Array(2), 1)).toThrow('without factors')
    refill(engine, [
      [1, 2],
      [2, 5],
    ])
    expect(engine.refactor().ok).toBe(true)
    expect(solved(engine, [3, 7])).toEqual([1, 1])
    engine.clear()
    expect(() => engine.solveTransposed(new Float64Array(2), 1)).toThrow('without factors')
  })
})

describe('a refusal at the door', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'meets %d among the values',
    (bad) => {
      for (const complex of kinds) {
        const cells: Cell[] = complex ? [bad, [0, bad]] : [bad]
        for (const cell of cells) {
          for (const rows of [
            [
              [1, 0],
              [cell, 1],
            ],
            [
              [cell, 0],
              [2, 1],
            ],
          ]) {
            const engine = filled(rows, complex)
            expect(() => engine.factor()).toThrow(RangeError)
            refill(engine, [
              [1, 1],
              [1, 3],
            ])
            engine.factor()
            refill(engine, rows)
            expect(() => engine.refactor()).toThrow(RangeError)
            expect(() => engine.solve(new Float64Array(4), 1)).toThrow('without factors')
          }
        }
      }
    },
  )

  it('meets right sides that are too short', () => {
    const engine = filled([
      [1, 0],
      [0, 1],
    ])
    engine.factor()
    expect(() => engine.solve(new Float64Array(3), 2)).toThrow(RangeError)
  })

  it('meets an entry outside the order', () => {
    expect(() => createSparse({ order: 2, rows: [2], columns: [0] }, false)).toThrow(RangeError)
  })
})

describe('the residual', () => {
  it('of what is no number is bad, wherever it stands', () => {
    for (const complex of kinds) {
      const engine = filled(
        [
          [1, 0],
          [0, 1],
        ],
        complex,
      )
      engine.factor()
      for (const at of [0, 1]) {
        const x = new Float64Array(complex ? 4 : 2).fill(1)
        const b = x.slice()
        x[complex ? 2 * at : at] = Number.NaN
        expect(engine.residual(x, b)).toBe(Number.POSITIVE_INFINITY)
      }
    }
  })
})
