import type { PartLaw } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, ask, branch, circuit, DIRECT, node, problemsOf } from './_circuit.ts'

const NINE_DIGITS = { relative: 1e-9 }
const led = (name: string, from: string, to: string, drop = '2 V at 10 mA') =>
  `${name}: {kind: diode, from: ${from}, to: ${to}, drop: ${drop}}`
const source = (volts: string, ohms: string) =>
  `e: {kind: voltage-source, from: s, to: earth, direct: ${volts}}\nr: {kind: resistor, from: s, to: p, resistance: ${ohms}}`

describe('parts that bend, one behind the other', () => {
  test('two light-emitting diodes share what the source leaves them, and the middle has its voltage', () => {
    const { i, v } = ask(
      circuit(`${source('5 V', '100 Ω')}\n${led('d1', 'p', 'q')}\n${led('d2', 'q', 'earth')}`),
    )
    assertClose(v('q'), (v('p')?.re ?? 0) / 2, NINE_DIGITS, 'the middle')
    expect(i('r').re).toBeGreaterThan(0.009)
    expect(i('r').re).toBeLessThan(0.011)
  })

  test('varistors and a diode agree on one current, by the law of each', () => {
    const net = circuit(`${source('5 V', '10 Ω')}
      v1: {kind: varistor, from: p, to: q, voltage at 1 A: 1.2 V, exponent: 5}
      v2: {kind: varistor, from: q, to: w, voltage at 1 A: 1.2 V, exponent: 5}
      d: {kind: diode, from: w, to: earth, saturation current: 1e-14 A, emission: 1}`)
    const { i, v } = ask(net)
    const current = i('r').re
    // bisection of 10 Ω·I + 2·1.2 V·I^(1/5) + nV_t·ln(1 + I/I_s) = 5 V at 20 °C, by hand
    expect(Math.abs(current - 0.2415)).toBeLessThan(1e-4)
    assertClose(v('p', 'q'), 1.2 * current ** 0.2, NINE_DIGITS, 'law of the first varistor')
    assertClose(v('q', 'w'), 1.2 * current ** 0.2, NINE_DIGITS, 'law of the second')
  })

  test('two dead zones in a row conduct once the source reaches beyond both', () => {
    const ringer = (name: string, from: string, to: string) =>
      `${name}: {kind: tone-ringer, from: ${from}, to: ${to}, threshold: 20 V, load: 1 kΩ, rings from: 1 mA at 25 Hz}`
    const net = circuit(`${source('48 V', '1 kΩ')}\n${ringer('t1', 'p', 'q')}\n${ringer('t2', 'q', 'earth')}`)
    assertClose(ask(net).i('r'), 8 / 3000, NINE_DIGITS, '(48 − 2·20) V over 3 kΩ')
  })

  test('two gas tubes in a row strike when each has its share of more than both hold off', () => {
    const tubes =
      't1: {kind: gas-tube, from: p, to: q, holds off: 230 V}\nt2: {kind: gas-tube, from: q, to: earth, holds off: 230 V}'
    // 20 V of arc and 1 Ω in each
    const struck = ask(circuit(`${source('600 V', '1 kΩ')}\n${tubes}`))
    assertClose(struck.i('r'), 560 / 1002, NINE_DIGITS, 'both struck')
    expect(ask(circuit(`${source('400 V', '1 kΩ')}\n${tubes}`)).i('r').re).toBe(0)
  })

  test('reversed diodes that are not quite alike pass what the lesser one passes', () => {
    const net = circuit(`${source('50 V', '1 kΩ')}
      d1: {kind: diode, from: q, to: p, saturation current: 1 nA}
      d2: {kind: diode, from: earth, to: q, saturation current: 1.1 nA}`)
    assertClose(ask(net).i('r'), 1e-9, { relative: 1e-6 }, 'the lesser saturation current')
  })
})

describe('what contradicts and what does not', () => {
  test('a real contradiction stays one beside a part that bends', () => {
    const net = circuit(`
      e1: {kind: voltage-source, from: p, to: earth, direct: 5 V}
      e2: {kind: voltage-source, from: p, to: earth, direct: 6 V}
      r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
      d: {kind: diode, from: q, to: earth, drop: 0.7 V at 10 mA}
    `)
    expect(problemsOf(net)[0]?.code).toBe('contradiction')
  })

  test('a voltage in series with an open circuit drives nothing and contradicts nothing', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: p, to: q, alternating: 1 V}
      c: {kind: capacitor, from: q, to: s, capacitance: 1 µF}
      l: {kind: inductor, from: s, to: t, inductance: 1 H, resistance: 10 Ω}
      r: {kind: resistor, from: u, to: earth, resistance: 1 kΩ}
    `)
    expect(Math.abs(ask(net, alternating(1000)).i('c').re)).toBeLessThan(1e-15)
  })
})

describe('a question with other values', () => {
  const NET = () =>
    circuit(`
      e: {kind: voltage-source, from: s, to: earth, direct: 48 V, alternating: 1 V}
      r: {kind: resistor, from: s, to: p, resistance: 1 kΩ}
      t: {kind: transmitter, from: p, to: earth, resistance: 300 Ω at 20 mA, falls with exponent: 0}
    `)
  const bent = (exponent: number) => {
    const net = NET()
    const part = net.parts.findIndex(({ name }) => name === 't')
    const spec = { ...net.parts[part]?.spec, kind: 'transmitter', 'falls with exponent': exponent }
    return { net, instead: [{ part, spec }] }
  }

  test('finds the point of a part that begins to bend by them', () => {
    const { net, instead } = bent(0.5)
    const direct = ask(net, { ...DIRECT, instead })
    const chord = (direct.v('p')?.re ?? 0) / direct.i('t').re
    const { v } = ask(net, { ...alternating(1000), instead })
    assertClose(v('p'), chord / (1000 + chord), NINE_DIGITS, 'small signal')
  })

  test('puts a resistance within a part that bends with its voltage', () => {
    const plain = circuit(`${source('5 V', '1 kΩ')}\n${led('d', 'p', 'earth')}`)
    const longer = circuit(`${source('5 V', '1.5 kΩ')}\n${led('d', 'p', 'earth')}`)
    const within = [{ branch: branch(plain, 'd'), ohms: 500 }]
    assertClose(ask(plain, { ...DIRECT, within }).i('d'), ask(longer).i('d'), NINE_DIGITS, 'current')
  })

  test('takes a resistance without end between two nodes for nothing', () => {
    const net = circuit(source('5 V', '1 kΩ'))
    const bridges = [{ from: node(net, 'p'), to: 0, ohms: Number.POSITIVE_INFINITY }]
    expect(ask(net, { ...DIRECT, bridges }).i('r').re).toBe(0)
  })

  test('refuses 0 Ω in place of a resistance with words, not with a failure of ours', () => {
    const net = circuit(
      `${source('5 V', '1 kΩ')}\nload: {kind: resistor, from: p, to: earth, resistance: 2 kΩ}`,
    )
    const part = net.parts.findIndex(({ name }) => name === 'load')
    const spec = {
      ...net.parts[part]?.spec,
      kind: 'resistor',
      resistance: { value: 0, unit: 'Ω', text: '0 Ω' },
    }
    expect(problemsOf(net, { ...DIRECT, instead: [{ part, spec }] })[0]?.code).toBe('quantity-out-of-range')
  })
})

describe('alternating current that swings a part far', () => {
  const rung = (volts: string) =>
    ask(
      circuit(`
        e: {kind: voltage-source, from: p, to: earth, alternating: ${volts}}
        r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
        v: {kind: varistor, from: q, to: earth, voltage at 1 A: 20 V, exponent: 5}
        l: {kind: resistor, from: q, to: earth, resistance: 10 kΩ}
      `),
      alternating(25),
    ).solution

  test('is said to rest on its slope', () => {
    expect([...rung('75 V').standIns.keys()]).toEqual([
      'v by its slope, although the alternating voltage swings it far',
    ])
  })

  test('is not said of test signals, which have no size', () => {
    const net = circuit(
      'r: {kind: resistor, from: q, to: earth, resistance: 10 kΩ}\nv: {kind: varistor, from: q, to: earth, voltage at 1 A: 20 V, exponent: 5}',
    )
    const probes = [{ into: node(net, 'q'), outOf: 0, re: 1 }]
    const { solution } = ask(net, { ...alternating(25), sources: 'none', probes })
    expect([...solution.standIns.keys()]).toEqual([])
  })
})

describe('what is not found', () => {
  /** A circuit whose varistor `x` has another law. */
  const withLaw = (law: PartLaw['law'], bends: readonly ('direct' | 'swing')[] = ['direct']) => {
    const plain = circuit(`
      e: {kind: voltage-source, from: p, to: earth, direct: 10 V, alternating: 10 V}
      r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
      x: {kind: varistor, from: q, to: earth, voltage at 1 A: 1 V, exponent: 2}
    `)
    const own = plain.parts.find(({ name }) => name === 'x')?.law as PartLaw
    const other: PartLaw = { ...own, law, bends: () => bends, settle: (_spec, _branch, next) => next }
    const parts = plain.parts.map((part) => (part.name === 'x' ? { ...part, law: other } : part))
    return { ...plain, parts }
  }

  test('a law that loses its numbers on the way is no failure of ours', () => {
    const net = withLaw((_spec, at, _gate, sink) => {
      const v = at.direct?.(0).voltage ?? 0
      sink.admittance(0, v === 0 ? 1e-6 : Number.NaN, 0, 0)
    })
    const [problem] = problemsOf(net)
    expect(problem).toMatchObject({ code: 'no-convergence', found: 'values beyond what a number holds' })
  })

  test('a swing that never settles is no answer, and the part is named', () => {
    // conducts at large voltages only: then none is left, it stops, and the voltage is large again
    const net = withLaw(
      (_spec, at, _gate, sink) => {
        sink.admittance(0, (at.swing?.(0) ?? 0) > 5 ? 1 : 0, 0)
      },
      ['swing'],
    )
    const [problem] = problemsOf(net, alternating(25))
    expect(problem).toMatchObject({ code: 'no-convergence', place: { file: 'net.yaml', line: 7 } })
    expect(problem?.found).toContain('net/x')
  })

  test('a resistance as the line finds it is that at rest where the line finds no point', () => {
    const net = withLaw((_spec, at, _gate, sink) => {
      const v = at.direct?.(0).voltage ?? 0
      if (at.direct === undefined) sink.admittance(0, 0.001, 0)
      else sink.admittance(0, 2 * v, 0, 1 - v * v)
    })
    const probes = [{ into: node(net, 'q'), outOf: 0, re: 1 }]
    const question = { ...DIRECT, sources: 'none' as const, probes, small: 'fed' as const }
    expect(problemsOf(net)[0]?.code).toBe('no-convergence')
    assertClose(ask(net, question).v('q'), 500, NINE_DIGITS, '1 A into 1 kΩ beside 1 kΩ')
  })
})
