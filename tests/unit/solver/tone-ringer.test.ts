import { describe, expect, test } from 'vitest'
import { alternating, ask, circuit } from './_circuit.ts'

/**
 * The fundamental of the current, A rms, from the course in time: a sine of e volts rms behind 400 Ω drives a capacitor in
 * series with a dead zone and its load; periods are run until the course repeats itself.
 */
function inTime(e: number, farads: number, threshold: number, ohms: number): number {
  const [steps, periods, omega] = [20_000, 12, 2 * Math.PI * 25]
  const step = 1 / 25 / steps
  let [held, re, im] = [0, 0, 0]
  for (let period = 0; period < periods; period += 1) {
    re = im = 0
    for (let n = 0; n < steps; n += 1) {
      const phase = omega * n * step
      const rest = e * Math.SQRT2 * Math.cos(phase) - held
      const beyond = Math.sign(rest) * Math.max(0, Math.abs(rest) - threshold)
      const current = beyond / (ohms + 400)
      held += (step * current) / farads
      re += current * Math.cos(phase)
      im -= current * Math.sin(phase)
    }
  }
  return (Math.SQRT2 * Math.hypot(re, im)) / steps
}

describe('a tone ringer by its describing function', () => {
  test.each([
    [75, 1, 20, 6],
    [40, 1, 20, 6],
    [25, 1, 30, 6],
    [75, 0.47, 30, 3],
    [100, 0.22, 60, 0.5],
    [40, 0.47, 30, 1],
    [50, 1.8, 12, 8],
    [20, 1.8, 12, 8],
    [75, 0.22, 20, 8],
    [75, 1, 12, 0.5],
  ])('at %d V, %d µF, %d V and %d kΩ is off by no more than it says', (e, farads, threshold, load) => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, alternating: ${e} V}
      r: {kind: resistor, from: p, to: q, resistance: 400 Ω}
      t: {kind: tone-ringer, from: q, to: earth, threshold: ${threshold} V, load: ${load} kΩ, capacitance: ${farads} µF, rings from: 1 mA at 25 Hz}
    `)
    const { i, solution } = ask(net, alternating(25))
    const [reason = ''] = solution.standIns.keys()
    const said = Number(/(\d+) %$/.exec(reason)?.[1])
    const found = Math.hypot(i('t').re, i('t').im)
    const off = 100 * Math.abs(found / inTime(e, farads * 1e-6, threshold, load * 1e3) - 1)
    expect(off).toBeLessThan(said)
    expect(said).toBeLessThanOrEqual(36)
  })
})
