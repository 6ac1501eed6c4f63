import fc from 'fast-check'
import type { LinearSystem, Pattern } from 'ringproof/algebra/system'
import { describe, expect, it } from 'vitest'
import { SEED } from '../support/seed.ts'
import { norm, ownResidual, rowNorm, vectorOf } from './_residual.ts'
import { singular } from './_singular.ts'
import {
  apply,
  entriesOf,
  fill,
  largestApart,
  made,
  randomSystem,
  type System,
  sizeOf,
  transposed,
} from './_systems.ts'

/** What a suite needs to know of an engine beyond the contract; every exception has its reason. */
export interface EngineTraits {
  /** Why this engine may name another column of the dependent group than the first. */
  readonly namesAnyColumnBecause?: string
}

/** Rounding allowed in a residual, in units of n ε ‖A‖ ‖x‖: "about 1 when healthy". */
const healthy = 10

/** The contract of every linear engine, as tests of one implementation. */
export function engineContract(
  name: string,
  create: (pattern: Pattern, complex: boolean) => LinearSystem,
  traits: EngineTraits = {},
): void {
  describe.each([
    ['real', false],
    ['complex', true],
  ] as const)(`the ${name} engine, %s`, (_, complex) => {
    const build = (system: System): LinearSystem => {
      const engine = create(system, complex)
      fill(engine, system)
      return engine
    }
    const systems = (least = 1, most = 14) => randomSystem(complex, least, most)
    const check = (property: (system: System, b: Float64Array) => void, numRuns = 200): void => {
      const pair = systems().chain((system) =>
        fc.tuple(fc.constant(system), vectorOf(sizeOf(system, complex))),
      )
      fc.assert(
        fc.property(pair, ([system, b]) => property(system, b)),
        { seed: SEED, numRuns },
      )
    }

    it('keeps its order, its kind and a slot for every entry', () => {
      const engine = create({ order: 3, rows: [0, 1, 2, 0], columns: [0, 1, 2, 2] }, complex)
      expect([engine.order, engine.complex, engine.slots.length]).toEqual([3, complex, 4])
    })

    it('gives back the right side of an identity, with growth 1', () => {
      const engine = build(
        entriesOf(4, [
          [0, 0, 1, 0],
          [1, 1, 1, 0],
          [2, 2, 1, 0],
          [3, 3, 1, 0],
        ]),
      )
      expect(engine.factor()).toEqual({ ok: true, growth: 1 })
      const b = Float64Array.from({ length: complex ? 8 : 4 }, (_, k) => k - 1.5)
      const x = b.slice()
      engine.solve(x, 1)
      expect([...x]).toEqual([...b])
      expect(engine.residual(x, b)).toBe(0)
    })

    it('solves where the diagonal is empty', () => {
      // a cyclic shift: x moves by one place
      const engine = build(
        entriesOf(3, [
          [0, 1, 1, 0],
          [1, 2, 1, 0],
          [2, 0, 1, 0],
        ]),
      )
      expect(engine.factor().ok).toBe(true)
      const x = made(complex, [10, 20, 30])
      engine.solve(x, 1)
      expect([...x]).toEqual([...made(complex, [30, 10, 20])])
    })

    it('solves the equations of a voltage source, whose own row has no diagonal', () => {
      // node 0 held at 10 by a source with current i, 2 to node 1, 3 on to earth: v1 = 10 · 2/(2 + 3) = 4, i = -12
      const engine = build(
        entriesOf(3, [
          [0, 0, 2, 0],
          [0, 1, -2, 0],
          [1, 0, -2, 0],
          [1, 1, 5, 0],
          [0, 2, 1, 0],
          [2, 0, 1, 0],
        ]),
      )
      expect(engine.factor().ok).toBe(true)
      const x = made(complex, [0, 0, 10])
      engine.solve(x, 1)
      expect(largestApart(x, made(complex, [10, 4, -12]))).toBeLessThan(1e-13)
    })

    it('solves random systems to rounding', () => {
      check((system, b) => {
        const engine = build(system)
        const outcome = engine.factor()
        expect(outcome.ok).toBe(true)
        const x = b.slice()
        engine.solve(x, 1)
        expect(ownResidual(system, x, b, complex)).toBeLessThan(healthy)
      })
    })

    it('finds the solution from which the right side was made', () => {
      check((system, x) => {
        const engine = build(system)
        engine.factor()
        const b = apply(system, x, complex)
        engine.solve(b, 1)
        // the diagonal outweighs each row by 1, so ‖A⁻¹‖∞ ≤ 1 and the error is at most the residual, n ε ‖A‖ ‖x‖
        const bound = healthy * 2 * system.order * Number.EPSILON * rowNorm(system, complex) * norm(x)
        expect(largestApart(b, x)).toBeLessThanOrEqual(bound)
      })
    })

    it('solves with the transposed matrix, which is not conjugated', () => {
      check((system, b) => {
        const engine = build(system)
        engine.factor()
        const x = b.slice()
        engine.solveTransposed(x, 1)
        expect(ownResidual(transposed(system), x, b, complex)).toBeLessThan(healthy)
      })
    })

    it('solves many right sides as it solves each, and touches nothing behind them', () => {
      check((system, b) => {
        const engine = build(system)
        engine.factor()
        const n = b.length
        for (const way of ['solve', 'solveTransposed'] as const) {
          const three = new Float64Array(3 * n + 2).fill(7)
          for (let k = 0; k < 3; k++)
            three.set(
              b.map((value) => value * (k + 1) - k),
              k * n,
            )
          const apart = [0, 1, 2].map((k) => three.slice(k * n, (k + 1) * n))
          for (const one of apart) engine[way](one, 1)
          engine[way](three, 3)
          expect([...three]).toEqual([...apart.flatMap((one) => [...one]), 7, 7])
        }
      }, 50)
    })

    it('adds up repeated entries, which share a slot', () => {
      const twice = entriesOf(2, [
        [0, 0, 1.5, 0.25],
        [1, 1, 4, 0],
        [0, 0, 0.5, -0.25],
        [0, 1, 1, 0],
        [0, 1, -1, 0],
      ])
      const engine = build(twice)
      expect(engine.slots[0]).toBe(engine.slots[2])
      expect(engine.slots[3]).toBe(engine.slots[4])
      expect(new Set(engine.slots).size).toBe(3)
      expect(engine.factor().ok).toBe(true)
      const x = made(complex, [2, 8])
      engine.solve(x, 1)
      expect([...x]).toEqual([...made(complex, [1, 2])])
    })

    it('is the same however the entries are split and ordered', () => {
      check((system, b) => {
        const whole = build(system)
        whole.factor()
        const x = b.slice()
        whole.solve(x, 1)
        // halves are exact in binary, so nothing may change but the order of adding
        const halves = build({
          order: system.order,
          rows: [...system.rows, ...system.rows].reverse(),
          columns: [...system.columns, ...system.columns].reverse(),
          re: [...system.re, ...system.re].map((value) => value / 2).reverse(),
          im: [...system.im, ...system.im].map((value) => value / 2).reverse(),
        })
        halves.factor()
        const y = b.slice()
        halves.solve(y, 1)
        expect(ownResidual(system, y, b, complex)).toBeLessThan(healthy)
        expect(largestApart(x, y)).toBeLessThanOrEqual(1e-12 * norm(x))
      }, 50)
    })

    it('gives the same bits after a refill with the same values', () => {
      check((system, b) => {
        const engine = build(system)
        const runs = [0, 1, 2].map((run) => {
          fill(engine, system)
          expect((run === 2 ? engine.refactor() : engine.factor()).ok).toBe(true)
          const x = b.slice()
          engine.solve(x, 1)
          return new BigInt64Array(x.buffer)
        })
        expect(runs[1]).toEqual(runs[0])
        expect(runs[2]).toEqual(runs[0])
      }, 100)
    })

    it('refactors changed values as it factors them', () => {
      const pair = systems().chain((system) =>
        fc.tuple(
          fc.constant(system),
          vectorOf(sizeOf(system, complex)),
          fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), {
            minLength: system.order,
            maxLength: system.order,
          }),
        ),
      )
      fc.assert(
        fc.property(pair, ([system, b, factors]) => {
          const engine = build(system)
          engine.factor()
          // rows scaled one by one: as dominant as before, and all other values
          const scale = (k: number): number => factors[system.rows[k] ?? 0] ?? 1
          const changed = {
            ...system,
            re: system.re.map((v, k) => v * scale(k)),
            im: system.im.map((v, k) => v * scale(k)),
          }
          fill(engine, changed)
          const outcome = engine.refactor()
          expect(outcome.ok && outcome.growth).toBeGreaterThan(0)
          const x = b.slice()
          engine.solve(x, 1)
          expect(ownResidual(changed, x, b, complex)).toBeLessThan(healthy)
          expect(engine.residual(x, b)).toBeLessThan(healthy)
          const fresh = build(changed)
          fresh.factor()
          const y = b.slice()
          fresh.solve(y, 1)
          expect(largestApart(x, y)).toBeLessThanOrEqual(1e-12 * norm(y))
        }),
        { seed: SEED },
      )
    })

    it('reports the scaled residual of the formula in its contract', () => {
      check((system, b) => {
        const engine = build(system)
        engine.factor()
        const x = b.slice()
        engine.solve(x, 1)
        for (let k = 0; k < x.length; k++) x[k] = (x[k] ?? 0) * (1 + 1e-6 * ((k % 3) + 1))
        // worked out with other summations, hence not to the last digit
        const expected = ownResidual(system, x, b, complex)
        expect(Math.abs(engine.residual(x, b) / expected - 1)).toBeLessThan(1e-6)
      }, 100)
    })

    it('has the residual 0 for nothing, and a bad one for what is no solution', () => {
      const engine = build(
        entriesOf(2, [
          [0, 0, 1, 0],
          [1, 1, 1, 0],
        ]),
      )
      engine.factor()
      expect(engine.residual(made(complex, [0, 0]), made(complex, [0, 0]))).toBe(0)
      expect(engine.residual(made(complex, [1, 1]), made(complex, [1, 2]))).toBeGreaterThan(1e10)
      for (const strange of [
        [Number.NaN, 1],
        [1, Number.NaN],
      ])
        expect(engine.residual(made(complex, strange), made(complex, [1, 1]))).toBeGreaterThan(1e10)
    })

    it.each(singular)('refuses %s', (_what, column, system) => {
      const engine = build(system)
      const outcome = engine.factor()
      expect(outcome.ok).toBe(false)
      if (outcome.ok) return
      if (traits.namesAnyColumnBecause === undefined) expect(outcome.column).toBe(column)
      else expect(outcome.column >= 0 && outcome.column < system.order).toBe(true)
    })

    it('recovers from a refusal when the values are good again', () => {
      const pattern = entriesOf(2, [
        [0, 0, 1, 0],
        [0, 1, 2, 0],
        [1, 0, 2, 0],
        [1, 1, 4, 0],
      ])
      const good = { ...pattern, re: [1, 2, 3, 4] }
      const engine = build(good)
      expect(engine.factor().ok).toBe(true)
      fill(engine, pattern)
      expect(engine.refactor()).toMatchObject({ ok: false, column: 1 })
      fill(engine, good)
      expect(engine.factor().ok).toBe(true)
      const x = made(complex, [5, 11])
      engine.solve(x, 1)
      expect(largestApart(x, made(complex, [1, 2]))).toBeLessThan(1e-14)
    })

    it('never solves with a kept pivot that has vanished: it refuses or orders anew', () => {
      const engine = build(
        entriesOf(2, [
          [0, 0, 4, 0],
          [0, 1, 1, 0],
          [1, 0, 1, 0],
          [1, 1, 1, 0],
        ]),
      )
      engine.factor()
      const changed = entriesOf(2, [
        [0, 0, 0, 0],
        [0, 1, 1, 0],
        [1, 0, 1, 0],
        [1, 1, 0, 0],
      ])
      fill(engine, changed)
      if (!engine.refactor().ok) expect(engine.factor().ok).toBe(true)
      const x = made(complex, [3, 5])
      engine.solve(x, 1)
      expect([...x]).toEqual([...made(complex, [5, 3])])
    })

    it('takes a small conductance beside an ideal link for small, not for nothing', () => {
      // v0 to v1 by an ideal link with current i, 1e-12 from v0 to earth: 1e-12 into v0 lifts both to 1
      const engine = build(
        entriesOf(3, [
          [0, 0, 1e-12, 0],
          [0, 2, 1, 0],
          [1, 2, -1, 0],
          [2, 0, 1, 0],
          [2, 1, -1, 0],
        ]),
      )
      expect(engine.factor().ok).toBe(true)
      const x = made(complex, [1e-12, 0, 0])
      engine.solve(x, 1)
      expect(largestApart(x, made(complex, [1, 1, 0]))).toBeLessThan(1e-14)
    })

    if (!complex) {
      it('ignores imaginary parts', () => {
        const engine = build(entriesOf(1, [[0, 0, 2, 5]]))
        engine.factor()
        const x = new Float64Array([4])
        engine.solve(x, 1)
        expect(x[0]).toBe(2)
      })
      return
    }

    it('divides by a rotating quantity', () => {
      // (3 + 4j) x = 25, hence x = 3 - 4j; and j x = 1, hence x = -j
      const engine = build(
        entriesOf(2, [
          [0, 0, 3, 4],
          [1, 1, 0, 1],
        ]),
      )
      engine.factor()
      const x = new Float64Array([25, 0, 1, 0])
      engine.solve(x, 1)
      expect(largestApart(x, new Float64Array([3, -4, 0, -1]))).toBeLessThan(1e-14)
    })

    it('refuses resonance without loss', () => {
      // j - j in parallel: nothing is left
      expect(
        build(
          entriesOf(1, [
            [0, 0, 0, 1],
            [0, 0, 0, -1],
          ]),
        ).factor(),
      ).toEqual({ ok: false, column: 0 })
    })
  })
}
