import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, ask, circuit, ROUNDING } from './_circuit.ts'

/** 1 A into a and out of c. */
const DRIVE =
  'j: {kind: current-source, from: earth, to: a, direct: 1 A, alternating: 1 A at 90°}\nload: {kind: resistor, from: c, to: earth, resistance: 5 Ω}\n'
const link = (name: string, from: string, to: string) =>
  `${name}: {kind: strap, from: ${from}, to: ${to}, resistance: 0 Ω}\n`
const sharedOf = (parts: string) => {
  const net = circuit(parts)
  return ask(net).solution.shared.map((k) => net.branches[k]?.id)
}

describe('links of no resistance in a loop', () => {
  test('side by side carry a half each', () => {
    const { i, v } = ask(circuit(DRIVE + link('s1', 'a', 'c') + link('s2', 'c', 'a')))
    assertClose(i('s1'), 0.5, ROUNDING, 'first')
    assertClose(i('s2'), -0.5, ROUNDING, 'second, laid the other way')
    assertClose(v('a'), 5, ROUNDING, 'voltage of the load')
  })

  const TRIANGLE = DRIVE + link('ab', 'a', 'b') + link('bc', 'b', 'c') + link('ac', 'a', 'c')
  test('in a triangle carry 2/3 and 1/3, as equal resistances do by the current divider', () => {
    const { i } = ask(circuit(TRIANGLE))
    assertClose(i('ac'), 2 / 3, ROUNDING, 'the short way')
    assertClose(i('ab'), 1 / 3, ROUNDING, 'the long way')
    assertClose(i('bc'), 1 / 3, ROUNDING, 'the long way, further')
  })

  test('share alternating current alike, with its phase', () => {
    const { i } = ask(circuit(TRIANGLE), alternating(50))
    assertClose(i('ac'), { re: 0, im: 2 / 3 }, ROUNDING, 'the short way')
  })

  test('carry what the same circuit with 2 Ω in each link carries', () => {
    const cube = ['a d', 'a e', 'd e', 'd c', 'e c', 'a c']
      .map((ends, k) => link(`s${k}`, ...(ends.split(' ') as [string, string])))
      .join('')
    const [zero, equal] = [ask(circuit(DRIVE + cube)), ask(circuit(DRIVE + cube.replaceAll('0 Ω', '2 Ω')))]
    for (let k = 0; k < 6; k += 1)
      assertClose(zero.i(`s${k}`), equal.i(`s${k}`), { relative: 1e-12, absolute: 1e-15 }, `link s${k}`)
  })

  test('are marked, and no others are', () => {
    expect(sharedOf(TRIANGLE)).toEqual(['net/ab', 'net/bc', 'net/ac'])
    expect(sharedOf(DRIVE + link('ac', 'a', 'c'))).toEqual([])
    expect(sharedOf(`${DRIVE}${link('ac', 'a', 'c')}r: {kind: strap, from: a, to: c}`)).toEqual([])
  })

  test('leave unmarked what is only joined to them, whose current is determined', () => {
    expect(
      sharedOf(
        DRIVE.replace('to: a', 'to: x') + link('xa', 'x', 'a') + link('s1', 'a', 'c') + link('s2', 'a', 'c'),
      ),
    ).toEqual(['net/s1', 'net/s2'])
  })

  test('take lossless windings among them for direct current, and not for alternating', () => {
    const net = circuit(`${DRIVE}${link('s', 'a', 'c')}l: {kind: inductor, from: a, to: c, inductance: 1 H}`)
    assertClose(ask(net).i('l'), 0.5, ROUNDING, 'half in the winding')
    assertClose(ask(net, alternating(50)).i('l'), 0, { relative: 0, absolute: 1e-15 }, 'none in the winding')
    expect(ask(net, alternating(50)).solution.shared).toEqual([])
  })

  test('from a node to itself carry nothing', () => {
    const net = circuit(
      `${DRIVE}${link('ac', 'a', 'c')}${link('s1', 'a', 'c')}l: {kind: inductor, from: a, to: a, inductance: 1 H}`,
    )
    expect(ask(net).i('l')).toEqual({ re: 0, im: 0 })
  })

  test('leave alone a link without resistance elsewhere that closes no loop', () => {
    const net = circuit(
      `${TRIANGLE}${link('x', 'd', 'e')}r: {kind: resistor, from: c, to: d, resistance: 5 Ω}\nend: {kind: resistor, from: e, to: earth, resistance: 5 Ω}`,
    )
    // 1 A divides between 5 Ω and 5 Ω + 5 Ω: a third (current divider)
    assertClose(ask(net).i('x'), 1 / 3, ROUNDING, 'the link apart')
    expect(ask(net).solution.shared.map((k) => net.branches[k]?.id)).toEqual(['net/ab', 'net/bc', 'net/ac'])
  })

  test('in two loops apart are shared loop by loop', () => {
    const net = circuit(
      `${DRIVE}${link('s1', 'a', 'b')}${link('s2', 'a', 'b')}r: {kind: resistor, from: b, to: d, resistance: 1 Ω}\n${link('s3', 'd', 'c')}${link('s4', 'd', 'c')}${link('s5', 'd', 'c')}`,
    )
    const { i, solution } = ask(net)
    assertClose(i('s2'), 1 / 2, ROUNDING, 'of two')
    assertClose(i('s4'), 1 / 3, ROUNDING, 'of three')
    expect(solution.shared).toHaveLength(5)
  })
})
