import { stand } from 'ringproof/answer/standing'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { SPEECH_FREQUENCY, speechPlans } from 'ringproof/figures/speech'
import { branchAt, nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const SPEECH = { line: 'speech', sets: {} } as const

/** One loop: transmitter, receiver, and two halves of a termination with earth between them. */
const net = compiled(
  'half-a: {kind: resistor, from: a, to: earth, resistance: 300 Ω}',
  'half-b: {kind: resistor, from: earth, to: b, resistance: 300 Ω}',
  'sender: {kind: resistor, from: b, to: m, resistance: 150 Ω}',
  'receiver: {kind: resistor, from: m, to: a, resistance: 250 Ω}',
  'e: {kind: voltage-source, from: s, to: earth, direct: 3 V, alternating: 3 V}',
  'load: {kind: resistor, from: s, to: earth, resistance: 1 kΩ}',
)
const at = (name: string) => branchAt(net, net.branchIndex.get(`trial/${name}`) ?? -1)
const { net: workshop } = stand({ target: 'fescue' }, DEMO)
if (workshop.line === undefined) throw new Error('the workshop stands on a line')
const line = {
  ...workshop.line,
  name: 'trial',
  feedVoltage: 50,
  ringingFrequency: undefined,
  ringingVoltage: undefined,
  ringingHarmonics: [],
  a: nodeOf(net, 'trial/a'),
  b: nodeOf(net, 'trial/b'),
  exchange: [],
  termination: [at('half-a').index, at('half-b').index],
}
const path = { line, sender: at('sender'), receiver: at('receiver') }
const read = (...more: [object?, number?]) =>
  speechPlans(path, SPEECH, ...more).map((plan) => readFigure(net, plan, freshSupplier(net)))

describe('the speech figures of one loop', () => {
  test('are send, receive and sidetone at one frequency, as currents for 1 V', () => {
    const figures = read()
    expect(figures.map(({ id, unit, frequency }) => [id, unit, frequency])).toEqual([
      ['speech.send', 'A', SPEECH_FREQUENCY],
      ['speech.receive', 'A', SPEECH_FREQUENCY],
      ['speech.sidetone', 'A', SPEECH_FREQUENCY],
    ])
    expect(figures.map(({ subject }) => subject)).toEqual([
      'trial/sender',
      'trial/receiver',
      'trial/receiver',
    ])
  })

  test('are all 1 V over its 1 kΩ, whatever the sheet’s own sources do', () => {
    for (const { value, id } of read()) assertClose(value, 1 / 1000, { relative: 1e-9 }, id)
  })

  test('are at the frequency that is asked for', () => {
    for (const { frequency } of read({}, 300)) expect(frequency).toBe(300)
  })

  test('take what is lifted out of the loop, and nothing flows', () => {
    for (const { value } of read({ lifted: [at('receiver').index] })) expect(value).toBeLessThan(1e-15)
  })

  test('take what is added into it, and no more flows in a receiver that is bridged', () => {
    const added = [{ from: nodeOf(net, 'trial/m'), to: nodeOf(net, 'trial/a') }]
    const [send, receive, sidetone] = read({ added }).map(({ value }) => value ?? 0)
    // the bridge is a strap of 10 mΩ beside 250 Ω
    assertClose(send, 1 / 750, { relative: 1e-4 }, 'send')
    for (const one of [receive, sidetone])
      assertClose(one, (1 / 750) * (0.01 / 250), { relative: 1e-3 }, 'in the receiver')
  })
})
