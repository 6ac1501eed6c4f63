import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, DIRECT, single } from './_heard.ts'
import { crossing } from './_high-precision.ts'
import { newton } from './_newton.ts'

const ends = { from: 'p', to: 'q' }
const transmitter = (p: number) => ({
  kind: 'transmitter',
  ...ends,
  resistance: '150 Ω at 40 mA',
  'falls with exponent': p,
})
const regulator = (q: number) => ({
  kind: 'current-resistor',
  ...ends,
  resistance: '20 Ω at 20 mA',
  'rises with exponent': q,
})
const at = (current: number) => ({ direct: () => ({ voltage: 0, current }) })
const ohms = (written: Parameters<typeof single>[0], current: number, point = alternating(6000)) => {
  const heard = single(written, { ...point, ...at(current) })
  if (heard.form !== 'equation') throw new Error('no equation')
  return heard.z.re
}

describe('a transmitter', () => {
  test('has its stated resistance at its stated current, and (I/I₀)^−p of it elsewhere', () => {
    // closed forms of design 6: p = 0.5, a quarter of the current is twice the resistance
    assertClose(ohms(transmitter(0.5), 0.04), 150, { relative: 1e-15 }, 'at 40 mA')
    assertClose(ohms(transmitter(0.5), 0.01), 300, { relative: 1e-15 }, 'at 10 mA')
    assertClose(ohms(transmitter(0.5), -0.16), 75, { relative: 1e-15 }, 'at 160 mA the other way')
  })

  test('no longer changes below 5 mA, and is that resistance at rest', () => {
    const rest = 150 * Math.sqrt(8)
    for (const current of [0, 0.001, -0.004999, 0.005])
      assertClose(ohms(transmitter(0.5), current), rest, { relative: 1e-15 }, `${current} A`)
    assertClose(ohms(transmitter(0.5), 0.001, DIRECT), rest, { relative: 1e-15 }, 'direct')
  })

  test('kinks at 5 mA: one voltage, and a tangent 1 − p as steep from there on', () => {
    const side = (current: number) => single(transmitter(0.5), { ...DIRECT, ...at(current) })
    const [below, above] = [side(0.005 - 1e-12), side(0.005)]
    if (below.form !== 'equation' || above.form !== 'equation') throw new Error('no equation')
    assertClose(above.z.re, below.z.re / 2, { relative: 1e-12 }, 'tangent')
    assertClose(above.z.re * 0.005 + above.e.re, below.z.re * 0.005, { relative: 1e-12 }, 'voltage')
  })

  test('meets a feed where bisection finds it', () => {
    // R₀ I₀^p I^(1−p) + R I = E above 5 mA
    const current = crossing(
      (i) =>
        i
          .pow(0.2)
          .times(150)
          .times(0.04 ** 0.8)
          .plus(i.times(800))
          .minus(50),
      0.005,
      1,
    )
    assertClose(newton(transmitter(0.8), 50, 800).current, current, { relative: 1e-12 }, 'feed')
  })
})

describe('a resistance that rises with its current', () => {
  test('has its stated resistance at its stated current, and (I/I₀)^q of it elsewhere', () => {
    assertClose(ohms(regulator(1.5), 0.02), 20, { relative: 1e-15 }, 'at 20 mA')
    assertClose(ohms(regulator(1.5), 0.08), 160, { relative: 1e-15 }, 'at 80 mA')
    assertClose(ohms(regulator(1.5), -0.005), 2.5, { relative: 1e-15 }, 'at 5 mA the other way')
  })

  test('no longer changes below a hundredth of its stated current', () => {
    for (const current of [0, 1e-5, -1.9e-4, 2e-4])
      assertClose(ohms(regulator(1.5), current), 0.02, { relative: 1e-14 }, `${current} A`)
  })

  test('meets a feed where bisection finds it', () => {
    for (const q of [1.5, 4]) {
      const current = crossing((i) => i.div(0.02).pow(q).times(20).times(i).plus(i.times(10)).minus(50), 0, 5)
      assertClose(newton(regulator(q), 50, 10).current, current, { relative: 1e-12 }, `q = ${q}`)
    }
  })

  test('with an exponent of 0 is a resistor', () => {
    expect(single(regulator(0), DIRECT)).toMatchObject({ a: 1, z: { re: 20 }, e: { re: 0 } })
  })
})
