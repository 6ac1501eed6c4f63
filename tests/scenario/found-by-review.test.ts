/** What a hostile reader once got past the checks; each must stay caught. */
import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO, rewireText, setText, verdictsOf } from '../support/bench.ts'

const statesOf = (text: ReturnType<typeof setText>, id: string): readonly string[] =>
  verdictsOf(check({ target: '', text }, DEMO), id).map(({ state }) => state)

describe('live metal', () => {
  test('joined to the ringing lead fails', () => {
    expect(statesOf(setText('fescue', 'touchable metal: {cradle: C1}'), 'wiring.touchable-free')).toEqual([
      'fails',
    ])
  })

  test('joined by a capacitor to a line wire fails', () => {
    const text = setText(
      'fescue',
      'touchable metal: {cradle: C4}',
      'spare: []',
      'parts: {stray: {kind: capacitor, from: A1, to: C4, capacitance: 1 µF}}',
    )
    expect(statesOf(text, 'wiring.touchable-free')).toEqual(['fails'])
  })
})

describe('a ringing lead', () => {
  test('landed in the receiver loop fails, though it reaches no line wire', () => {
    expect(
      statesOf(rewireText('fescue', 'land core: line.ringing, onto: B1'), 'wiring.ringing-lead-alone'),
    ).toEqual(['fails'])
  })
})

describe('a bridge', () => {
  test.each(['transmitter', 'receiver'])('across the %s fails', (part) => {
    expect(statesOf(rewireText('fescue', `bridge: ${part}`), 'wiring.cores-reach-parts')).toContain('fails')
  })

  test('across the impulse contact fails', () => {
    expect(statesOf(rewireText('fescue', 'fit strap: A2-A3'), 'wiring.quench-present')).toEqual(['fails'])
  })
})

describe('a bell', () => {
  test('with its resistor on the return side holds: it is the same circuit', () => {
    const text = setText(
      'fescue',
      'without: [straps.C3-A1, parts.bell-resistor]',
      'straps: {C1-C2: {hold: screw}}',
      'parts: {bell-resistor: {kind: resistor, from: C3, to: A1, resistance: 3.3 kΩ}}',
    )
    expect(statesOf(text, 'wiring.bell-return')).toEqual(['holds'])
  })

  test('whose second capacitor leaks has two all the same', () => {
    const text = rewireText(
      'fescue',
      'lift strap: C3-A1',
      'fit part: own-capacitor, with: {kind: capacitor, from: C3, to: A1, capacitance: 1.8 µF, leakage: 1 MΩ}',
    )
    expect(statesOf(text, 'wiring.one-ringing-capacitor')).toEqual(['fails'])
  })
})
