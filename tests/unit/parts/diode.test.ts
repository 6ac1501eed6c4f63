import { bridge } from 'ringproof/parts/bridge'
import { diode } from 'ringproof/parts/diode'
import type { JunctionSpec } from 'ringproof/parts/junction'
import { junctionCurrent, junctionOf, junctionVoltage } from 'ringproof/parts/junction'
import type { LawPoint } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { accepts, alternating, DIRECT, lawOf, single, spec } from './_heard.ts'
import { crossing } from './_high-precision.ts'
import { newton } from './_newton.ts'

const ends = { from: 'p', to: 'q' }
const plain = { kind: 'diode', ...ends, 'saturation current': '1 nA', emission: 1, temperature: '27 °C' }
const junction = (written: { readonly kind: string }) => junctionOf(spec(written) as unknown as JunctionSpec)
const problems = (more: object) => diode.check?.(spec({ kind: 'diode', ...ends, ...more }) as never) ?? []

describe('a diode', () => {
  test('has the thermal voltage kT/q of the exact constants', () => {
    // CODATA 2018: k = 8.617 333 262… e-5 eV/K; 27 °C is 300.15 K
    assertClose(junction(plain).unit, 8.617333262e-5 * 300.15, { relative: 1e-10 }, 'kT/q')
    assertClose(
      junction({ ...plain, emission: 2 } as never).unit,
      2 * junction(plain).unit,
      { relative: 1e-15 },
      'n',
    )
  })

  test.each(['0 Ω', '0.5 Ω', '100 Ω', '10 kΩ'])(
    'with %s in series carries what bisection finds',
    (resistance) => {
      const one = junction({ ...plain, resistance } as never)
      for (const volts of [-0.3, -0.01, 1e-6, 0.01, 0.2, 0.45, 0.7, 3, 50]) {
        if (one.resistance === 0 && volts > 3) continue // no current that anything could carry
        // v = n V_t ln(1 + i/I_s) + R i, rising with i
        const most =
          one.resistance === 0 ? 1e-9 * Math.expm1(volts / one.unit) * 2 + 1e-12 : volts / one.resistance
        const current = crossing(
          (i) => i.div(1e-9).plus(1).ln().times(one.unit).plus(i.times(one.resistance)).minus(volts),
          volts < 0 ? -1e-9 * (1 - 1e-12) : 0,
          volts < 0 ? 0 : most,
        )
        // the exponent amplifies a rounding of the voltage by v / n V_t
        const allowed = { relative: 1e-14 * (1 + Math.abs(volts / one.unit)) }
        assertClose(junctionCurrent(one, volts).value, current, allowed, `${volts} V with ${resistance}`)
      }
    },
  )

  test('carries nothing at 0 V, and next to its saturation current backwards', () => {
    for (const resistance of ['0 Ω', '100 Ω']) {
      const one = junction({ ...plain, resistance } as never)
      expect(Math.abs(junctionCurrent(one, 0).value)).toBeLessThan(1e-24)
      assertClose(junctionCurrent(one, -50).value, -1e-9, { relative: 1e-12 }, 'backwards')
    }
  })

  test('given by its drop has that drop at that current', () => {
    const one = junction({ kind: 'diode', ...ends, drop: '0.7 V at 10 mA', resistance: '1 Ω' } as never)
    assertClose(junctionVoltage(one, 0.01), 0.7, { relative: 1e-14 }, 'drop')
    assertClose(junctionCurrent(one, 0.7).value, 0.01, { relative: 1e-12 }, 'current')
  })

  test('is for small signals its slope (I + I_s)/n V_t at the direct current', () => {
    const { voltage, current } = newton(plain, 5, 1000)
    const heard = single(plain, { ...alternating(100), direct: () => ({ voltage, current }) })
    const slope = (current + 1e-9) / junction(plain).unit // closed form, by the law's own derivative
    expect(heard).toMatchObject({ form: 'admittance', s: { re: 0, im: 0 } })
    assertClose('y' in heard && heard.y, slope, { relative: 1e-12 }, 'slope')
  })

  test('says where it is at rest that alternating figures hold for very small signals alone', () => {
    const said = (voltage: number, current: number, analysis: LawPoint['analysis'] = 'alternating') =>
      diode.standIn?.(spec(plain) as never, { analysis, omega: 1, direct: () => ({ voltage, current }) })
    expect(said(0, 0)).toMatch(/at rest/)
    expect(said(0, 0, 'direct')).toBeUndefined()
    expect(said(0.7, 0.01)).toBeUndefined()
    expect(said(-50, -1e-9)).toBeUndefined()
  })

  test('says one of drop and saturation current, and a drop that its resistance leaves room for', () => {
    expect(problems({ drop: '0.7 V at 10 mA' })).toEqual([])
    expect(problems({})).toMatchObject([{ code: 'key-missing' }])
    expect(problems({ drop: '0.7 V at 10 mA', 'saturation current': '1 nA' })).toMatchObject([
      { code: 'key-doubled' },
    ])
    expect(problems({ drop: '0.7 V at 10 mA', resistance: '80 Ω' })).toMatchObject([
      { code: 'quantity-out-of-range', at: ['drop'] },
    ])
    expect(problems({ drop: '50 V at 10 mA' })).toHaveLength(1)
    expect(accepts({ kind: 'diode', ...ends, drop: '0.7 V at 0 mA' })).toBe(false)
    expect(accepts({ ...plain, emission: 4 })).toBe(false)
  })
})

describe('a bridge', () => {
  const written = { kind: 'bridge', first: 'A1', second: 'A2', plus: 'p', minus: 'm', drop: '0.7 V at 10 mA' }

  test('is four diodes, two into plus and two out of minus', () => {
    expect(bridge.branches(spec(written) as never)).toEqual([
      { suffix: 'first-plus', from: 'A1', to: 'p', form: 'admittance' },
      { suffix: 'second-plus', from: 'A2', to: 'p', form: 'admittance' },
      { suffix: 'minus-first', from: 'm', to: 'A1', form: 'admittance' },
      { suffix: 'minus-second', from: 'm', to: 'A2', form: 'admittance' },
    ])
  })

  test('states for each diode the law of a diode at its own voltage', () => {
    const volts = [0.7, -20, -3, 0.5]
    const at = { ...DIRECT, direct: (k: number) => ({ voltage: volts[k] ?? 0, current: 0 }) }
    const { branches } = lawOf(written, at)
    expect(bridge.standIn?.(spec(written) as never, { ...at, analysis: 'alternating' })).toBeUndefined()
    expect(bridge.standIn?.(spec(written) as never, alternating(1))).toMatch(/at rest/)
    volts.forEach((voltage, k) => {
      const alone = single(
        { kind: 'diode', ...ends, drop: '0.7 V at 10 mA' },
        { ...DIRECT, direct: () => ({ voltage, current: 0 }) },
      )
      expect(branches[k]).toEqual(alone)
    })
  })
})
