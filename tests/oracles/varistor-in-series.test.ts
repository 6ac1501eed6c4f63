import { all, create } from 'mathjs'
import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { resistor, type Solved, solved, source, two } from './_circuit.ts'

const math = create(all ?? {}, { number: 'BigNumber', precision: 32 })

/**
 * The V in V + R·(V/V₁)^α = E by bisection in 32 digits: 90 halvings leave E·2^−90. The law is the definition
 * I = (V/V₁)^α amperes; grade DERIVED.
 */
function crossing(volts: number, ohms: number, unit: number, alpha: number): number {
  let low = math.bignumber(0)
  let high = math.bignumber(volts)
  for (let step = 0; step < 90; step += 1) {
    const middle = low.plus(high).div(2)
    const current = middle.div(unit).ln().times(alpha).exp()
    if (middle.plus(current.times(ohms)).lt(volts)) low = middle
    else high = middle
  }
  return low.toNumber()
}

const varistor = (name: string, from: string, to: string, unit: number, alpha: number): string =>
  two(name, 'varistor', from, to, `voltage at 1 A: ${unit} V, exponent: ${alpha}`)
const behind = (volts: number, ohms: number, unit: number, alpha: number): Solved =>
  solved([source('e', 'p', volts), resistor('r', 'p', 'q', ohms), varistor('v', 'q', 'earth', unit, alpha)])

const LAWS = [
  [1.2, 5],
  [60, 4],
  [250, 30],
  [39, 60],
  [10, 2.5],
] as const

describe.each(LAWS)('a varistor of %d V at 1 A and exponent %d', (unit, alpha) => {
  test.each([0.5, 24, 50, 300, 5000])('behind a resistor takes what bisection finds of %d V', (volts) => {
    for (const ohms of [0.1, 10, 600, 22_000]) {
      const expected = crossing(volts, ohms, unit, alpha)
      const net = behind(volts, ohms, unit, alpha)
      assertClose(net.voltage('q'), expected, { relative: 1e-9 }, `${ohms} Ω`)
      assertClose(
        behind(-volts, ohms, unit, alpha).voltage('q'),
        -expected,
        { relative: 1e-9 },
        `${ohms} Ω, reversed`,
      )
      // its own law, through the answer: a rounding of the voltage grows α times
      const law = Math.abs(expected / unit) ** alpha
      assertClose(net.current('v'), law, { relative: 1e-9 * alpha, absolute: 1e-15 }, `current, ${ohms} Ω`)
    }
  })

  test('twice in a row takes half of what is left, and side by side half the current', () => {
    const volts = 3 * unit // below some tenth of V₁ an exponent of 30 lets nothing through that could be told
    const half = crossing(volts / 2, 300, unit, alpha) // half of the source, half of the resistor
    const row = solved([
      source('e', 'p', volts),
      resistor('r', 'p', 'q', 600),
      varistor('v1', 'q', 'm', unit, alpha),
      varistor('v2', 'm', 'earth', unit, alpha),
    ])
    assertClose(row.voltage('m'), half, { relative: 1e-9 }, 'in a row')
    assertClose(row.voltage('q'), 2 * half, { relative: 1e-9 }, 'in a row')
    const side = solved([
      source('e', 'p', volts),
      resistor('r', 'p', 'q', 300),
      varistor('v1', 'q', 'earth', unit, alpha),
      varistor('v2', 'q', 'earth', unit, alpha),
    ])
    assertClose(side.voltage('q'), crossing(volts, 600, unit, alpha), { relative: 1e-9 }, 'side by side')
  })
})

test('a varistor of exponent 2 meets a source where the quadratic formula says', () => {
  for (const volts of [1, 50, 400]) {
    // V + R V²/V₁² = E: V = 2E/(1 + √(1 + 4RE/V₁²))
    const expected = (2 * volts) / (1 + Math.sqrt(1 + (4 * 100 * volts) / 30 ** 2))
    assertClose(behind(volts, 100, 30, 2).voltage('q'), expected, { relative: 1e-9 }, `${volts} V`)
  }
})
