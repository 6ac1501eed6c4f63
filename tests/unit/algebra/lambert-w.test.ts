import * as fc from 'fast-check'
import { lambertOfExp } from 'ringproof/algebra/lambert-w'
import { expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { SEED } from '../../support/seed.ts'

const ROUNDING = { relative: 4e-16 }

test("Lambert's W of e⁰ is the omega constant, and of e¹ it is 1", () => {
  // NIST Digital Library of Mathematical Functions, 4.13: W(e) = 1, W(1) = 0.56714 32904 09783 87299… (from memory)
  assertClose(lambertOfExp(0), 0.5671432904097838, ROUNDING, 'W(1)')
  assertClose(lambertOfExp(1), 1, ROUNDING, 'W(e)')
  assertClose(lambertOfExp(2 + Math.log(2)), 2, ROUNDING, 'W(2e²)')
})

test("Lambert's W solves w + ln w = x where eˣ overflows, and vanishes with eˣ where it underflows", () => {
  fc.assert(
    fc.property(fc.double({ min: -700, max: 1e6, noNaN: true }), (x) => {
      const w = lambertOfExp(x)
      // the sum carries a rounding of its larger term
      assertClose(w + Math.log(w), x, { relative: 4e-16, absolute: 4e-16 * (1 + Math.abs(x)) }, `at ${x}`)
    }),
    { seed: SEED },
  )
  expect(lambertOfExp(-800)).toBe(0)
  assertClose(lambertOfExp(-300), Math.exp(-300), ROUNDING, 'W(e⁻³⁰⁰)')
})

test("Lambert's W rises with its argument, across the borders of its start as well", () => {
  const grid = Array.from({ length: 4001 }, (_, k) => -50 + k / 40)
  grid.slice(1).forEach((x, k) => {
    expect(lambertOfExp(x)).toBeGreaterThan(lambertOfExp(grid[k] ?? 0))
  })
})
