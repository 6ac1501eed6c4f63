import { wireOverEarth } from 'ringproof/figures/wire-over-earth'
import { expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

test('a wire as far from the plane as cosh 1 of its radius has 2πε₀ a metre', () => {
  // any textbook of electromagnetics: C′ = 2πε₀/arcosh(h/r); ε₀ = 8.8541878128 pF/m, CODATA 2018
  const radius = 0.25e-3
  assertClose(
    wireOverEarth(2 * radius, radius * Math.cosh(1)),
    2 * Math.PI * 8.8541878128e-12,
    { relative: 1e-9 },
    'F/m',
  )
})

test('a wire of half a millimetre at a wall has some picofarads a metre, less the further it is', () => {
  assertClose(wireOverEarth(0.5e-3), 12.696e-12, { relative: 1e-3 }, '2πε₀/arcosh 40')
  expect(wireOverEarth(0.5e-3, 0.05)).toBeLessThan(wireOverEarth(0.5e-3))
})
