import type { BatteryRange } from 'ringproof/meter/instrument'
import { kickOf, thrown } from 'ringproof/meter/kick'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { bench, leads, NEEDLE, read } from './_bench.ts'

const OMEGA = 2 * Math.PI

/** θ'' = ω²·i − 2ω·θ' − ω²·θ by fourth-order Runge and Kutta, its highest value. */
function byIntegration(charge: number, tau: number, omega: number): number {
  const rate = (t: number, [theta, speed]: readonly [number, number]): readonly [number, number] => [
    speed,
    omega ** 2 * (charge / tau) * Math.exp(-t / tau) - 2 * omega * speed - omega ** 2 * theta,
  ]
  const step = Math.min(tau, 1 / omega) / 200
  const add = (p: readonly [number, number], q: readonly [number, number], h: number) =>
    [p[0] + h * q[0], p[1] + h * q[1]] as const
  let at: readonly [number, number] = [0, 0]
  let most = 0
  for (let t = 0; t < 6 / omega + 2 * tau; t += step) {
    const k1 = rate(t, at)
    const k2 = rate(t + step / 2, add(at, k1, step / 2))
    const k3 = rate(t + step / 2, add(at, k2, step / 2))
    const k4 = rate(t + step, add(at, k3, step))
    const sum = (k: 0 | 1) => (k1[k] + 2 * k2[k] + 2 * k3[k] + k4[k]) / 6
    at = add(at, [sum(0), sum(1)], step)
    most = Math.max(most, at[0])
  }
  return most
}

describe('a needle that is thrown', () => {
  // the equation of a critically damped movement, integrated step by step
  test.each([0.01, 0.1, 1 / OMEGA, 0.159, 0.5, 3])(
    'by a current that dies in %f s moves as its equation says',
    (tau) => {
      assertClose(thrown(tau, tau, OMEGA), byIntegration(tau, tau, OMEGA), { relative: 1e-5 }, 'throw')
    },
  )

  // the impulse response ω²·t·e^(−ωt) has its top ω/e at t = 1/ω
  test('by a short pulse goes by the charge alone, charge · ω / e', () => {
    assertClose(thrown(1e-3, 1e-6, OMEGA), (1e-3 * OMEGA) / Math.E, { relative: 1e-4 }, 'short')
    assertClose(thrown(1e-3, 0, OMEGA), (1e-3 * OMEGA) / Math.E, { relative: 1e-4 }, 'without length')
  })

  test('by a current that lasts goes all the way', () => {
    assertClose(thrown(1000, 1000, OMEGA), 1, { relative: 2e-3 }, 'long')
  })
})

describe('a kick', () => {
  const range = NEEDLE.instrument.ranges['ohms-x10k'] as BatteryRange
  const kick = (parts: readonly string[]) => {
    const on = bench(parts, NEEDLE)
    return kickOf(on.net, leads(on, 'p', 'q'), range, NEEDLE.instrument)
  }
  const capacitor = 'c: {kind: capacitor, from: p, to: q, capacitance: 2 µF}'

  // τ = (R + M)·C with M the range's own 200 kΩ; charge C·E, as seconds of the full current E/M
  test('through a capacitor dies with the resistance of the range and its capacitance', () => {
    const seen = kick([capacitor])
    assertClose(seen?.seconds, 200e3 * 2e-6, { relative: 1e-6 }, 'time')
    assertClose(seen?.reaches, thrown(0.4, 0.4, OMEGA), { relative: 1e-6 }, 'reach')
    assertClose(seen?.rests, 0, { relative: 0, absolute: 1e-9 }, 'rest')
  })

  test('through a resistor in series lasts longer and goes less far', () => {
    const seen = kick([
      'c: {kind: capacitor, from: p, to: m, capacitance: 2 µF}',
      'r: {kind: resistor, from: m, to: q, resistance: 100 kΩ}',
    ])
    assertClose(seen?.seconds, 300e3 * 2e-6, { relative: 1e-6 }, 'time')
    assertClose(seen?.reaches, thrown(0.4, 0.6, OMEGA), { relative: 1e-6 }, 'reach')
  })

  // R beside C on a battery behind M: the current falls from E/M to E/(M + R) with τ = C·(M ∥ R)
  test('with a leak beside it comes to rest at the leak', () => {
    const seen = kick([capacitor, 'r: {kind: resistor, from: p, to: q, resistance: 600 kΩ}'])
    assertClose(seen?.rests, 200 / 800, { relative: 1e-9 }, 'rest')
    assertClose(seen?.seconds, 150e3 * 2e-6, { relative: 1e-6 }, 'time')
    expect(seen!.reaches).toBeGreaterThan(seen!.rests + 0.1)
  })

  test('is none through a resistor, a coil, a tiny capacitor or nothing', () => {
    expect(kick(['r: {kind: resistor, from: p, to: q, resistance: 10 kΩ}'])).toBeUndefined()
    expect(kick(['l: {kind: inductor, from: p, to: q, inductance: 12 H, resistance: 1 kΩ}'])).toBeUndefined()
    expect(kick(['c: {kind: capacitor, from: p, to: q, capacitance: 1 nF}'])).toBeUndefined()
  })

  test('belongs to a reading of a needle that is open, with the capacitor as its way', () => {
    const reading = read([capacitor], ['p', 'q'], undefined, NEEDLE)
    expect(reading).toMatchObject({ value: null, state: 'open', parts: ['trial/c'] })
    expect(reading.kick?.reaches).toBeGreaterThan(0.4)
    expect(read([capacitor], ['p', 'q']).kick).toBeUndefined()
  })
})
