import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { SEED } from '../support/seed.ts'
import { circuitWorld, currentOf, differencesOf, slopesOf, voltageAt } from '../unit/spread/_circuit.ts'

const SHARP = { relative: 1e-8 }

describe('the slope of a reading, by the adjoint method, is that of the closed form', () => {
  // Closed form: V = E R2/(R1 + R2), so that dV/d ln R2 = −dV/d ln R1 = E R1 R2/(R1 + R2)²; any textbook, from memory
  test('of a divider', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V ± 1 %}',
      'r1: {kind: resistor, from: p, to: q, resistance: 3 kΩ ± 5 %}',
      'r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ ± 5 %}',
    )
    const { by, slopes } = slopesOf(world, voltageAt(world.net, 'q'))
    expect(by).toBe('adjoint')
    assertClose(slopes['r1 resistance'], (-10 * 3 * 2) / 25, SHARP, 'r1')
    assertClose(slopes['r2 resistance'], (10 * 3 * 2) / 25, SHARP, 'r2')
    assertClose(slopes['e direct'], 4, SHARP, 'e')
  })

  // Closed form: |H| = 1/√(1 + x²) with x = ωRC, so that d|H|/d ln R = d|H|/d ln C = −x²/(1 + x²)^(3/2)
  test('of a resistor and a capacitor', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, alternating: 1 V at 0°}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ ± 5 %}',
      'c: {kind: capacitor, from: q, to: earth, capacitance: 0.2 µF ± 10 %}',
    )
    const x = 2 * Math.PI * 1000 * 1000 * 0.2e-6
    const { by, slopes } = slopesOf(world, voltageAt(world.net, 'q', 1000))
    expect(by).toBe('adjoint')
    for (const one of ['r resistance', 'c capacitance'])
      assertClose(slopes[one], -(x ** 2) / (1 + x ** 2) ** 1.5, SHARP, one)
  })

  // Closed form, at balance R1 R4 = R2 R3: V = E (R2/(R1 + R2) − R4/(R3 + R4)), one arm's slope ± E R1 R2/(R1 + R2)²
  test('of a bridge at balance, where the reading itself is nil', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 6 V}',
      'r1: {kind: resistor, from: p, to: q, resistance: 100 Ω ± 1 %}',
      'r2: {kind: resistor, from: q, to: earth, resistance: 200 Ω ± 1 %}',
      'r3: {kind: resistor, from: p, to: s, resistance: 1 kΩ ± 1 %}',
      'r4: {kind: resistor, from: s, to: earth, resistance: 2 kΩ ± 1 %}',
    )
    const plan = voltageAt(world.net, 'q')
    const [tap] = plan.taps
    const other = voltageAt(world.net, 's').taps[0]
    if (tap === undefined || other === undefined || !('voltage' in tap && 'voltage' in other))
      throw new Error('no taps')
    const across = { ...plan, taps: [{ ...tap, voltage: [tap.voltage[0], other.voltage[0]] as const }] }
    const { slopes } = slopesOf(world, across)
    const arm = (6 * 100 * 200) / 300 ** 2
    const signs = { r1: -1, r2: 1, r3: 1, r4: -1 }
    for (const [name, sign] of Object.entries(signs))
      assertClose(slopes[`${name} resistance`], sign * arm, SHARP, name)
  })

  // Closed form: at resonance the capacitor holds Q times the voltage, Q = √(L/C)/R; with C alone moved by δ the
  // reactance left over is X δ: |Vc| = E X_C/|R + j(X_L − X_C)| and d|Vc|/d ln C = −E Q there
  test('of a series resonance', () => {
    const [henries, farads, ohms] = [0.1, 1e-6, 20]
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, alternating: 1 V at 0°}',
      `r: {kind: resistor, from: p, to: q, resistance: ${ohms} Ω ± 5 %}`,
      `l: {kind: inductor, from: q, to: s, inductance: ${henries} H ± 5 %, resistance: 0 Ω}`,
      'c: {kind: capacitor, from: s, to: earth, capacitance: 1 µF ± 5 %}',
    )
    const frequency = 1 / (2 * Math.PI * Math.sqrt(henries * farads))
    const q = Math.sqrt(henries / farads) / ohms
    const { by, slopes } = slopesOf(world, voltageAt(world.net, 's', frequency))
    expect(by).toBe('adjoint')
    const close = { relative: 1e-5 }
    assertClose(slopes['r resistance'], -q, close, 'r')
    assertClose(slopes['c capacitance'], -q, close, 'c')
    assertClose(slopes['l inductance'], 0, { relative: 0, absolute: 1e-4 * q }, 'l')
  })

  // Closed form: I = V/R(I), R = R0 (I/I0)^−p gives I^(1 − p) = V/(R0 I0^p), so that d ln I/d ln R0 = −1/(1 − p)
  test('of a transmitter, whose law bends', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 6 V}',
      't: {kind: transmitter, from: p, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}',
    )
    const plan = currentOf(world.net, 't')
    const current = new Float64Array([6 / 150]).map((ratio) => ratio ** 2 / 0.04)[0] ?? 0
    const { by, slopes } = slopesOf(world, plan)
    expect(by).toBe('adjoint')
    assertClose(slopes['t resistance'], -current / (1 - 0.5), { relative: 1e-7 }, 't')
  })
})

describe('and that of differences of whole solves', () => {
  test('for small signals about a direct point that moves with the values', () => {
    const world = circuitWorld(
      'e: {kind: voltage-source, from: p, to: earth, direct: 24 V ± 2 %, alternating: 1 V at 0°}',
      'r: {kind: resistor, from: p, to: q, resistance: 400 Ω ± 5 %}',
      't: {kind: transmitter, from: q, to: s, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}',
      'v: {kind: varistor, from: s, to: earth, voltage at 1 A: 30 V ± 10 %, exponent: 4}',
      'load: {kind: resistor, from: s, to: earth, resistance: 600 Ω ± 5 %}',
      'c: {kind: capacitor, from: q, to: earth, capacitance: 0.1 µF ± 10 %}',
    )
    for (const node of ['q', 's']) {
      const plan = voltageAt(world.net, node, 1000)
      const { by, slopes } = slopesOf(world, plan)
      expect(by).toBe('adjoint')
      const there = differencesOf(world, plan)
      Object.values(slopes).forEach((slope, k) => {
        assertClose(slope, there[k] ?? Number.NaN, { relative: 1e-5, absolute: 1e-8 }, `${node} ${k}`)
      })
      expect(slopes['e direct']).not.toBe(0)
    }
  })

  test('in networks drawn by chance', () => {
    const parts = fc.array(
      fc.record({
        up: fc.nat(99),
        size: fc.integer({ min: 1, max: 99 }),
        sort: fc.constantFrom('resistor', 'capacitor', 'inductor'),
      }),
      { minLength: 2, maxLength: 7 },
    )
    const words = {
      resistor: (size: number) => `resistance: ${size * 10} Ω ± 5 %`,
      capacitor: (size: number) => `capacitance: ${size * 10} nF ± 5 %`,
      inductor: (size: number) => `inductance: ${size} mH ± 5 %, resistance: 7 Ω`,
    }
    fc.assert(
      fc.property(parts, (drawn) => {
        const world = circuitWorld(
          'e: {kind: voltage-source, from: n0, to: earth, alternating: 1 V at 0°}',
          ...drawn.map(
            ({ up, size, sort }, k) =>
              `x${k}: {kind: ${sort}, from: n${k + 1}, to: n${up % (k + 1)}, ${words[sort](size)}}`,
          ),
          `end: {kind: resistor, from: n${drawn.length}, to: earth, resistance: 300 Ω ± 5 %}`,
        )
        const plan = voltageAt(world.net, `n${drawn.length}`, 1600)
        const { slopes } = slopesOf(world, plan)
        const there = differencesOf(world, plan)
        Object.values(slopes).forEach((slope, k) => {
          assertClose(slope, there[k] ?? Number.NaN, { relative: 1e-4, absolute: 1e-7 }, `value ${k}`)
        })
      }),
      { seed: SEED, numRuns: 30 },
    )
  })
})
