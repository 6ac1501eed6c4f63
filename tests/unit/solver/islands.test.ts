import * as fc from 'fast-check'
import { GAUGE } from 'ringproof/solver/assemble'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { SEED } from '../../support/seed.ts'
import { alternating, ask, branch, circuit, DIRECT, node, problemsOf, ROUNDING } from './_circuit.ts'

const FLOATING = `
  e: {kind: voltage-source, from: p, to: q, direct: 10 V, alternating: 10 V}
  r1: {kind: resistor, from: p, to: s, resistance: 3 kΩ}
  r2: {kind: resistor, from: s, to: q, resistance: 2 kΩ}
`
const GROUNDED = 'r3: {kind: resistor, from: u, to: earth, resistance: 1 kΩ}\n'

describe('an island without earth', () => {
  test('has its currents and its own voltages, by the divider rule', () => {
    const { i, v } = ask(circuit(FLOATING))
    assertClose(i('r1'), 0.002, ROUNDING, '10 V / 5 kΩ')
    assertClose(i('e'), -0.002, ROUNDING, 'the source delivers')
    assertClose(v('s', 'q'), 4, ROUNDING, '10 V · 2/5')
  })

  test('has no voltage against another island', () => {
    const { v, solution } = ask(circuit(FLOATING + GROUNDED))
    expect(v('s')).toBeUndefined()
    expect(v('s', 'u')).toBeUndefined()
    expect(v('u')).toEqual({ re: 0, im: 0 })
    expect(new Set(solution.island).size).toBe(2)
  })

  test('gives the same figures wherever it is tied to earth, so that its gauge changes none', () => {
    const free = ask(circuit(FLOATING))
    for (const tie of ['p', 'q', 's']) {
      const tied = ask(circuit(`${FLOATING}tie: {kind: strap, from: ${tie}, to: earth}`))
      for (const part of ['e', 'r1', 'r2']) assertClose(free.i(part), tied.i(part), ROUNDING, part)
      assertClose(free.v('p', 's'), tied.v('p', 's') ?? Number.NaN, ROUNDING, 'voltage within')
      assertClose(tied.i('tie'), 0, { relative: 0, absolute: 1e-15 }, 'the tie carries nothing')
    }
    expect(GAUGE).toBe(1)
  })

  test('is tied at its first node by id: that one reads no volt', () => {
    const net = circuit(FLOATING.replaceAll(': p,', ': zebra,'))
    const { solution } = ask(net)
    expect(Math.abs(solution.voltages[2 * node(net, 'q')] ?? 1)).toBeLessThan(1e-12)
  })

  test('keeps the law of its divider for any resistances', () => {
    const ohms = fc.integer({ min: 1, max: 999_999 })
    fc.assert(
      fc.property(ohms, ohms, (one, two) => {
        const net = circuit(FLOATING.replace('3 kΩ', `${one} Ω`).replace('2 kΩ', `${two} Ω`))
        assertClose(ask(net).v('s', 'q'), (10 * two) / (one + two), ROUNDING, 'divider')
      }),
      { seed: SEED },
    )
  })

  test('of one node alone is an island too', () => {
    const net = circuit(`${GROUNDED}broken: {kind: strap, from: x, to: u, resistance: open}`)
    expect(ask(net).v('x')).toBeUndefined()
    expect(ask(net).i('broken')).toEqual({ re: 0, im: 0 })
  })

  test('is joined by a capacitor for alternating current alone, and never by a coil', () => {
    const joined = circuit(`${FLOATING}${GROUNDED}c: {kind: capacitor, from: q, to: u, capacitance: 1 µF}`)
    expect(ask(joined).v('q')).toBeUndefined()
    assertClose(
      ask(joined, alternating(50)).v('q'),
      0,
      { relative: 0, absolute: 1e-12 },
      'no current in the capacitor',
    )
    const coupled = circuit(
      `${FLOATING}t: {kind: induction-coil, windings: {x: {from: p, to: q, resistance: 1 Ω, inductance: 1 H}, y: {from: u, to: earth, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}`,
    )
    expect(ask(coupled, alternating(50)).v('q')).toBeUndefined()
    // open secondary: V = jωM·i₁, i₁ = 10/(1 + jω), M = 0.5 H (closed form)
    const w = 100 * Math.PI
    const size = 1 + w * w
    assertClose(
      ask(coupled, alternating(50)).v('u'),
      { re: (5 * w * w) / size, im: (5 * w) / size },
      ROUNDING,
      'open secondary',
    )
  })
})

describe('a probe', () => {
  test('between two islands drives no current and is said to be open', () => {
    const net = circuit(FLOATING + GROUNDED)
    const probe = { into: node(net, 's'), outOf: node(net, 'u'), re: 1 }
    const { solution, i } = ask(net, { ...DIRECT, probes: [probe] })
    expect(solution.probeOpen).toBe(true)
    assertClose(i('r3'), 0, { relative: 0, absolute: 1e-15 }, 'nothing arrives')
    expect(ask(net).solution.probeOpen).toBe(false)
  })
})

describe('a current source into an island with no way back', () => {
  const AWAY = `
    j: {kind: current-source, from: earth, to: q, direct: 2 A, alternating: 2 A}
    r: {kind: resistor, from: q, to: s, resistance: 1 kΩ}
    g: {kind: resistor, from: u, to: earth, resistance: 1 kΩ}
  `
  test('is a contradiction that names source and node', () => {
    for (const question of [DIRECT, alternating(50)]) {
      expect(problemsOf(circuit(AWAY), question)).toMatchObject([
        {
          code: 'contradiction',
          severity: 'error',
          found: 'net/j driving a current into net/q with no way back',
        },
      ])
    }
  })

  test('is none once a capacitor leads back, for alternating current', () => {
    const net = circuit(`${AWAY.trimEnd()}\nc: {kind: capacitor, from: s, to: earth, capacitance: 1 µF}`)
    expect(problemsOf(net)[0]?.code).toBe('contradiction')
    assertClose(ask(net, alternating(50)).i('c'), 2, ROUNDING, 'all of it')
  })

  test('is none when two sources agree, or when sources do not count', () => {
    const agreed = circuit(`${AWAY.trimEnd()}\nk: {kind: current-source, from: s, to: earth, direct: 2 A}`)
    assertClose(ask(agreed).i('r'), 2, ROUNDING, 'through r')
    assertClose(
      ask(circuit(AWAY), { ...DIRECT, sources: 'none' }).i('r'),
      0,
      { relative: 0, absolute: 0 },
      'nothing',
    )
    expect(branch(agreed, 'k')).toBe(3)
  })
})
