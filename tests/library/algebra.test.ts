import fc from 'fast-check'
import { type Complex, complex as complexNumber, inv, lusolve, type Matrix, matrix, transpose } from 'mathjs'
import { createDense } from 'ringproof/algebra/dense'
import { createSparse } from 'ringproof/algebra/sparse'
import type { LinearSystem, Pattern } from 'ringproof/algebra/system'
import { describe, expect, it } from 'vitest'
import { SEED } from '../support/seed.ts'

/** Every engine is compared; a new one is a line here. */
const engines: readonly (readonly [string, (pattern: Pattern, complex: boolean) => LinearSystem])[] = [
  ['dense', createDense],
  ['sparse', createSparse],
]

/** Full random matrices with right sides, n·n + n complex values. */
const problems = fc.integer({ min: 1, max: 9 }).chain((n) => {
  const part = fc
    .double({ min: -10, max: 10, noNaN: true })
    .map((value) => (Math.abs(value) < 1e-6 ? 1 : value))
  return fc.record({
    n: fc.constant(n),
    values: fc.array(fc.tuple(part, part), { minLength: n * n + n, maxLength: n * n + n }),
  })
})

describe.each(engines)('the %s engine beside a general library', (_, create) => {
  it.each([
    ['real', false],
    ['complex', true],
  ] as const)('finds the same %s solutions, plain and transposed', (_kind, complex) => {
    fc.assert(
      fc.property(problems, ({ n, values }) => {
        const rows = values.slice(0, n * n).map((_value, k) => Math.floor(k / n))
        const columns = rows.map((_value, k) => k % n)
        const engine = create({ order: n, rows, columns }, complex)
        engine.clear()
        for (let k = 0; k < n * n; k++)
          engine.add(engine.slots[k] ?? -1, values[k]?.[0] ?? 0, values[k]?.[1] ?? 0)

        const theirs = (k: number): number | Complex => {
          const [re, im] = values[k] ?? [0, 0]
          return complex ? complexNumber(re, im) : re
        }
        const a = matrix(
          Array.from({ length: n }, (_r, i) =>
            Array.from({ length: n }, (_c, j) => theirs(i * n + j)),
          ) as number[][],
        )
        const b = Array.from({ length: n }, (_r, i) => theirs(n * n + i)) as number[]
        const condition = conditionOf(a, n)
        if (!(condition < 1e10)) return // NaN where the library finds no inverse
        expect(engine.factor().ok).toBe(true)
        for (const [way, of] of [
          ['solve', a],
          ['solveTransposed', transpose(a)],
        ] as const) {
          const x = Float64Array.from(values.slice(n * n).flatMap(([re, im]) => (complex ? [re, im] : [re])))
          engine[way](x, 1)
          const y = flat(lusolve(of, b) as Matrix, complex)
          const size = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
          const apart = y.reduce(
            (most, value, k) => Math.max(most, Math.abs(value - (x[k] ?? Number.NaN))),
            0,
          )
          // both solve a system within 10 n ε ‖A‖ of the given one: forward errors of κ times that each
          expect(apart / size).toBeLessThanOrEqual(20 * n * Number.EPSILON * condition)
        }
      }),
      { seed: SEED, numRuns: 100 },
    )
  })
})

/** The larger of κ∞ and κ₁, so that it serves the transposed system too; NaN where the library's inverse is none. */
function conditionOf(a: Matrix, n: number): number {
  if (n === 1) return 1
  try {
    const inverse = inv(a)
    const turned = rowNorm(transpose(a)) * rowNorm(transpose(inverse))
    return Math.max(rowNorm(a) * rowNorm(inverse), turned)
  } catch {
    return Number.NaN
  }
}

/** ‖A‖∞; the library's own norm skips what is not finite. */
function rowNorm(a: Matrix): number {
  const rows = a.toArray() as (number | Complex)[][]
  return Math.max(
    ...rows.map((row) => row.reduce<number>((sum, value) => sum + Math.hypot(...parts(value)), 0)),
  )
}

function parts(value: number | Complex): readonly [number, number] {
  return typeof value === 'number' ? [value, 0] : [value.re, value.im]
}

function flat(x: Matrix, complex: boolean): number[] {
  const values = (x.toArray() as (number | Complex)[][]).map(([value = 0]) => value)
  return values.flatMap((value) =>
    typeof value === 'number' ? (complex ? [value, 0] : [value]) : [value.re, value.im],
  )
}
