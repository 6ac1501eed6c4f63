/** How bells on one ringing capacitor share its current, by the closed form and by the trade's table. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { add, type Complex, divide, modulus, multiply } from '../support/complex.ts'
import { SEED } from '../support/seed.ts'
import { amountOf, bell, figuresOf, ohms, PLUG, parts, premises, type Wiring } from './_premises.ts'

const HERTZ = 25
const OMEGA = 2 * Math.PI * HERTZ
const real = (re: number): Complex => ({ re, im: 0 })
const over = (z: Complex): Complex => divide(real(1), z)

/** A bell with a resistor in series, between ringing lead and a wire. */
interface Bell {
  readonly resistance: number
  readonly inductance: number
  readonly series: number
}
interface House {
  readonly bells: readonly Bell[]
  readonly source: number
  readonly farads: number
  /** Ω beside the bells, in the master socket */
  readonly resistor: number
}

const wiring = ({ resistance, inductance, series }: Bell): Wiring =>
  parts(ohms('resistor', 'A3', 'A4', series), bell('bell', 'A4', 'A1', resistance, inductance))

/** V over the impedance of the whole, and of that to each bell what the admittances leave it. */
function closedForm({ bells, source, farads, resistor }: House, volts: number) {
  const each = bells.map(({ resistance, inductance, series }) => ({
    re: PLUG + series + resistance,
    im: OMEGA * inductance,
  }))
  const beside = over([real(resistor), ...each].map(over).reduce(add))
  const total = divide(real(volts), add(add(real(source), { re: 0, im: -1 / (OMEGA * farads) }), beside))
  const lead = multiply(total, beside)
  return { total: modulus(total), currents: each.map((z) => modulus(divide(lead, z))), complex: total }
}

function found(house: House) {
  const { bells, source, farads, resistor } = house
  const shelf = premises({ battery: 50, feed: source }, bells.map(wiring), { farads, ohms: resistor })
  return figuresOf(shelf)
}

/** Holds every figure about ringing against the closed form. */
function holds(house: House): void {
  const expected = closedForm(house, 75)
  const figures = found(house)
  const near = { relative: 1e-8, absolute: 1e-15 }
  const sum = expected.currents.reduce((a, b) => a + b)
  house.bells.forEach(({ resistance, inductance }, k) => {
    const current = expected.currents[k] ?? Number.NaN
    const place = `set${k + 1}`
    const volts = current * Math.hypot(resistance, OMEGA * inductance)
    assertClose(amountOf(figures, 'ringing.current', place), current, near, `current of ${place}`)
    assertClose(amountOf(figures, 'ringing.share', place), current / sum, near, `share of ${place}`)
    assertClose(amountOf(figures, 'ringing.voltage', place), volts, near, `voltage of ${place}`)
    assertClose(amountOf(figures, 'ringing.power', place), volts * current, near, `power of ${place}`)
  })
  const line = figures.filter(({ id }) => id === 'ringing.line-current')
  expect(line.length).toBeGreaterThan(0)
  for (const { value } of line) assertClose(value, expected.total, near, 'current of the line')
  const drop = multiply(expected.complex, real(house.source))
  const socket = modulus({ re: 75 - drop.re, im: -drop.im })
  const sockets = figures.filter(({ id }) => id === 'ringing.socket-voltage')
  expect(sockets.length).toBeGreaterThan(0)
  for (const { value } of sockets) assertClose(value, socket, { relative: 1e-6 }, 'voltage at the socket')
}

const ONE: Bell = { resistance: 1000, inductance: 12, series: 3300 }
const RESISTORS = [
  ['without', 1e15],
  ['with', 470e3],
] as const

describe.each(RESISTORS)('behind one capacitor, %s the 470 kΩ of the socket,', (_, resistor) => {
  test.each([1, 2, 3, 4, 5, 7, 12])('%d equal bells share the current equally', (count) => {
    const house = { bells: Array.from({ length: count }, () => ONE), source: 400, farads: 1.8e-6, resistor }
    holds(house)
    const shares = found(house).filter(({ id }) => id === 'ringing.share')
    expect(shares).toHaveLength(count)
    for (const { value } of shares) assertClose(value, 1 / count, { relative: 1e-9 }, 'share')
  })

  test('unequal bells share it as their admittances do', () => {
    holds({
      bells: [ONE, { resistance: 500, inductance: 4, series: 0 }, { ...ONE, series: 1000 }, ONE],
      source: 568,
      farads: 1.8e-6,
      resistor,
    })
  })

  test('any bells share it as the closed form says', () => {
    const anyBell = fc.record({
      resistance: fc.double({ min: 200, max: 6000, noNaN: true }),
      inductance: fc.double({ min: 0.1, max: 30, noNaN: true }),
      series: fc.double({ min: 1, max: 10_000, noNaN: true }),
    })
    fc.assert(
      fc.property(
        fc.array(anyBell, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0.1, max: 3000, noNaN: true }),
        fc.double({ min: 0.2e-6, max: 8e-6, noNaN: true }),
        (bells, source, farads) => holds({ bells, source, farads, resistor }),
      ),
      { seed: SEED, numRuns: 25 },
    )
  })
})

/**
 * Bells of 1000 Ω + 3300 Ω on an ideal 75 V at 25 Hz; parts of the master socket in a national interface note,
 * secondary copy; grade DERIVED. A hand-made table had 20.2894 and 5.0724 mA for four bells; 75 V by its own 3696.5407 Ω
 * is 20.2892 and 5.0723 mA, which is what stands here.
 */
test.each([
  [1, 13.4707, 13.4707],
  [2, 18.1203, 9.0602],
  [3, 19.6532, 6.5511],
  [4, 20.2892, 5.0723],
])('%d bells of 4.3 kΩ draw %f mA from 75 V, %f mA each', (count, together, each) => {
  const one = { resistance: 1000, inductance: 1e-9, series: 3300 - PLUG }
  const bells = Array.from({ length: count }, () => one)
  const figures = found({ bells, source: 0, farads: 1.8e-6, resistor: 1e15 })
  const last = { relative: 0, absolute: 0.5e-4 }
  for (let k = 1; k <= count; k += 1)
    assertClose(1e3 * amountOf(figures, 'ringing.current', `set${k}`), each, last, `bell ${k}`)
  const [line] = figures.filter(({ id }) => id === 'ringing.line-current')
  assertClose(1e3 * (line?.value ?? Number.NaN), together, last, 'line')
})

// ideal source and no capacitor to speak of: I₁/I₂ = Z₂/Z₁, current divider
test('from a source without impedance each bell takes what it would take alone', () => {
  const low = { resistance: 500, inductance: 4, series: 0.01 }
  const both = found({ bells: [ONE, low], source: 0, farads: 1, resistor: 1e15 })
  const alone = found({ bells: [ONE], source: 0, farads: 1, resistor: 1e15 })
  const current = amountOf(both, 'ringing.current', 'set1')
  assertClose(current, amountOf(alone, 'ringing.current', 'set1'), { relative: 1e-5 }, 'beside a low bell')
  const ratio = Math.hypot(500.11, OMEGA * 4) / Math.hypot(4300.1, OMEGA * 12)
  assertClose(current / amountOf(both, 'ringing.current', 'set2'), ratio, { relative: 1e-9 }, 'ratio')
})

/** L = 1/((2πf)²C), grade DERIVED: then only resistance is left, and the current is the largest that there is. */
test.each([
  [1.8e-6, 25, 22.5158],
  [1.8e-6, 50 / 3, 50.6606],
  [1e-6, 25, 40.5285],
  [2e-6, 25, 20.2642],
  [0.45e-6, 20, 140.7239],
])('behind %f F at %f Hz a bell of %f H is in resonance', (capacitance, hertz, inductance) => {
  const current = (henries: number): number => {
    const wire = parts(bell('bell', 'A3', 'A1', 1000 - PLUG, henries))
    const shelf = premises({ battery: 50, feed: 400, frequency: hertz }, [wire], { farads: capacitance })
    return amountOf(figuresOf(shelf, 'ringing.current'), 'ringing.current', 'set1')
  }
  // six digits of L leave ohms of reactance in thousands, which count by their square
  assertClose(current(inductance), 75 / 1400, { relative: 1e-7 }, 'current')
  for (const away of [0.99, 1.01]) expect(current(inductance * away)).toBeLessThan(current(inductance))
})

/** Trade arithmetic on the equivalent ringer of TIA-968 table 6, secondary copy; figures DERIVED. */
test('five ringers of 6930 Ω on 75 V draw 54.11 mA, 4.06 VA', () => {
  const wire = parts(bell('bell', 'A1', 'A2', 6930 - PLUG, 1e-9))
  const five = premises(
    { battery: 50, feed: 0, frequency: 20 },
    Array.from({ length: 5 }, () => wire),
  )
  const figures = figuresOf(five, 'ringing')
  const total = figures.find(({ id }) => id === 'ringing.line-current')?.value ?? Number.NaN
  assertClose(1e3 * total, 54.11, { relative: 0, absolute: 0.005 }, 'milliamperes')
  const power = figures
    .filter(({ id }) => id === 'ringing.power')
    .reduce((sum, { value }) => sum + (value ?? 0), 0)
  assertClose(power, 4.06, { relative: 0, absolute: 0.005 }, 'volt-amperes')
})
