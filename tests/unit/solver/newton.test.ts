import { all, type BigNumber, create } from 'mathjs'
import type { PartLaw } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, ask, circuit, problemsOf } from './_circuit.ts'

/** Newton rests when nothing changes by more than a billionth; its answer is then good to far more. */
const NINE_DIGITS = { relative: 1e-9 }
const big = create(all ?? {}, { number: 'BigNumber', precision: 40 })
const { bignumber, add, subtract, multiply, divide, pow, exp } = big

/** The root of a rising function by halving in forty digits. */
function root(rising: (x: BigNumber) => BigNumber, low: number, high: number): number {
  let [p, q] = [bignumber(low), bignumber(high)]
  for (let step = 0; step < 120; step += 1) {
    const middle = divide(add(p, q), 2) as BigNumber
    if (rising(middle).isNegative()) p = middle
    else q = middle
  }
  return Number(p)
}

describe('direct current through laws that bend', () => {
  // I = Is(exp(V/nVt) − 1) behind a resistor: the equation halved in forty digits; kT/q of the SI at 20 °C
  test.each([
    ['0.4 V', 0.4, '1 kΩ', 1000],
    ['5 V', 5, '1 kΩ', 1000],
    ['50 V', 50, '400 Ω', 400],
    ['250 V', 250, '1 Ω', 1],
  ])('a diode at %s behind a resistor', (voltage, e, resistance, r) => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: ${voltage}}
      r: {kind: resistor, from: p, to: q, resistance: ${resistance}}
      d: {kind: diode, from: q, to: earth, saturation current: 1 nA, emission: 1.5, temperature: 20 °C}
    `)
    const unit = 1.5 * (1.380649e-23 / 1.602176634e-19) * 293.15
    const current = root(
      (v) => {
        const through = multiply(1e-9, subtract(exp(divide(v, bignumber(unit)) as BigNumber), 1)) as BigNumber
        return subtract(through, divide(subtract(e, v), r) as BigNumber) as BigNumber
      },
      0,
      Math.min(e, 3),
    )
    const { i, v } = ask(net)
    assertClose(v('q'), current, NINE_DIGITS, 'drop of the diode')
    assertClose(i('d'), (e - current) / r, NINE_DIGITS, 'current of the diode')
  })

  test('a diode the wrong way round passes its saturation current and no more', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 50 V}
      r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
      d: {kind: diode, from: earth, to: q, saturation current: 1 nA}
    `)
    assertClose(ask(net).i('r'), 1e-9, NINE_DIGITS, 'saturation current')
  })

  // I = (V/V₁)^α behind a resistor: halved in forty digits
  test.each([
    [5, '1.2 V', 1.2, '250 V', 250, '10 Ω', 10],
    [30, '60 V', 60, '250 V', 250, '10 Ω', 10],
    [60, '1 V', 1, '250 V', 250, '1 Ω', 1],
    [60, '60 V', 60, '50 V', 50, '400 Ω', 400],
  ])('a varistor of exponent %d and %s', (alpha, unit, v1, voltage, e, resistance, r) => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: ${voltage}}
      r: {kind: resistor, from: p, to: q, resistance: ${resistance}}
      v: {kind: varistor, from: q, to: earth, voltage at 1 A: ${unit}, exponent: ${alpha}}
    `)
    const drop = root(
      (v) =>
        subtract(pow(divide(v, v1) as BigNumber, alpha), divide(subtract(e, v), r) as BigNumber) as BigNumber,
      0,
      e,
    )
    const { i, v } = ask(net)
    assertClose(v('q'), drop, NINE_DIGITS, 'voltage at the varistor')
    assertClose(i('v'), (e - drop) / r, { relative: 1e-9, absolute: 1e-15 }, 'current of the varistor')
  })

  // V = R₀ (I/I₀)^−½ · I = a·√I: with √I = x, r·x² + a·x − E = 0
  test('a transmitter that falls with the root of its current, by the quadratic', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 50 V}
      r: {kind: resistor, from: p, to: q, resistance: 800 Ω}
      t: {kind: transmitter, from: q, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
    `)
    const a = 150 * Math.sqrt(0.04)
    const x = (-a + Math.sqrt(a * a + 4 * 800 * 50)) / (2 * 800)
    assertClose(ask(net).i('t'), x * x, NINE_DIGITS, 'current of the transmitter')
  })

  test('small signals see the chord of a transmitter and the slope of a diode at their direct current', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 50 V, alternating: 1 mV}
      r: {kind: resistor, from: p, to: q, resistance: 800 Ω}
      t: {kind: transmitter, from: q, to: s, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
      d: {kind: diode, from: s, to: earth, saturation current: 1 nA, emission: 1}
    `)
    const direct = ask(net)
    const current = direct.i('t').re
    const chord = (direct.v('q', 's')?.re ?? 0) / current
    const slope = ((1.380649e-23 / 1.602176634e-19) * 293.15) / (current + 1e-9)
    assertClose(ask(net, alternating(1000)).i('r'), 1e-3 / (800 + chord + slope), NINE_DIGITS, 'small signal')
  })

  test('a bridge turns either polarity into one', () => {
    const fed = (voltage: string) =>
      ask(
        circuit(`
        e: {kind: voltage-source, from: p, to: earth, direct: ${voltage}}
        b: {kind: bridge, first: p, second: earth, plus: x, minus: y, drop: 0.7 V at 10 mA}
        r: {kind: resistor, from: x, to: y, resistance: 1 kΩ}
      `),
      ).i('r')
    assertClose(fed('-24 V'), fed('24 V'), NINE_DIGITS, 'either polarity')
    // 24 V less about two drops
    expect(fed('24 V').re).toBeGreaterThan(0.0224)
    expect(fed('24 V').re).toBeLessThan(0.0228)
  })

  test('diodes and varistors that hang on each other find their point from rest', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 250 V}
      r: {kind: resistor, from: p, to: q, resistance: 5 Ω}
      d1: {kind: diode, from: q, to: s, saturation current: 1 pA}
      v1: {kind: varistor, from: s, to: u, voltage at 1 A: 60 V, exponent: 30}
      d2: {kind: diode, from: u, to: w, saturation current: 1 nA}
      v2: {kind: varistor, from: w, to: earth, voltage at 1 A: 1.2 V, exponent: 5}
      d3: {kind: diode, from: earth, to: w, saturation current: 1 nA}
    `)
    const { i, v } = ask(net)
    const sum = ['q', 's', 'u', 'w'].map((node, k, all) => v(node, all[k + 1] ?? 'earth')?.re ?? Number.NaN)
    expect(Math.abs(sum.reduce((total, one) => total + one, 0) + 5 * i('r').re - 250)).toBeLessThan(1e-9)
    assertClose(i('v1'), i('r').re, NINE_DIGITS, 'the same current all along')
    assertClose(((v('s', 'u')?.re ?? 0) / 60) ** 30, i('r').re, NINE_DIGITS, 'the law of the varistor')
  })

  test('a current that nothing can carry is a contradiction', () => {
    const net = circuit(`
      j: {kind: current-source, from: earth, to: q, direct: 1 A}
      d: {kind: diode, from: earth, to: q, saturation current: 1 nA}
    `)
    expect(problemsOf(net)[0]?.code).toBe('contradiction')
  })

  test('a law that no voltage satisfies has no point, and the part is named with its line', () => {
    const plain = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 1 V}
      r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
      x: {kind: varistor, from: q, to: earth, voltage at 1 A: 1 V, exponent: 2}
    `)
    // i = 1 + v² A: at least 1 A, which 1 V behind 1 kΩ never gives
    const strange: PartLaw = {
      ...(plain.parts[2]?.law as PartLaw),
      settle: (_spec, _branch, next) => next,
      law(_spec, at, _gate, sink) {
        const v = at.direct?.(0).voltage ?? 0
        sink.admittance(0, 2 * v, 0, 1 - v * v)
      },
    }
    const parts = plain.parts.map((part) => (part.name === 'x' ? { ...part, law: strange } : part))
    const net = { ...plain, parts }
    const [problem] = problemsOf(net)
    expect(problem?.code).toBe('no-convergence')
    expect(problem?.found).toMatch(/^net\/x, off its law by /)
    expect(problem?.place).toMatchObject({ file: 'net.yaml', line: 7 })
  })
})

describe('alternating current through a tone ringer', () => {
  const net = (volts: string) =>
    circuit(`
      e: {kind: voltage-source, from: p, to: earth, alternating: ${volts}}
      c: {kind: capacitor, from: p, to: q, capacitance: 1.8 µF}
      t: {kind: tone-ringer, from: q, to: earth, threshold: 12 V, load: 8 kΩ, rings from: 2 mA at 25 Hz}
    `)

  test('nothing flows below its threshold', () => {
    assertClose(ask(net('8 V'), alternating(25)).i('t'), 0, { relative: 0, absolute: 1e-15 }, 'silent')
  })

  // N(A) = (1/R)(1 − (2/π)(asin d + d√(1 − d²))), d = V₀/A: Gelb and Vander Velde, from memory
  test('above it the voltage across it agrees with the describing function that it is solved with', () => {
    const { i, v, solution } = ask(net('75 V'), alternating(25))
    const across = v('q')
    const size = Math.hypot(across?.re ?? 0, across?.im ?? 0) * Math.SQRT2
    const d = 12 / size
    const conductance = (1 - (2 / Math.PI) * (Math.asin(d) + d * Math.sqrt(1 - d * d))) / 8000
    assertClose(Math.hypot(i('t').re, i('t').im), (conductance * size) / Math.SQRT2, NINE_DIGITS, 'current')
    expect([...solution.standIns.keys()]).toEqual([
      'tone ringer by its describing function, the fundamental alone: 3 %',
    ])
  })
})
