import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, DIRECT, single } from './_heard.ts'
import { crossing } from './_high-precision.ts'
import { type Newton, newton } from './_newton.ts'

const part = (exponent: number, unit: string = '60 V') => ({
  kind: 'varistor',
  from: 'p',
  to: 'q',
  'voltage at 1 A': unit,
  exponent,
})
const at = (voltage: number) => ({ direct: () => ({ voltage, current: 0 }) })

describe('a varistor', () => {
  test.each([5, 30, 60])(
    'of exponent %i meets a source behind a resistance where bisection finds it',
    (alpha) => {
      for (const [volts, ohms] of [
        [250, 0.5],
        [250, 100],
        [80, 1000],
      ] as const) {
        // V + R (V/V₁)^α = E, its left side rising with V
        const voltage = crossing((v) => v.plus(v.div(60).pow(alpha).times(ohms)).minus(volts), 0, volts)
        const found: Newton = newton(part(alpha), volts, ohms)
        assertClose(found.voltage, voltage, { relative: 1e-12 }, `${alpha} at ${volts} V behind ${ohms} Ω`)
        assertClose(newton(part(alpha), -volts, ohms).voltage, -voltage, { relative: 1e-12 }, 'the other way')
        expect(found.steps).toBeLessThan(30)
      }
    },
  )

  test('of exponent 1 is a resistor of its voltage at 1 A, and bends nowhere', () => {
    expect(single({ ...part(1) }, DIRECT)).toEqual({
      form: 'admittance',
      y: { re: 1 / 60, im: 0 },
      s: { re: 0, im: 0 },
    })
  })

  test('carries 1 A at its voltage at 1 A, whatever its exponent, and its slope there is α/V₁', () => {
    for (const alpha of [2, 5, 60]) {
      const heard = single(part(alpha), { ...DIRECT, ...at(60) })
      if (heard.form !== 'admittance') throw new Error('no admittance')
      assertClose(heard.y.re, alpha / 60, { relative: 1e-15 }, 'slope')
      assertClose(heard.y.re * 60 + heard.s.re, 1, { relative: 1e-13 }, 'current')
    }
  })

  test('is for small signals its slope at the direct voltage, and open at rest', () => {
    const slope = (voltage: number) => single(part(5), { ...alternating(100), ...at(voltage) })
    // closed form: α/V₁ · (1/2)^(α−1)
    expect(slope(30)).toMatchObject({ y: { re: (5 / 60) * 0.0625, im: 0 }, s: { re: 0, im: 0 } })
    expect(slope(-30)).toEqual(slope(30))
    expect(single(part(5), alternating(100))).toMatchObject({ y: { re: 0, im: 0 } })
  })

  test('starts from the chord to its knee, which carries no current at 0 V, so that two in a row are found', () => {
    const heard = single(part(30), { ...DIRECT, ...at(0) })
    if (heard.form !== 'admittance') throw new Error('no admittance')
    expect(heard.y.re).toBeGreaterThan(0)
    expect(heard.s.re).toBe(0)
    expect(single(part(30), DIRECT)).toMatchObject({ y: { re: 0 } })
  })
})
