import * as fc from 'fast-check'
import { deadZoneShare } from 'ringproof/parts/tone-ringer'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { add, divide, modulus, multiply, subtract } from '../../support/complex.ts'
import { SEED } from '../../support/seed.ts'
import { alternating, DIRECT, type Heard, single } from './_heard.ts'
import { newton } from './_newton.ts'

const bare = {
  kind: 'tone-ringer',
  from: 'p',
  to: 'q',
  threshold: '20 V',
  load: '8 kΩ',
  'rings from': '2 mA at 25 Hz',
}
const blocked = { ...bare, resistance: '2 kΩ', capacitance: '0.82 µF' }
const OMEGA = 2 * Math.PI * 25
const admittance = (heard: Heard) => {
  if (heard.form !== 'admittance') throw new Error('no admittance')
  return heard.y
}
const swung = (written: typeof bare, amplitude: number, bias = 0) =>
  admittance(
    single(written, {
      ...alternating(OMEGA),
      swing: () => amplitude / Math.SQRT2,
      direct: () => ({ voltage: bias, current: 0 }),
    }),
  )

/** First harmonic of the dead zone's output for bias + A sin θ over A, by the midpoint rule. */
function byFourier(threshold: number, amplitude: number, bias: number): number {
  const steps = 100_000
  let sum = 0
  for (let k = 0; k < steps; k += 1) {
    const sine = Math.sin((2 * Math.PI * (k + 0.5)) / steps)
    const v = bias + amplitude * sine
    sum += Math.sign(v) * Math.max(0, Math.abs(v) - threshold) * sine
  }
  return (2 * sum) / steps / amplitude
}

describe('a tone ringer', () => {
  test('passes of a sine what Fourier analysis of its current says, with and without bias', () => {
    for (const [amplitude, bias] of [
      [21, 0],
      [30, 0],
      [106, 0],
      [30, 12],
      [30, -15],
      [5, 18],
      [15, 60],
    ] as const) {
      // the midpoint rule over 100 000 steps leaves a kink about 1e-9 of the amplitude
      const numeric = byFourier(20, amplitude, bias)
      assertClose(
        deadZoneShare(20, amplitude, bias),
        numeric,
        { relative: 0, absolute: 1e-8 },
        `${amplitude} about ${bias}`,
      )
    }
  })

  test('passes nothing of a sine within its threshold, and nearly all of a very large one', () => {
    for (const amplitude of [0, 1, 19.99, 20]) expect(swung(bare, amplitude)).toEqual({ re: 0, im: 0 })
    // closed form for d = V₀/A small: 1 − 4d/π
    assertClose(swung(bare, 2e6).re, (1 - 4e-5 / Math.PI) / 8000, { relative: 1e-9 }, 'A → ∞')
    fc.assert(
      fc.property(fc.double({ min: 20.001, max: 1e5, noNaN: true }), (amplitude) => {
        const share = deadZoneShare(20, amplitude)
        expect(share).toBeGreaterThan(0)
        expect(share).toBeLessThan(1)
        expect(deadZoneShare(20, amplitude * 1.01)).toBeGreaterThan(share)
      }),
      { seed: SEED },
    )
  })

  test('at twice its threshold passes 1 − (2/π)(π/6 + √3/4)', () => {
    // closed form at d = 1/2
    const share = 1 - (2 / Math.PI) * (Math.PI / 6 + Math.sqrt(3) / 4)
    assertClose(deadZoneShare(20, 40), share, { relative: 1e-15 }, 'd = 1/2')
  })

  test('behind its own capacitor carries a current that both have in common', () => {
    const ohms = 10_000
    const capacitor = { re: 0, im: -1 / (OMEGA * 0.82e-6) }
    for (const amplitude of [20.5, 40, 106, 1000]) {
      const y = swung(blocked, amplitude)
      const current = multiply(y, { re: amplitude, im: 0 })
      const inner = subtract({ re: amplitude, im: 0 }, multiply(capacitor, current))
      const back = multiply({ re: deadZoneShare(20, modulus(inner)) / ohms, im: 0 }, inner)
      assertClose(current, back, { relative: 1e-12 }, `${amplitude} V`)
    }
    const far = swung(blocked, 1e9)
    const series = divide({ re: 1, im: 0 }, add({ re: ohms, im: 0 }, capacitor))
    assertClose(far, series, { relative: 1e-6 }, 'R and C in series')
  })

  test('behind its own capacitor carries no direct current and no small signal', () => {
    for (const voltage of [0, 50, -300])
      expect(single(blocked, { ...DIRECT, direct: () => ({ voltage, current: 0 }) })).toMatchObject({
        y: { re: 0, im: 0 },
        s: { re: 0, im: 0 },
      })
    expect(admittance(single(blocked, alternating(OMEGA)))).toEqual({ re: 0, im: 0 })
  })

  test('without a capacitor carries (V − V₀)/R of direct current beyond its threshold', () => {
    assertClose(newton(bare, 50, 2000).current, 0.003, { relative: 1e-14 }, '50 V')
    assertClose(newton(bare, -50, 2000).current, -0.003, { relative: 1e-14 }, '−50 V')
    expect(newton(bare, 15, 2000).current).toBe(0)
  })
})
