import { kindOf } from 'ringproof/parts/index'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { divide } from '../../support/complex.ts'
import { alternating, DIRECT, single, spec } from './_heard.ts'

/** Closed forms by the definitions of the elements (any circuit-theory textbook), e^{+jωt}; a few roundings apart. */
const ROUNDING = { relative: 1e-14 }
const ends = { from: 'p', to: 'q' }
const OMEGA = 2 * Math.PI * 25
const OPEN = { form: 'equation', a: 0, z: { re: 1, im: 0 }, e: { re: 0, im: 0 } }
const equation = (re: number, im = 0, e = { re: 0, im: 0 }) => ({ form: 'equation', a: 1, z: { re, im }, e })
const admittance = (re: number, im = 0, s = { re: 0, im: 0 }) => ({ form: 'admittance', y: { re, im }, s })

describe('the laws of two-ended parts', () => {
  test('a resistor is a conductance from 1 Ω up and a branch equation below', () => {
    const at = (resistance: string) =>
      [DIRECT, alternating(OMEGA)].map((point) => single({ kind: 'resistor', ...ends, resistance }, point))
    expect(at('4 Ω')).toEqual([admittance(0.25), admittance(0.25)])
    expect(at('1 Ω')).toEqual([admittance(1), admittance(1)])
    expect(at('0.5 Ω')).toEqual([equation(0.5), equation(0.5)])
    expect(at('0 Ω')).toEqual([equation(0), equation(0)])
  })

  test('a capacitor without leakage carries no direct current, and jωC for alternating', () => {
    const part = { kind: 'capacitor', ...ends, capacitance: '1.8 µF' }
    expect(single(part, DIRECT)).toEqual(admittance(0))
    expect(single(part, alternating(OMEGA))).toEqual(admittance(0, OMEGA * 1.8e-6))
  })

  test('the leakage of a capacitor stands beside it: 1/R + jωC', () => {
    const part = { kind: 'capacitor', ...ends, capacitance: '1.8 µF', leakage: '4 MΩ' }
    expect(single(part, DIRECT)).toEqual(admittance(0.25e-6))
    expect(single(part, alternating(OMEGA))).toEqual(admittance(0.25e-6, OMEGA * 1.8e-6))
  })

  test.each([
    ['inductor', {}],
    ['receiver', {}],
    ['bell', { 'rings from': '3 mA at 25 Hz' }],
  ])('%s: R for direct current, R + jωL for alternating', (kind, more) => {
    const part = { kind, ...ends, resistance: '150 Ω', inductance: '12 H', ...more }
    expect(single(part, DIRECT)).toEqual(equation(150))
    expect(single(part, alternating(OMEGA))).toEqual(equation(150, OMEGA * 12))
  })

  test('an inductor without resistance is lossless', () => {
    const part = { kind: 'inductor', ...ends, inductance: '2 H' }
    expect(single(part, DIRECT)).toEqual(equation(0))
    expect(single(part, alternating(3))).toEqual(equation(0, 6))
  })

  test('a quench carries no direct current and 1/(R + 1/(jωC)) for alternating', () => {
    const part = { kind: 'quench', ...ends, resistance: '100 Ω', capacitance: '0.1 µF' }
    expect(single(part, DIRECT)).toEqual(admittance(0))
    for (const omega of [OMEGA, 2 * Math.PI * 1000, 1e5, 1e7]) {
      const heard = single(part, alternating(omega))
      const expected = divide({ re: 1, im: 0 }, { re: 100, im: -1 / (omega * 0.1e-6) })
      assertClose('y' in heard && heard.y, expected, ROUNDING, `quench at ${omega} rad/s`)
    }
  })

  test('a quench of 0 Ω is its capacitor', () => {
    const part = { kind: 'quench', ...ends, resistance: '0 Ω', capacitance: '1 µF' }
    expect(single(part, alternating(1000))).toEqual(admittance(0, 1000 * 1e-6))
  })

  test('a strap has 10 mΩ when its sheet is silent, else what the sheet says, and open carries nothing', () => {
    expect(single({ kind: 'strap', ...ends }, DIRECT)).toEqual(equation(0.01)) // common practice, no source
    expect(single({ kind: 'strap', ...ends, resistance: '0 Ω' }, DIRECT)).toEqual(equation(0))
    expect(single({ kind: 'strap', ...ends, resistance: '3 Ω' }, DIRECT)).toEqual(equation(3))
    expect(single({ kind: 'strap', ...ends, resistance: 'open' }, DIRECT)).toEqual(OPEN)
    expect(single({ kind: 'strap', ...ends }, DIRECT, 'open')).toEqual(OPEN)
  })

  test('a contact has 50 mΩ when closed and 1 GΩ when open, by one branch equation', () => {
    const part = { kind: 'contact', ...ends, 'closed when': 'make' }
    expect(single(part, DIRECT, 'closed')).toEqual(equation(0.05)) // common practice, no source
    expect(single(part, DIRECT, 'open')).toEqual({ ...equation(1), a: 1e-9 }) // common practice, no source
  })

  test('a contact obeys the resistance and leakage that its sheet states', () => {
    const part = { kind: 'contact', ...ends, 'open when': 'break', resistance: '2 Ω', leakage: '4 MΩ' }
    expect(single(part, DIRECT, 'closed')).toEqual(equation(2))
    expect(single(part, DIRECT, 'open')).toEqual({ ...equation(1), a: 0.25e-6 })
    expect(single({ ...part, leakage: 'open' }, DIRECT, 'open')).toEqual(OPEN)
  })

  test('a voltage source holds V(from) − V(to), direct and alternating apart, rms at its angle', () => {
    const part = { kind: 'voltage-source', ...ends, direct: '10 V', alternating: '2 V at 90°' }
    expect(single(part, DIRECT)).toEqual(equation(0, 0, { re: 10, im: 0 }))
    const heard = single(part, alternating(1))
    assertClose('e' in heard && heard.e, { re: 0, im: 2 }, ROUNDING, 'source at 90°')
    expect(heard).toMatchObject({ form: 'equation', a: 1, z: { re: 0, im: 0 } })
  })

  test('a current source drives its current from its first end through itself to the second', () => {
    const part = { kind: 'current-source', ...ends, direct: '2 A', alternating: '4 A at 60°' }
    expect(single(part, DIRECT)).toEqual(admittance(0, 0, { re: 2, im: 0 }))
    const heard = single(part, alternating(1))
    assertClose('s' in heard && heard.s, { re: 2, im: 2 * Math.sqrt(3) }, ROUNDING, 'source at 60°')
  })

  test('what a source does not state is zero', () => {
    for (const point of [DIRECT, alternating(1)]) {
      expect(single({ kind: 'voltage-source', ...ends }, point)).toEqual(equation(0))
      expect(single({ kind: 'current-source', ...ends }, point)).toEqual(admittance(0))
    }
  })

  test('a bell sounds from its stated current, and stands still for alternating current alone', () => {
    const bell = {
      kind: 'bell',
      ...ends,
      resistance: '1 kΩ',
      inductance: '12 H',
      'rings from': '3 mA at 25 Hz',
    }
    const one = spec(bell)
    expect(kindOf(one).sounds?.(one)).toEqual({ current: 0.003, frequency: 25 })
    expect(reason(bell)).toBeUndefined()
    expect(kindOf(one).standIn?.(one, alternating(OMEGA))).toBe('bell with its clapper held still')
  })

  test('a kind that is not registered is refused at once', () => {
    expect(() => kindOf({ kind: 'spark' })).toThrow(TypeError)
  })
})

function reason(written: Parameters<typeof spec>[0]): string | undefined {
  const one = spec(written)
  return kindOf(one).standIn?.(one, DIRECT)
}
