import type { PartSpec } from 'ringproof/parts/kind'
import { type TransmitterSpec, transmitterResistance } from 'ringproof/parts/transmitter'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { lineText } from '../checks/_ask.ts'
import { onBench } from './_bench-tests.ts'

/** A handset part straight across the pair behind a hook contact, and nothing else. */
function straight(part: string, more: readonly string[] = []) {
  const text = [
    'ringproof: 1',
    'sheet: set',
    'name: plain',
    'strips: {A: 9}',
    'contacts:',
    '  hook: {from: A1, to: A2, closed when: off-hook, resistance: 0 Ω, leakage: open}',
    ...more,
    'cords:',
    '  line: {ends in: plug, cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: A3, resistance: 0 Ω}}}',
    '  handset: {ends in: handset, cores: {t1: {lands: A2, resistance: 0 Ω}, t2: {lands: A3, resistance: 0 Ω}}}',
    'plug: {numbered by: wiring, contacts: {5: a, 2: b}}',
    `handset: {part: {${part}, from: t1, to: t2}}`,
    '',
  ]
  return onBench({ text: { file: 'plain.yaml', text: text.join('\n') }, onText: lineText() })
}

const TRANSMITTER = 'kind: transmitter, resistance: 150 Ω at 40 mA, falls with exponent: 0.5'
const RECEIVER = 'kind: receiver, resistance: 150 Ω, inductance: 20 mH'

describe('loudness', () => {
  test('of a set that is a transmitter straight across is what is due', () => {
    // the due is found by theorems, with the set unplugged; here the set itself is that network
    assertClose(straight(TRANSMITTER).score('heard'), 1, { relative: 1e-3 }, 'heard')
  })

  test('of a set that is a receiver straight across is what is due', () => {
    assertClose(straight(RECEIVER).score('hears'), 1, { relative: 1e-3 }, 'hears')
  })

  test('goes with the direct voltage across a transmitter and with what passes of it', () => {
    // R in series: I solves 50 V = I (400 Ω + R + 150 Ω √(40 mA / I)); what passes is by the sum of the resistances
    const ohms = 1000
    const on = straight(TRANSMITTER)
    const spec = on.net.parts.find(({ role }) => role === 'sender')!.spec as TransmitterSpec
    const current = (series: number): number => {
      let amps = 0.04
      for (let step = 0; step < 200; step += 1) amps = 50 / (400 + series + transmitterResistance(spec, amps))
      return amps
    }
    const volts = (series: number): number => current(series) * transmitterResistance(spec, current(series))
    const within = [{ within: { branch: on.branch('hook').index, ohms } }]
    // the termination of this line is 600 Ω
    const passes = (series: number): number =>
      1 / (600 + series + transmitterResistance(spec, current(series)))
    const expected = (volts(ohms) * passes(ohms)) / (volts(0) * passes(0))
    assertClose(
      on.score('heard', within) / on.score('heard'),
      expected,
      { relative: 2e-3 },
      'heard through a resistance',
    )
  })

  test('of a transmitter falls whichever way its resistance departs from its sheet', () => {
    const on = straight(TRANSMITTER)
    const scaled = (factor: number) =>
      on.becomes('part', (spec) => {
        const { resistance } = spec as TransmitterSpec
        const value = { ...resistance.value, value: factor * resistance.value.value }
        return { ...spec, resistance: { ...resistance, value } } as PartSpec
      })
    const heard = [0.25, 0.5, 1, 2, 4].map((factor) => on.score('heard', [scaled(factor)]))
    expect(heard[0]).toBeLessThan(heard[1]!)
    expect(heard[1]).toBeLessThan(heard[2]!)
    expect(heard[3]).toBeLessThan(heard[2]!)
    expect(heard[4]).toBeLessThan(heard[3]!)
  })

  test('is asked only of what a handset has', () => {
    const ids = (on: ReturnType<typeof straight>) =>
      on.tests.flatMap(({ id, words }) => (words === undefined ? [] : [id]))
    expect(ids(straight(TRANSMITTER))).toEqual(['engaged', 'heard', 'either-way'])
    expect(ids(straight(RECEIVER))).toEqual(['engaged', 'tone', 'hears', 'either-way'])
  })
})
