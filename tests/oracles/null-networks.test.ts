import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { type Complex, divide } from '../support/complex.ts'
import { capacitor, resistor, solved, source } from './_circuit.ts'

const R = 10_000
const C = 10e-9
/** Frequencies as x = ωRC. */
const SHARES = [1e-3, 0.05, 0.3, 0.9, 0.999, 1.001, 1.1, 2, 15, 500]
const at = (x: number): number => x / (2 * Math.PI * R * C)

const twinT = (x: number): Complex =>
  solved(
    [
      source('e', 'in'),
      resistor('r1', 'in', 'a', R),
      resistor('r2', 'a', 'out', R),
      capacitor('c3', 'a', 'earth', 2 * C),
      capacitor('c1', 'in', 'b', C),
      capacitor('c2', 'b', 'out', C),
      resistor('r3', 'b', 'earth', R / 2),
    ],
    at(x),
  ).voltage('out')
const wien = (x: number): Complex =>
  solved(
    [
      source('e', 'in'),
      resistor('r1', 'in', 'a', R),
      capacitor('c1', 'a', 'out', C),
      resistor('r2', 'out', 'earth', R),
      capacitor('c2', 'out', 'earth', C),
    ],
    at(x),
  ).voltage('out')

// Closed forms of the unloaded networks; grade DERIVED.
describe('a twin T of R, R, R/2 and C, C, 2C', () => {
  test('passes (1 − x²)/(1 − x² + 4jx) with x = ωRC', () => {
    for (const x of SHARES) {
      const passed = divide({ re: 1 - x * x, im: 0 }, { re: 1 - x * x, im: 4 * x })
      assertClose(twinT(x), passed, { relative: 1e-11, absolute: 1e-13 }, `x = ${x}`)
    }
  })

  test('has its half-power points where x − 1/x is −4 and 4, 45° to either side', () => {
    const low = Math.sqrt(5) - 2
    assertClose(twinT(low), { re: 0.5, im: -0.5 }, { relative: 1e-12 }, 'below')
    assertClose(twinT(1 / low), { re: 0.5, im: 0.5 }, { relative: 1e-12 }, 'above')
  })
})

describe('a Wien network', () => {
  test('passes 1/(3 + j(x − 1/x)) with x = ωRC', () => {
    for (const x of SHARES) {
      assertClose(
        wien(x),
        divide({ re: 1, im: 0 }, { re: 3, im: x - 1 / x }),
        { relative: 1e-12 },
        `x = ${x}`,
      )
    }
  })

  test('with two resistors of 2:1 is a bridge without current at x = 1, and at no other x', () => {
    for (const x of [0.5, 1, 2]) {
      const parts = [
        source('e', 'in'),
        resistor('r1', 'in', 'a', R),
        capacitor('c1', 'a', 'out', C),
        resistor('r2', 'out', 'earth', R),
        capacitor('c2', 'out', 'earth', C),
        resistor('r3', 'in', 'tap', 2000),
        resistor('r4', 'tap', 'earth', 1000),
      ]
      const net = solved(parts, at(x))
      const [out, tap] = [net.voltage('out'), net.voltage('tap')]
      const expected = divide({ re: 0, im: 1 / x - x }, { re: 9, im: 3 * (x - 1 / x) })
      const difference = { re: out.re - tap.re, im: out.im - tap.im }
      assertClose(difference, expected, { relative: 1e-12, absolute: 1e-15 }, `x = ${x}`)
    }
  })
})
