import fc from 'fast-check'
import type { LinearSystem, Pattern } from 'ringproof/algebra/system'
import { expect, it } from 'vitest'
import { SEED } from '../support/seed.ts'
import { norm, vectorOf } from './_residual.ts'
import { fill, largestApart, randomSystem, sizeOf } from './_systems.ts'

/** What a twin is to the engine that it was taken from, as a test of one implementation. */
export function twinContract(
  name: string,
  create: (pattern: Pattern, complex: boolean) => LinearSystem,
): void {
  it.each([
    ['real', false],
    ['complex', true],
  ] as const)(`the ${name} engine, %s, has twins with its answers that go their own way`, (_, complex) => {
    const pair = randomSystem(complex, 1, 14).chain((system) =>
      fc.tuple(fc.constant(system), vectorOf(sizeOf(system, complex))),
    )
    fc.assert(
      fc.property(pair, ([system, b]) => {
        const engine = create(system, complex)
        fill(engine, system)
        if (!engine.factor().ok) return
        const twin = engine.twin()
        const before = Float64Array.from(b)
        engine.solve(before, 1)
        engine.clear()
        const after = Float64Array.from(b)
        twin.solve(after, 1)
        expect(after).toEqual(before)
        expect(twin.residual(after, b)).toBeLessThan(10)
        expect(() => engine.solve(Float64Array.from(b), 1)).toThrow('without factors')
        expect(twin.refactor().ok).toBe(true)
        const again = Float64Array.from(b)
        twin.solve(again, 1)
        expect(largestApart(again, before)).toBeLessThan(1e-6 * (1 + norm(before)))
      }),
      { seed: SEED, numRuns: 50 },
    )
  })
}
