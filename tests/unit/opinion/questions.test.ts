import { stand } from 'ringproof/answer/standing'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { AGREED } from 'ringproof/opinion/compare'
import { loadAdviser } from 'ringproof/opinion/opinion'
import type { Question } from 'ringproof/solver/question'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { compiled } from '../../support/compiled.ts'
import { advised } from './_advised.ts'

const advise = await loadAdviser()
const { net } = stand({ target: 'fescue' }, DEMO)
const known = (index: number | undefined, id: string): number => {
  if (index === undefined || index < 0) throw new Error(`nothing is called ${id}`)
  return index
}
const node = (id: string): number => known(net.nodeIndex.get(`fescue/${id}`), id)
const branch = (id: string): number => known(net.branchIndex.get(`fescue/${id}`), id)
const part = (id: string): number =>
  known(
    net.parts.findIndex((one) => one.id === `fescue/${id}`),
    id,
  )
const sheetOf = (id: string) => net.parts[part(id)]?.spec

const changes: readonly (readonly [string, Partial<Question>])[] = [
  ['nothing changed', {}],
  ['a branch lifted', { lifted: [branch('bell-resistor'), branch('handset.t1')] }],
  ['a strap added', { added: [{ from: node('A1'), to: node('B3') }] }],
  [
    'resistances added, one of 0 Ω',
    {
      bridges: [
        { from: node('A2'), to: node('B1'), ohms: 4700 },
        { from: node('B1'), to: node('A3'), ohms: 0 },
      ],
    },
  ],
  ['a resistance within', { within: [{ branch: branch('bell'), ohms: 680 }] }],
  [
    'other values',
    {
      instead: [
        {
          part: part('receiver'),
          spec: { ...sheetOf('receiver'), resistance: { value: 1, unit: 'Ω', text: '1 Ω' } } as never,
        },
      ],
    },
  ],
  ['a voltage in series', { series: [{ branch: branch('transmitter'), re: 1 }] }],
  [
    'a probe in place of the sources',
    { sources: 'none', probes: [{ into: node('A1'), outOf: node('B1'), re: 0.001 }] },
  ],
  [
    'a probe too weak to bend anything',
    { sources: 'none', small: true, probes: [{ into: node('A1'), outOf: node('B1'), re: 1 }] },
  ],
]

describe.each([
  ['off-hook', undefined],
  ['on-hook/ringing', 25],
  ['off-hook/speech', 1000],
  ['off-hook/break', undefined],
] as const)('of a set %s at %s Hz the second opinion is the same', (words, frequency) => {
  const written = readCondition(words)
  if (written === undefined) throw new Error(words)
  const condition = conditionOf('fescue', written)

  test.each(changes)('with %s', (_, change) => {
    const question = { condition, ...(frequency === undefined ? {} : { frequency }), ...change }
    expect(advised(net, question, advise).relative).toBeLessThanOrEqual(AGREED)
  })
})

describe('links without resistance', () => {
  // what flows round a loop of them is decided by nothing; both share it as equal resistances would
  const ring = compiled(
    'e: {kind: voltage-source, from: p, to: earth, direct: 12 V}',
    'r: {kind: resistor, from: p, to: a, resistance: 3 Ω}',
    'a-b: {kind: strap, from: a, to: b, resistance: 0 Ω}',
    'b-c: {kind: strap, from: b, to: c, resistance: 0 Ω}',
    'c-a: {kind: strap, from: c, to: a, resistance: 0 Ω}',
    'twice: {kind: strap, from: b, to: a, resistance: 0 Ω}',
    'lone: {kind: strap, from: c, to: c, resistance: 0 Ω}',
    's: {kind: resistor, from: c, to: earth, resistance: 1 Ω}',
  )

  test('share their currents as equal resistances do', () => {
    const { opinion, relative } = advised(ring, {}, advise)
    expect(relative).toBeLessThanOrEqual(AGREED)
    const of = (name: string): number =>
      opinion.solution.currents[2 * (ring.branchIndex.get(`trial/${name}`) ?? -1)] ?? Number.NaN
    // 3 A from a to c: 1 Ω directly beside 1/2 Ω + 1 Ω, so 9/5 A and 6/5 A, the latter halved between a-b and twice
    const shares = { 'c-a': -1.8, 'b-c': 1.2, 'a-b': 0.6, twice: -0.6, lone: 0 }
    for (const [name, amperes] of Object.entries(shares))
      expect(Math.abs(of(name) - amperes), name).toBeLessThanOrEqual(1e-15)
  })

  test('of which two join an inductor without loss at direct current do the same', () => {
    const coil = compiled(
      'e: {kind: voltage-source, from: p, to: earth, direct: 6 V}',
      'r: {kind: resistor, from: p, to: q, resistance: 2 Ω}',
      'l: {kind: inductor, from: q, to: earth, inductance: 1 H}',
      'm: {kind: inductor, from: q, to: earth, inductance: 2 H}',
    )
    const { opinion, relative } = advised(coil, {}, advise)
    expect(relative).toBeLessThanOrEqual(AGREED)
    expect([4, 6].map((k) => opinion.solution.currents[k])).toEqual([1.5, 1.5])
  })
})

test('islands without earth are held by their first node, which carries nothing', () => {
  const apart = compiled(
    'e: {kind: voltage-source, from: p, to: earth, direct: 1 V}',
    'r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}',
    'f: {kind: voltage-source, from: b, to: a, direct: 2 V}',
    's: {kind: resistor, from: a, to: b, resistance: 4 Ω}',
    'c: {kind: capacitor, from: p, to: a, capacitance: 1 µF}',
  )
  const direct = advised(apart, {}, advise)
  expect(direct.relative).toBeLessThanOrEqual(AGREED)
  expect(direct.opinion.shape.gauges).toEqual(['trial/a'])
  expect(direct.opinion.voltages.get('trial/a')?.re.toNumber()).toBe(0)
  expect(advised(apart, { frequency: 50 }, advise).opinion.shape.gauges).toEqual([])
})

describe('a part whose law hangs on the size of its voltage', () => {
  const ringer = compiled(
    'e: {kind: voltage-source, from: p, to: earth, alternating: 75 V at 0°}',
    'r: {kind: resistor, from: p, to: q, resistance: 3 kΩ}',
    'c: {kind: capacitor, from: q, to: s, capacitance: 1 µF}',
    't: {kind: tone-ringer, from: s, to: earth, threshold: 30 V, load: 8 kΩ, rings from: 1 mA at 25 Hz}',
  )

  test('is stated at the size that the solution has', () => {
    const { opinion, relative } = advised(ringer, { frequency: 25 }, advise)
    expect(relative).toBeLessThanOrEqual(AGREED)
    expect(opinion.bent).toEqual(['trial/t'])
  })

  test('gives away a size that does not follow from itself', () => {
    const question: Question = {
      analysis: 'alternating',
      frequency: 25,
      condition: { line: 'idle', sets: {} },
    }
    const ours = solve(ringer, question)
    // voltages two thousandths larger: the ringer is then stated at that size, and draws another current
    const wrong = { ...ours, voltages: ours.voltages.map((value) => 1.002 * value) }
    const second = advise(ringer, wrong)
    const first = advise(ringer, ours)
    const of = ({ solution }: typeof first): number => solution.currents[2] ?? 0
    expect(Math.abs(of(second) / of(first) - 1)).toBeGreaterThan(1e-5)
  })
})
