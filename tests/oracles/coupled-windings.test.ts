import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { add, type Complex, divide } from '../support/complex.ts'
import { drive, resistor, solved } from './_circuit.ts'

/** Two windings without resistance, start and end of each named. */
const coil = (
  first: readonly [string, string, number],
  second: readonly [string, string, number],
  k: number,
): string => {
  const winding = ([from, to, henries]: readonly [string, string, number]) =>
    `{from: ${from}, to: ${to}, resistance: 0 Ω, inductance: ${henries} H}`
  return `t: {kind: induction-coil, windings: {first: ${winding(first)}, second: ${winding(second)}}, coupling: ${k}}`
}
/** At this frequency 1 H is 1 Ω. */
const ONE = 1 / (2 * Math.PI)
const henries = (...parts: readonly string[]): Complex => {
  const z = solved([drive('j', 'p'), ...parts], ONE).voltage('p')
  return { re: z.im, im: -z.re }
}
const link = (from: string): string => `short: {kind: strap, from: ${from}, to: earth, resistance: 0 Ω}`

const PAIRS = [
  [4, 9],
  [0.4, 1.07],
  [1, 1],
  [20, 0.002],
] as const
const COUPLINGS = [-0.9998, -0.7, -0.1, 0, 0.02, 0.5, 0.985, 0.9998]
/** n·eps·cond; what is left of closely coupled coils is a difference of 1 − k² = 4e-4 of them. */
const allowed = (k: number) => ({ relative: 1e-12 / (1 - k * k), absolute: 1e-15 })

// Closed forms of two coupled coils; grade DERIVED.
describe.each(PAIRS)('coils of %d H and %d H', (a, b) => {
  test.each(COUPLINGS)('coupled by %d have L1 + L2 ± 2M in a row', (k) => {
    const m = k * Math.sqrt(a * b)
    const aiding = henries(coil(['p', 'm', a], ['m', 'earth', b], k))
    const opposing = henries(coil(['p', 'm', a], ['earth', 'm', b], k))
    assertClose(aiding, a + b + 2 * m, allowed(k), 'aiding')
    assertClose(opposing, a + b - 2 * m, allowed(k), 'opposing')
    assertClose(
      (aiding.re - opposing.re) / 4,
      m,
      { relative: 1e-9, absolute: 1e-14 * (a + b) },
      'M by difference',
    )
  })

  test.each(COUPLINGS)('coupled by %d have (L1·L2 − M²)/(L1 + L2 ∓ 2M) side by side', (k) => {
    const m = k * Math.sqrt(a * b)
    assertClose(
      henries(coil(['p', 'earth', a], ['p', 'earth', b], k)),
      (a * b - m * m) / (a + b - 2 * m),
      allowed(k),
      'aiding',
    )
    assertClose(
      henries(coil(['p', 'earth', a], ['earth', 'p', b], k)),
      (a * b - m * m) / (a + b + 2 * m),
      allowed(k),
      'opposing',
    )
  })

  test.each(COUPLINGS)('coupled by %d keep L1(1 − k²) when the other is shorted', (k) => {
    const left = henries(coil(['p', 'earth', a], ['s', 'earth', b], k), link('s'))
    assertClose(left, a * (1 - k * k), allowed(k), 'left')
  })

  test.each(COUPLINGS)('coupled by %d show a load as (ωM)²/(R + jωL2), and bring it jωM', (k) => {
    for (const ohms of [0.1, 3, 500]) {
      const net = solved(
        [
          drive('j', 'p'),
          coil(['p', 'earth', a], ['s', 'earth', b], k),
          resistor('load', 's', 'earth', ohms),
        ],
        ONE,
      )
      const m = k * Math.sqrt(a * b)
      const reflected = divide({ re: m * m, im: 0 }, { re: ohms, im: b })
      assertClose(
        net.voltage('p'),
        add({ re: 0, im: a }, reflected),
        { relative: 1e-11 },
        `${ohms} Ω, primary`,
      )
      const current = divide({ re: 0, im: m }, { re: ohms, im: b })
      assertClose(net.current('load'), current, { relative: 1e-11, absolute: 1e-15 }, `${ohms} Ω, load`)
    }
  })
})

test('three coils in a row have the sum of all L and of twice all M, each with its own sign', () => {
  const [l, k] = [
    [0.4, 1.07, 0.107],
    [0.9, -0.3, -0.1],
  ] as const
  const m = [
    k[0] * Math.sqrt(l[0] * l[1]),
    k[1] * Math.sqrt(l[0] * l[2]),
    k[2] * Math.sqrt(l[1] * l[2]),
  ] as const
  const row = (third: readonly [string, string]) =>
    henries(
      `t: {kind: induction-coil, windings: {a: {from: p, to: x, resistance: 0 Ω, inductance: ${l[0]} H}, b: {from: x, to: y, resistance: 0 Ω, inductance: ${l[1]} H}, c: {from: ${third[0]}, to: ${third[1]}, resistance: 0 Ω, inductance: ${l[2]} H}}, coupling: {a-b: ${k[0]}, a-c: ${k[1]}, b-c: ${k[2]}}}`,
    )
  const own = l[0] + l[1] + l[2]
  assertClose(row(['y', 'earth']), own + 2 * (m[0] + m[1] + m[2]), { relative: 1e-12 }, 'forwards')
  assertClose(row(['earth', 'y']), own + 2 * (m[0] - m[1] - m[2]), { relative: 1e-12 }, 'third reversed')
})

test('two coils may be coupled by 0.9999, which is the limit that the format names', () => {
  for (const k of [0.9999, -0.9999]) {
    const left = henries(coil(['p', 'earth', 4], ['s', 'earth', 9], k), link('s'))
    assertClose(left, 4 * (1 - k * k), { relative: 1e-8 }, `what ${k} leaves of 4 H`)
  }
})
