import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, ask, circuit, DIRECT, problemsOf, ROUNDING } from './_circuit.ts'

describe('a loop of ideal sources and links', () => {
  const LOOP = `
    e1: {kind: voltage-source, from: a, to: earth, direct: 10 V}
    s: {kind: strap, from: a, to: b, resistance: 0 Ω}
    e2: {kind: voltage-source, from: b, to: earth, direct: 5 V}
  `
  test('is a contradiction that names its path and the line of the sheet', () => {
    const [problem] = problemsOf(circuit(LOOP))
    expect(problem).toMatchObject({
      code: 'contradiction',
      severity: 'error',
      place: { file: 'net.yaml', line: 7 },
    })
    expect(problem?.found).toBe('net/e2 closes a loop of ideal sources and links over net/b – net/a – earth')
    expect(problem?.mend).toContain('net/e2')
  })

  test('is one even when the sources agree', () => {
    expect(problemsOf(circuit(LOOP.replace('5 V', '10 V')))[0]?.code).toBe('contradiction')
  })

  test('is one when a source is shorted by a link, or by a lossless winding for direct current', () => {
    const shorted = (part: string) =>
      circuit(`e: {kind: voltage-source, from: a, to: earth, direct: 10 V, alternating: 10 V}\n${part}`)
    expect(problemsOf(shorted('s: {kind: strap, from: a, to: earth, resistance: 0 Ω}'))[0]?.code).toBe(
      'contradiction',
    )
    const winding = shorted('l: {kind: inductor, from: a, to: earth, inductance: 2 H}')
    expect(problemsOf(winding)[0]?.code).toBe('contradiction')
    // 10 V / jωL with ω = 100π
    assertClose(
      ask(winding, alternating(50)).i('l'),
      { re: 0, im: -10 / (200 * Math.PI) },
      ROUNDING,
      'alternating',
    )
  })

  test('is one in a source from a node to itself', () => {
    const bent = circuit(
      'e: {kind: voltage-source, from: a, to: a, direct: 1 V}\nr: {kind: resistor, from: a, to: earth, resistance: 1 Ω}',
    )
    expect(problemsOf(bent)[0]?.found).toBe('net/e closes a loop of ideal sources and links over net/a')
  })

  test('is none when the link has a resistance', () => {
    // 5 V over 2 Ω, closed form
    assertClose(ask(circuit(LOOP.replace('0 Ω', '2 Ω'))).i('s'), 2.5, ROUNDING, 'difference over link')
  })

  test('is none when sources do not count', () => {
    const { solution, i } = ask(circuit(LOOP), { ...DIRECT, sources: 'none' })
    assertClose(i('s'), 0, { relative: 0, absolute: 0 }, 'nothing flows')
    expect(solution.residual).toBe(0)
  })

  test('of two sources between the same nodes names both', () => {
    const twin = circuit(
      'e1: {kind: voltage-source, from: a, to: earth, direct: 1 V}\ne2: {kind: voltage-source, from: a, to: earth, direct: 2 V}',
    )
    expect(problemsOf(twin)[0]?.found).toBe(
      'net/e2 closes a loop of ideal sources and links over net/a – earth',
    )
  })
})

describe('a network without one solution', () => {
  /** ω = 1 rad/s exactly: with 1 H and 1 F the reactances are +1 Ω and −1 Ω exactly. */
  const UNIT = 1 / (2 * Math.PI)
  const SERIES = `
    e: {kind: voltage-source, from: p, to: earth, alternating: 1 V}
    l: {kind: inductor, from: p, to: q, inductance: 1 H}
    c: {kind: capacitor, from: q, to: earth, capacitance: 1 F}
  `
  const PARALLEL = `
    j: {kind: current-source, from: earth, to: q, alternating: 1 A}
    l: {kind: inductor, from: q, to: earth, inductance: 1 H}
    c: {kind: capacitor, from: q, to: earth, capacitance: 1 F}
  `
  test.each([
    ['series', SERIES],
    ['parallel', PARALLEL],
  ])('is a lossless %s resonance at its very frequency, and names what is not determined', (_, parts) => {
    expect(2 * Math.PI * UNIT).toBe(1)
    const [problem] = problemsOf(circuit(parts), alternating(UNIT))
    expect(problem).toMatchObject({ code: 'no-unique-solution', severity: 'error' })
    expect(problem?.found).toMatch(
      /^the (voltage of net\/[pq]|current of net\/[el]) is not determined by the network$/,
    )
  })

  test('names the line of the part whose current it is', () => {
    const [problem] = problemsOf(circuit(PARALLEL), alternating(UNIT))
    expect(problem?.found).toBe('the current of net/l is not determined by the network')
    expect(problem?.place).toMatchObject({ file: 'net.yaml', line: 6 })
  })

  test('is a resonance over a link without resistance as well', () => {
    const net = circuit(
      'c: {kind: capacitor, from: q, to: earth, capacitance: 1 F}\nl: {kind: inductor, from: q, to: s, inductance: 1 H}\nw: {kind: strap, from: s, to: earth, resistance: 0 Ω}',
    )
    expect(problemsOf(net, alternating(UNIT))[0]?.code).toBe('no-unique-solution')
  })

  test('is one off resonance', () => {
    // X = ωL − 1/(ωC) = 2 − 0.5 = 1.5 Ω at ω = 2 rad/s (closed form)
    const { i } = ask(circuit(SERIES), alternating(2 * UNIT))
    assertClose(i('l'), { re: 0, im: -1 / 1.5 }, ROUNDING, 'series circuit at twice its resonance')
  })

  test('is one with any resistance in it', () => {
    const { i } = ask(
      circuit(SERIES.replace('inductance: 1 H', 'inductance: 1 H, resistance: 4 Ω')),
      alternating(UNIT),
    )
    assertClose(i('l'), 0.25, ROUNDING, 'at resonance R alone is left')
  })
})
