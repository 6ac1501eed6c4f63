import fc from 'fast-check'
import { all, create, type FactoryFunctionMap } from 'mathjs'
import { divide, multiply, rootOf } from 'ringproof/parts/complex'
import { sinhc, tanhcHalf } from 'ringproof/parts/hyperbolic'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { SEED } from '../../support/seed.ts'

const math = create(all as FactoryFunctionMap, {})
/** θ in the right half plane, away from the poles of tanh(θ/2) at odd multiples of jπ. */
const thetas = fc
  .record({
    re: fc.double({ min: 0, max: 30, noNaN: true }),
    im: fc.double({ min: -20, max: 20, noNaN: true }),
  })
  .filter(({ re, im }) => re > 0.05 || Math.abs(Math.cos(im / 2)) > 0.1)
  .filter(({ re, im }) => Math.hypot(re, im) > 1e-3)

describe('the functions of a line', () => {
  // sinh, cosh and tanh of complex numbers by an independent library
  test('sinh(θ)/θ and tanh(θ/2)/(θ/2) are what a general library has', () => {
    fc.assert(
      fc.property(thetas, ({ re, im }) => {
        const theta = math.complex(re, im)
        const w = { re: re * re - im * im, im: 2 * re * im }
        const quotient = math.divide(math.sinh(theta), theta) as math.Complex
        assertClose(sinhc(w), quotient, { relative: 1e-11, absolute: 1e-13 }, `sinh at ${re} + j${im}`)
        const half = math.divide(theta, 2) as math.Complex
        const tanhc = math.divide(math.tanh(half), half) as math.Complex
        assertClose(tanhcHalf(w), tanhc, { relative: 1e-11, absolute: 1e-13 }, `tanh at ${re} + j${im}`)
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })

  test('are 1 at 0 and real on both axes', () => {
    expect(sinhc({ re: 0, im: 0 })).toEqual({ re: 1, im: 0 })
    expect(tanhcHalf({ re: 0, im: 0 })).toEqual({ re: 1, im: 0 })
    for (const w of [-30, -2, -0.5, 0.5, 2, 30, 400]) {
      expect(Math.abs(sinhc({ re: w, im: 0 }).im)).toBe(0)
      expect(Math.abs(tanhcHalf({ re: w, im: 0 }).im)).toBe(0)
    }
  })
})

describe('complex numbers', () => {
  test('have their square root in the right half plane', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        (re, im) => {
          const root = rootOf({ re, im })
          expect(root.re).toBeGreaterThanOrEqual(0)
          assertClose(multiply(root, root), { re, im }, { relative: 1e-14, absolute: 1e-300 }, 'square')
        },
      ),
      { seed: SEED },
    )
    expect(rootOf({ re: -4, im: 0 })).toEqual({ re: 0, im: 2 })
    expect(rootOf({ re: 0, im: 0 })).toEqual({ re: 0, im: 0 })
  })

  test('divide without overflow', () => {
    expect(divide({ re: 1e200, im: 0 }, { re: 1e200, im: 0 })).toEqual({ re: 1, im: 0 })
    assertClose(
      divide({ re: 1, im: 2 }, { re: 3, im: -4 }),
      { re: -0.2, im: 0.4 },
      { relative: 1e-15 },
      'by hand',
    )
  })
})
