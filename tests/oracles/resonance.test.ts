import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { type Complex, degrees, divide, modulus } from '../support/complex.ts'
import { capacitor, drive, inductor, resistor, type Solved, solved, source } from './_circuit.ts'

// Closed forms of any textbook of circuit theory; grade DERIVED. R Ω, L H, C F.
const CIRCUITS = [
  [8, 10e-3, 2.53303e-6],
  [10, 50e-3, 20e-6],
  [1000, 12, 1.8e-6],
  [2, 1e-3, 1e-9],
  [47_000, 0.2, 1e-6],
] as const
const TURN = 2 * Math.PI
/** Near resonance a share of what is printed for L and C is left: Q times n·eps·cond, Q below 1000 here. */
const TIGHT = { relative: 1e-10 }

const series = (ohms: number, henries: number, farads: number, hertz: number): Solved =>
  solved(
    [
      source('e', 'p'),
      resistor('r', 'p', 'a', ohms),
      inductor('l', 'a', 'b', henries),
      capacitor('c', 'b', 'earth', farads),
    ],
    hertz,
  )
const parallel = (ohms: number, henries: number, farads: number, hertz: number): Solved =>
  solved(
    [
      drive('j', 'p'),
      resistor('r', 'p', 'earth', ohms),
      inductor('l', 'p', 'earth', henries),
      capacitor('c', 'p', 'earth', farads),
    ],
    hertz,
  )
/** The two roots of a x² ± b x − c: where the angle is 45° to either side, in Hz. */
const halves = (a: number, b: number, c: number): readonly [number, number] => {
  const root = Math.sqrt(b * b + 4 * a * c)
  return [(2 * c) / (root + b) / TURN, (root + b) / (2 * a) / TURN]
}

describe.each(CIRCUITS)('%d Ω, %d H and %d F', (ohms, henries, farads) => {
  const centre = 1 / (TURN * Math.sqrt(henries * farads))
  const rise = Math.sqrt(henries / farads) / ohms

  test('in series are R alone at 1/(2π√(LC)), and the coil has √(L/C)/R of the voltage', () => {
    const at = series(ohms, henries, farads, centre)
    assertClose(at.current('r'), 1 / ohms, { relative: 1e-15 * rise + 1e-12 }, 'current')
    assertClose(at.voltage('b'), { re: 0, im: -rise }, { relative: 1e-11 }, 'voltage on the capacitor')
  })

  test('in series have half the power and 45° where ωL − 1/ωC is R, below and above', () => {
    const [below, above] = halves(henries, ohms, 1 / farads)
    const angles = [below, above].map((hertz) => {
      const current = series(ohms, henries, farads, hertz).current('r')
      assertClose(modulus(current) ** 2 * ohms, 0.5 / ohms, TIGHT, `power at ${hertz} Hz`)
      return degrees(current)
    })
    assertClose(angles[0], 45, TIGHT, 'angle below')
    assertClose(angles[1], -45, TIGHT, 'angle above')
    assertClose(above - below, ohms / henries / TURN, TIGHT, 'band R/2πL')
    assertClose(below * above, centre * centre, TIGHT, 'centre, the geometric mean')
  })

  test('side by side are R alone at 1/(2π√(LC)), and the coil has R/√(L/C) of the current', () => {
    const at = parallel(ohms, henries, farads, centre)
    assertClose(at.voltage('p'), ohms, { relative: 1e-15 / rise + 1e-12 }, 'impedance')
    assertClose(at.current('l'), { re: 0, im: -1 / rise }, { relative: 1e-11 }, 'current in the coil')
    assertClose(at.current('c'), { re: 0, im: 1 / rise }, { relative: 1e-11 }, 'current in the capacitor')
  })

  test('side by side have half the power and 45° where ωC − 1/ωL is 1/R, below and above', () => {
    const [below, above] = halves(farads, 1 / ohms, 1 / henries)
    const angles = [below, above].map((hertz) => {
      const volts = parallel(ohms, henries, farads, hertz).voltage('p')
      assertClose(modulus(volts) ** 2 / ohms, 0.5 * ohms, TIGHT, `power at ${hertz} Hz`)
      return degrees(volts)
    })
    assertClose(angles[0], 45, TIGHT, 'angle below')
    assertClose(angles[1], -45, TIGHT, 'angle above')
    assertClose(above - below, 1 / (ohms * farads) / TURN, TIGHT, 'band 1/2πRC')
  })

  test('in series have the impedance R + j(ωL − 1/ωC) at any frequency', () => {
    for (const share of [1e-3, 0.1, 0.9, 1.2, 7, 400]) {
      const omega = TURN * centre * share
      const impedance: Complex = { re: ohms, im: omega * henries - 1 / (omega * farads) }
      const found = series(ohms, henries, farads, omega / TURN).current('r')
      assertClose(divide({ re: 1, im: 0 }, found), impedance, { relative: 1e-11 }, `${share} of resonance`)
    }
  })
})

/** The coil in henries that a ringing capacitor in microfarads is in resonance with, L = 1/((2πf)²C): derived, four decimals. */
const RINGERS = [
  [25, 1.8, 22.5158],
  [50 / 3, 1.8, 50.6606],
  [25, 1, 40.5285],
  [25, 2, 20.2642],
  [20, 0.45, 140.7239],
] as const

test.each(RINGERS)(
  'at %d Hz %d µF is in resonance with %d H, to the last digit printed',
  (hertz, micro, henries) => {
    const net = solved(
      [drive('j', 'p'), inductor('l', 'p', 'm', henries), capacitor('c', 'm', 'earth', micro * 1e-6)],
      hertz,
    )
    const allowed = TURN * hertz * 0.5e-4 // half of the fourth decimal of a henry, as reactance
    assertClose(net.voltage('p'), 0, { relative: 0, absolute: allowed }, 'what is left of the reactance')
    expect(modulus(net.voltage('m'))).toBeGreaterThan(1000)
  },
)
