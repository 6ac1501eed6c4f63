import { mendCurve, stepsEach } from 'ringproof/book/loadings'
import { makeBook } from 'ringproof/book/make-book'
import { drifted } from 'ringproof/book/tolerances'
import { expect, test } from 'vitest'
import { compiled } from '../../support/compiled.ts'
import { branchOf, faultOf, testOf, volts } from './_divider.ts'

const net = compiled(
  'e: {kind: voltage-source, from: p, to: earth, direct: 12 V}',
  'r1: {kind: resistor, from: p, to: q, resistance: 1 kΩ ± 6 %}',
  'r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ ± 12 %}',
)
const severity = { ohms: 2.5, values: 0.25, source: 'from memory' }
const inputs = {
  net,
  transmitterSpread: 3,
  severity,
  tests: [testOf('q', volts(net, 'trial/q')), testOf('p', volts(net, 'trial/p'))],
  faults: [
    faultOf('r1 resists', { within: { branch: branchOf(net, 'r1'), ohms: 1000 } }),
    faultOf('r2 open', { lifted: branchOf(net, 'r2') }),
  ],
}
const book = makeBook(inputs)

/** u of the divider's middle, closed form; testOf compares on a scale of 0.5. */
const u = (r1: number, r2: number): number => Math.asinh((12 * r2) / (r1 + r2) / 0.5)

function stepsOf(row: number, t: number): number[] {
  const { loadings } = book
  if (loadings === undefined) throw new Error('no loadings')
  const each = stepsEach(loadings)
  const from = (row * book.tests.length + t) * each
  return [...loadings.steps.slice(from, from + each)]
}

test('steps of the tolerances are those of the divider, one standard deviation up each', () => {
  expect(book.loadings).toMatchObject({ straight: 2, curved: 1 })
  const [first, second] = [u(1020, 2000) - u(1000, 2000), u(1000, 2080) - u(1000, 2000)]
  expect(stepsOf(0, 0)).toEqual([first, second, 0, 0, 0, 0].map((step) => expect.closeTo(step, 6)))
  // a stiff source: nothing moves it
  expect(stepsOf(0, 1)).toEqual([0, 0, 0, 0, 0, 0].map((step) => expect.closeTo(step, 6)))
})

test('steps of a fault’s own size are those of the divider at −2, −1, 1 and 2 standard deviations', () => {
  const steps = [-2, -1, 1, 2].map((z) => u(1000 + 1000 * 2.5 ** z, 2000) - u(2000, 2000))
  expect(stepsOf(1, 0).slice(2)).toEqual(steps.map((step) => expect.closeTo(step, 6)))
  // open is there or not there
  expect(stepsOf(2, 0).slice(2)).toEqual([0, 0, 0, 0])
})

test('their squares, one standard deviation up, make the spread', () => {
  for (const row of [0, 1, 2]) {
    for (const t of [0, 1]) {
      const [one = 0, other = 0, , , up = 0] = stepsOf(row, t)
      expect(Math.hypot(one, other, up)).toBeCloseTo(book.spreads[row * 2 + t] ?? Number.NaN, 6)
    }
  }
})

test('a curve goes on straight where a score is no number', () => {
  const [none, open] = [Number.NaN, Number.POSITIVE_INFINITY]
  const mended = (...steps: number[]): number[] => {
    const all = Float32Array.from([9, ...steps])
    mendCurve(all, 1)
    return [...all]
  }
  expect(mended(none, -1, open, none)).toEqual([9, -2, -1, 1, 2])
  expect(mended(-3, open, 1, 4)).toEqual([9, -3, -1, 1, 4])
  expect(mended(none, none, none, none)).toEqual(
    [9, 0, 0, 0, 0].map((one) => (one === 0 ? expect.closeTo(0) : one)),
  )
})

test('a shaken value drifts by powers of its factor, others by as much up as down', () => {
  const spec = { kind: 'resistor', resistance: { value: 100, unit: 'Ω', text: '100 Ω' } }
  const value = (shaken: boolean, deviations: number): unknown => {
    const drift = { part: 0, path: ['resistance'], factor: 1.5, shaken }
    return (drifted(spec as never, drift, deviations) as unknown as typeof spec).resistance.value
  }
  expect([value(true, -2), value(false, -1), value(false, 2)]).toEqual([
    expect.closeTo(100 / 2.25, 9),
    expect.closeTo(50, 9),
    expect.closeTo(200, 9),
  ])
})
