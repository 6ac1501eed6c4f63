import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { add, type Complex, divide, modulus, multiply, subtract } from '../support/complex.ts'
import { capacitor, resistor, solved, source } from './_circuit.ts'

const real = (re: number): Complex => ({ re, im: 0 })
const beside = (a: Complex, b: Complex): Complex => divide(multiply(a, b), add(a, b))

/** One arm of a bridge: its parts between two nodes, and its impedance at ω by hand. */
interface Arm {
  readonly parts: (name: string, from: string, to: string) => readonly string[]
  readonly z: (omega: number) => Complex
}
const r = (ohms: number): Arm => ({
  parts: (name, from, to) => [resistor(name, from, to, ohms)],
  z: () => real(ohms),
})
const c = (farads: number): Arm => ({
  parts: (name, from, to) => [capacitor(name, from, to, farads)],
  z: (omega) => ({ re: 0, im: -1 / (omega * farads) }),
})
const coil = (ohms: number, henries: number): Arm => ({
  parts: (name, from, to) => [
    `${name}: {kind: inductor, from: ${from}, to: ${to}, inductance: ${henries} H, resistance: ${ohms} Ω}`,
  ],
  z: (omega) => ({ re: ohms, im: omega * henries }),
})
const row = (a: Arm, b: Arm): Arm => ({
  parts: (name, from, to) => [
    ...a.parts(`${name}-1`, from, `${name}-m`),
    ...b.parts(`${name}-2`, `${name}-m`, to),
  ],
  z: (omega) => add(a.z(omega), b.z(omega)),
})
const pair = (a: Arm, b: Arm): Arm => ({
  parts: (name, from, to) => [...a.parts(`${name}-1`, from, to), ...b.parts(`${name}-2`, from, to)],
  z: (omega) => beside(a.z(omega), b.z(omega)),
})

const DETECTOR = 500
/** What the detector sees of 1 V: arms p–x, x–earth, p–y, y–earth. */
const seen = ([a, b, d, e]: readonly [Arm, Arm, Arm, Arm], omega: number): Complex => {
  const parts = [
    source('e', 'p'),
    ...a.parts('a', 'p', 'x'),
    ...b.parts('b', 'x', 'earth'),
    ...d.parts('d', 'p', 'y'),
    ...e.parts('f', 'y', 'earth'),
    resistor('detector', 'x', 'y', DETECTOR),
  ]
  return solved(parts, omega / (2 * Math.PI)).current('detector')
}
/** The same by Thévenin's theorem, by hand. */
const byThevenin = ([a, b, d, e]: readonly [Arm, Arm, Arm, Arm], omega: number): Complex => {
  const [za, zb, zd, ze] = [a.z(omega), b.z(omega), d.z(omega), e.z(omega)]
  const open = subtract(divide(zb, add(za, zb)), divide(ze, add(zd, ze)))
  const inner = add(add(beside(za, zb), beside(zd, ze)), real(DETECTOR))
  return divide(open, inner)
}

/**
 * Balance equations of the textbooks, from memory, verified by Z1·Z4 = Z2·Z3; grade DERIVED.
 * In each bridge the unknown is the arm p–x, and the detector lies between x and y.
 */
const maxwell = (henries: number, ohms: number, r2: number, r3: number) =>
  // L = R2·R3·C, R = R2·R3/R1: R1 beside C opposite to the coil, at every frequency
  [coil(ohms, henries), r(r2), r(r3), pair(r((r2 * r3) / ohms), c(henries / (r2 * r3)))] as const
const hay = (r1: number, farads: number, r2: number, r3: number, omega: number) => {
  // R = ω²C²R1·R2·R3/(1 + ω²C²R1²), L = R2·R3·C/(1 + ω²C²R1²): R1 and C in a row opposite to the coil
  const w = (omega * farads * r1) ** 2
  const ohms = ((omega * farads) ** 2 * r1 * r2 * r3) / (1 + w)
  return [coil(ohms, (r2 * r3 * farads) / (1 + w)), r(r2), r(r3), row(r(r1), c(farads))] as const
}
const schering = (ohms: number, farads: number, standard: number, r3: number) =>
  // C = C2·R4/R3, R = R3·C4/C2: the lossy capacitor p–x on R3, the standard p–y on R4 beside C4, at every frequency
  [
    row(r(ohms), c(farads)),
    r(r3),
    c(standard),
    pair(r((farads * r3) / standard), c((ohms * standard) / r3)),
  ] as const

const OMEGAS = [50, 1000, 5000, 20_000].map((hertz) => 2 * Math.PI * hertz)
/** n·eps·cond of 1 V over the arms, against a detector current of microamperes when nothing balances. */
const NULL = { relative: 0, absolute: 1e-16 }
const LIKE = { relative: 1e-11, absolute: 1e-17 }

describe('a bridge for alternating current', () => {
  test('of Maxwell is balanced at every frequency with L = R2·R3·C and R = R2·R3/R1', () => {
    for (const [henries, ohms] of [
      [0.1, 30],
      [1.07, 37],
      [12, 1000],
    ] as const) {
      for (const omega of OMEGAS) {
        assertClose(seen(maxwell(henries, ohms, 600, 900), omega), 0, NULL, `${henries} H at ${omega}`)
      }
    }
  })

  test('of Hay is balanced at its own frequency, and at that alone', () => {
    for (const omega of OMEGAS) {
      const bridge = hay(200, 0.1e-6, 1000, 820, omega)
      assertClose(seen(bridge, omega), 0, NULL, `at ${omega}`)
      const beyond = byThevenin(bridge, 1.5 * omega)
      assertClose(seen(bridge, 1.5 * omega), beyond, LIKE, `beyond ${omega}`)
      if (modulus(beyond) < 1e-7) throw new Error('the bridge is balanced where it must not be')
    }
  })

  test('of Schering is balanced at every frequency with C = C2·R4/R3 and R = R3·C4/C2', () => {
    for (const [farads, ohms] of [
      [1e-9, 40],
      [1.8e-6, 2],
      [0.1e-6, 100],
    ] as const) {
      for (const omega of OMEGAS) {
        assertClose(seen(schering(ohms, farads, 10e-9, 330), omega), 0, NULL, `${farads} F at ${omega}`)
      }
    }
  })

  test('out of balance drives its detector as Thévenin says', () => {
    for (const omega of OMEGAS) {
      const [coilArm, ...rest] = maxwell(0.1, 30, 600, 900)
      const [lossy, ...others] = schering(100, 0.1e-6, 10e-9, 330)
      const slips = [
        [coil(30.3, 0.1), ...rest],
        [coil(30, 0.101), ...rest],
        [row(lossy, r(1)), ...others],
        [coilArm, rest[0], r(909), rest[2]],
      ] as const
      slips.forEach((bridge, k) => {
        assertClose(
          seen(bridge, omega),
          byThevenin(bridge, omega),
          { relative: 1e-9 },
          `slip ${k} at ${omega}`,
        )
      })
    }
  })

  test('of two coils and two resistors is balanced where L1/L2 = R1/R2', () => {
    for (const omega of OMEGAS) {
      assertClose(seen([coil(0, 0.2), coil(0, 0.5), r(80), r(200)], omega), 0, NULL, `${omega}`)
      const slip = [coil(0, 0.2), coil(0, 0.55), r(80), r(200)] as const
      assertClose(seen(slip, omega), byThevenin(slip, omega), LIKE, `unbalanced at ${omega}`)
    }
  })
})
