/** The ideal hybrid: what of one's own voice is left when line and balance differ. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { modulus } from '../support/complex.ts'
import { SEED } from '../support/seed.ts'
import { resistor, solved, source, two } from './_circuit.ts'

/** As tight as a sheet allows; each half has so much of the driving voltage. Its coils are small, so that their leakage is nothing. */
const COUPLING = 0.9999

/** A coil with a tap: half of it towards the line, half towards the balance; the receiver lies from the tap to their far ends. */
function leftOver(line: number, balance: number): number {
  const net = solved(
    [
      source('voice', 'p'),
      `coil: {kind: induction-coil, windings: {drive: {from: p, to: earth, resistance: 0 Ω, inductance: 1 µH}, first: {from: l, to: tap, resistance: 0 Ω, inductance: 1 µH}, second: {from: tap, to: n, resistance: 0 Ω, inductance: 1 µH}}, coupling: ${COUPLING}}`,
      resistor('line', 'l', 'far', line),
      resistor('balance', 'n', 'far', balance),
      two('receiver', 'resistor', 'tap', 'far', 'resistance: 1e12 Ω'),
      resistor('anchor', 'far', 'earth', 1),
    ],
    1000,
  )
  const heard = net.voltage('tap')
  const end = net.voltage('far')
  return modulus({ re: heard.re - end.re, im: heard.im - end.im }) / COUPLING
}

// closed form of the ideal symmetrical hybrid, grade DERIVED
test('with 600 Ω of line and 900 Ω of balance has 13.9794 dB of trans-hybrid loss', () => {
  assertClose(-20 * Math.log10(leftOver(600, 900)), 13.9794, { relative: 0, absolute: 0.5e-4 }, 'decibels')
})

test('hears nothing of itself when the balance equals the line', () => {
  expect(leftOver(600, 600)).toBeLessThan(1e-6)
})

test('leaves (Zl − Zb)/(Zl + Zb) for any line and balance', () => {
  const size = fc.double({ min: 100, max: 3000, noNaN: true })
  fc.assert(
    fc.property(size, size, (line, balance) => {
      const expected = Math.abs((line - balance) / (line + balance))
      assertClose(leftOver(line, balance), expected, { relative: 1e-5, absolute: 1e-6 }, 'left over')
    }),
    { seed: SEED, numRuns: 30 },
  )
})
