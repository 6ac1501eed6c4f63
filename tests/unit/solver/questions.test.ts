import { conditionOf } from 'ringproof/netlist/condition'
import type { Question } from 'ringproof/solver/question'
import { currentIn, sizeOf, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, ask, assertSame, branch, circuit, DIRECT, node, ROUNDING } from './_circuit.ts'

/** i = 0 is an equation among others; refinement leaves what the elimination lost, squares of the rounding. */
const NOTHING = { relative: 0, absolute: 1e-30 }
/** Every form of law at once. */
const PARTS = [
  'e: {kind: voltage-source, from: p, to: earth, direct: 10 V, alternating: 3 V at 30°}',
  'j: {kind: current-source, from: earth, to: u, direct: 2 mA, alternating: 1 mA}',
  'r1: {kind: resistor, from: p, to: q, resistance: 220 Ω}',
  'r2: {kind: resistor, from: q, to: earth, resistance: 330 Ω}',
  'low: {kind: resistor, from: q, to: s, resistance: 0.5 Ω}',
  'l: {kind: inductor, from: s, to: u, inductance: 0.1 H, resistance: 10 Ω}',
  'c: {kind: capacitor, from: q, to: u, capacitance: 2 µF}',
  't: {kind: induction-coil, windings: {x: {from: u, to: earth, resistance: 20 Ω, inductance: 0.4 H}, y: {from: s, to: w, resistance: 30 Ω, inductance: 0.2 H}}, coupling: 0.6}',
  'r3: {kind: resistor, from: w, to: earth, resistance: 470 Ω}',
] as const
const all = ['e', 'j', 'r1', 'r2', 'low', 'l', 'c', 't.x', 't.y', 'r3']
const nodes = ['p', 'q', 's', 'u', 'w']
const NET = circuit(PARTS.join('\n'))
const written = (...more: readonly string[]) => circuit([...PARTS, ...more].join('\n'))
const changed = (name: string, ...lines: readonly string[]) =>
  circuit([...PARTS.filter((one) => !one.startsWith(`${name}:`)), ...lines].join('\n'))
const POINTS = [
  ['direct', DIRECT],
  ['alternating', alternating(400)],
] as const

describe.each(POINTS)('a question about %s current', (analysis, point) => {
  const phasor = (size: number, unit: string) => `${analysis}: ${size} ${unit}`

  test.each(['r2', 'low', 'l', 'c'])('with %s lifted is the circuit written without it', (name) => {
    const lifted = ask(NET, { ...point, lifted: [branch(NET, name)] })
    assertSame(
      lifted,
      ask(changed(name), point),
      all.filter((one) => one !== name),
      nodes,
    )
    assertClose(lifted.i(name), 0, NOTHING, `${name} carries nothing`)
  })

  test('with a winding lifted is the circuit whose other winding stands alone', () => {
    const lifted = ask(NET, { ...point, lifted: [branch(NET, 't.y')] })
    const single = ask(
      changed('t', 't: {kind: inductor, from: u, to: earth, inductance: 0.4 H, resistance: 20 Ω}'),
      point,
    )
    assertClose(lifted.i('t.x'), single.i('t'), ROUNDING, 'the other winding')
    assertClose(lifted.i('t.y'), 0, NOTHING, 'the lifted winding')
    assertSame(
      lifted,
      single,
      ['e', 'r1', 'r2', 'low', 'l', 'c', 'r3'],
      nodes.filter((one) => one !== 'w'),
    )
  })

  test('with a strap added is the circuit with a strap of 10 mΩ, and gives its current', () => {
    const added = ask(NET, { ...point, added: [{ from: node(NET, 'q'), to: node(NET, 'w') }] })
    const net = written('extra: {kind: strap, from: q, to: w, resistance: 10 mΩ}')
    assertSame(added, ask(net, point), all, nodes)
    assertClose(
      currentIn(added.solution, NET.branches.length),
      ask(net, point).i('extra'),
      ROUNDING,
      'the added strap',
    )
  })

  test.each([
    ['r2', 'r2: {kind: resistor, from: mid, to: earth, resistance: 330 Ω}', 'q'],
    ['low', 'low: {kind: resistor, from: mid, to: s, resistance: 0.5 Ω}', 'q'],
    ['l', 'l: {kind: inductor, from: mid, to: u, inductance: 0.1 H, resistance: 10 Ω}', 's'],
    ['c', 'c: {kind: capacitor, from: mid, to: u, capacitance: 2 µF}', 'q'],
  ])('with a voltage in series with %s is the circuit with a source at its first end', (name, part, from) => {
    const series = ask(NET, { ...point, series: [{ branch: branch(NET, name), re: 1.5 }] })
    const net = changed(
      name,
      `extra: {kind: voltage-source, from: ${from}, to: mid, ${phasor(1.5, 'V')}}`,
      part,
    )
    assertSame(series, ask(net, point), all, nodes)
  })

  test('with a probe is the circuit with a current source from where it takes out to where it puts in', () => {
    const probe = ask(NET, { ...point, probes: [{ into: node(NET, 'w'), outOf: node(NET, 'q'), re: 0.003 }] })
    assertSame(
      probe,
      ask(written(`extra: {kind: current-source, from: q, to: w, ${phasor(0.003, 'A')}}`), point),
      all,
      nodes,
    )
  })

  test('with several probes, earth among their ends, adds them up', () => {
    const probes = [
      { into: node(NET, 'w'), outOf: 0, re: 0.003 },
      { into: node(NET, 'w'), outOf: node(NET, 'q'), re: 0.001 },
    ]
    const net = written(
      `x1: {kind: current-source, from: earth, to: w, ${phasor(0.003, 'A')}}`,
      `x2: {kind: current-source, from: q, to: w, ${phasor(0.001, 'A')}}`,
    )
    assertSame(ask(NET, { ...point, probes }), ask(net, point), all, nodes)
  })

  test('without sources hears its own probe alone', () => {
    const probes = [{ into: node(NET, 'q'), outOf: 0, re: 0.01 }]
    const quiet = [
      ...PARTS.slice(2),
      'e: {kind: voltage-source, from: p, to: earth}',
      'j: {kind: current-source, from: earth, to: u}',
      `extra: {kind: current-source, from: earth, to: q, ${phasor(0.01, 'A')}}`,
    ]
    assertSame(
      ask(NET, { ...point, sources: 'none', probes }),
      ask(circuit(quiet.join('\n')), point),
      all,
      nodes,
    )
  })

  test('answers with a healthy residual, the question and no loops shared', () => {
    const { solution } = ask(NET, point)
    expect(solution.question).toBe(point)
    expect(solution.residual).toBeLessThan(10)
    expect(solution.shared).toEqual([])
  })
})

describe('complex changes of a question', () => {
  const point = alternating(400)
  test('a series voltage and a probe keep their phase', () => {
    const series: Question = {
      ...point,
      series: [
        { branch: branch(NET, 'c'), re: 0, im: 1.5 },
        { branch: branch(NET, 'low'), re: 0, im: 2 },
      ],
    }
    const net = circuit(
      [
        ...PARTS.filter((one) => !/^(c|low):/.test(one)),
        'v1: {kind: voltage-source, from: q, to: m1, alternating: 1.5 V at 90°}',
        'c: {kind: capacitor, from: m1, to: u, capacitance: 2 µF}',
        'v2: {kind: voltage-source, from: q, to: m2, alternating: 2 V at 90°}',
        'low: {kind: resistor, from: m2, to: s, resistance: 0.5 Ω}',
      ].join('\n'),
    )
    assertSame(ask(NET, series), ask(net, point), all, nodes)
    const probe: Question = {
      ...point,
      probes: [{ into: node(NET, 'w'), outOf: node(NET, 'q'), re: 0, im: 0.003 }],
    }
    assertSame(
      ask(NET, probe),
      ask(written('x: {kind: current-source, from: q, to: w, alternating: 3 mA at 90°}'), point),
      all,
      nodes,
    )
  })

  test('a series voltage in a lifted branch says nothing', () => {
    const both: Question = {
      ...point,
      series: [{ branch: branch(NET, 'l'), re: 5 }],
      lifted: [branch(NET, 'l')],
    }
    assertSame(ask(NET, both), ask(changed('l'), point), ['r1', 'r2', 'c'], nodes)
  })
})

describe('a contact in a circuit', () => {
  const parts =
    'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}\ns: {kind: contact, from: p, to: q, closed when: make}\nr: {kind: resistor, from: q, to: earth, resistance: 1 kΩ}'
  const made: Question = {
    ...DIRECT,
    condition: conditionOf('net', { hook: 'off-hook', dial: 'make', key: 'up', line: 'idle' }),
  }

  test('passes 10 V over 1000.05 Ω when closed, and 10 V over 1 GΩ + 1 kΩ when open', () => {
    const net = circuit(parts)
    assertClose(ask(net, made).i('r'), 10 / 1000.05, ROUNDING, 'closed')
    assertClose(ask(net).i('r'), 10 / (1e9 + 1e3), ROUNDING, 'open')
    assertClose(ask(net).i('s'), 10 / (1e9 + 1e3), ROUNDING, 'the contact itself')
  })

  test('passes exactly nothing when its sheet says open, and leaves what lies behind apart', () => {
    const net = circuit(
      `${parts.replace('when: make', 'when: make, leakage: open').replace('to: earth, resistance', 'to: s2, resistance')}`,
    )
    expect(ask(net).i('s')).toEqual({ re: 0, im: 0 })
    expect(ask(net).v('q')).toBeUndefined()
    assertClose(ask(net, made).v('q'), 10, ROUNDING, 'joined again')
  })
})

describe('a solution', () => {
  test('keeps its digits where values of 1 mΩ and 1 GΩ meet', () => {
    // closed form: 1 A through 1 mΩ beside 1 GΩ, behind 1 GΩ in series with the source
    const net = circuit(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}\nbig: {kind: resistor, from: p, to: q, resistance: 1 GΩ}\nsmall: {kind: resistor, from: q, to: s, resistance: 1 mΩ}\nend: {kind: resistor, from: s, to: earth, resistance: 1 GΩ}',
    )
    const { i, v } = ask(net)
    assertClose(i('small'), 10 / (2e9 + 1e-3), ROUNDING, 'current')
    assertClose(v('q', 's'), (1e-3 * 10) / (2e9 + 1e-3), { relative: 1e-12 }, 'the fall over the small one')
  })

  test('names the stand-ins that it rests on, with their branches', () => {
    const bell = 'from: p, to: earth, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz'
    const net = circuit(
      `e: {kind: voltage-source, from: p, to: earth, alternating: 10 V}\nv1: {kind: bell, ${bell}}\nv2: {kind: bell, ${bell}}`,
    )
    expect([...ask(net, alternating(25)).solution.standIns]).toEqual([
      ['bell with its clapper held still', [1, 2]],
    ])
  })

  test('is the same, bit by bit, when asked again', () => {
    const [one, two] = [solve(NET, alternating(400)), solve(NET, alternating(400))]
    expect(two.voltages).toEqual(one.voltages)
    expect(two.currents).toEqual(one.currents)
  })

  test('has the size of a phasor, and no current for a branch that does not exist', () => {
    expect(sizeOf({ re: 3, im: -4 })).toBe(5)
    const { solution } = ask(NET)
    expect(() => currentIn(solution, 99)).toThrow('no branch has the index 99')
    expect(voltageBetween(solution, 0, 0)).toEqual({ re: 0, im: 0 })
  })

  test('of an alternating question without a frequency is that at no frequency', () => {
    const net = circuit(
      'e: {kind: voltage-source, from: p, to: earth, alternating: 1 V}\nr: {kind: resistor, from: p, to: q, resistance: 1 kΩ}\nc: {kind: capacitor, from: q, to: earth, capacitance: 1 µF}',
    )
    const { frequency: _, ...question } = { frequency: 0, ...alternating(0) }
    expect(ask(net, question).i('r')).toEqual({ re: 0, im: 0 })
  })
})
