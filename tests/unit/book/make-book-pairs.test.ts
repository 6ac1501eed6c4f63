import { type BookInputs, makeBook } from 'ringproof/book/make-book'
import { makePairs, pairMaker, pairsOf, spreadOfPair } from 'ringproof/book/pairs'
import { nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { branchOf, divider, faultOf, partOf, resisting, testOf, volts } from './_divider.ts'

/** Pairs by the ids of their faults. */
function named({ net, faults }: BookInputs): readonly string[] {
  const { count, first, second } = pairsOf(net, faults)
  return Array.from(
    { length: count },
    (_, k) => `${faults[first[k] ?? -1]?.id} + ${faults[second[k] ?? -1]?.id}`,
  )
}

describe('which two faults can be at once', () => {
  test('those that do not befall the same branch', () => {
    expect(named(divider())).toEqual([
      'r1 open + r2 drifted',
      'r1 open + r2 shorted',
      'r1 open + r3 open',
      'r2 drifted + r1 resists',
      'r2 drifted + r3 open',
      'r2 shorted + r1 resists',
      'r2 shorted + r3 open',
      'r1 resists + r3 open',
    ])
  })

  test('those that do not name the same thing, whatever they change, nor bridge the same nodes', () => {
    const inputs = divider()
    const q = nodeOf(inputs.net, 'trial/q')
    const core = (id: string, ohms: number) => faultOf(id, { bridge: { from: 0, to: q, ohms } })
    const turned = faultOf('damp', { bridge: { from: q, to: 0, ohms: 30_000 } })
    const two = { ...faultOf('x one', { lifted: branchOf(inputs.net, 'r1') }), subjects: ['a', 'b'] }
    const other = { ...faultOf('y two', { lifted: branchOf(inputs.net, 'r3') }), subjects: ['b', 'c'] }
    const one = core('core short', 0)
    expect(named({ ...inputs, faults: [one, turned, two, other] })).toEqual([
      'core short + x one',
      'core short + y two',
      'damp + x one',
      'damp + y two',
    ])
  })

  test('two windings of one coil, but not a winding and the coil’s turns', () => {
    const net = compiled(
      'c: {kind: induction-coil, windings: {a: {from: p, to: earth, resistance: 10 Ω, inductance: 1 H}, b: {from: q, to: earth, resistance: 10 Ω, inductance: 1 H}}, coupling: {a-b: 0.9}}',
    )
    const [a, b] = [net.branchIndex.get('trial/c.a') ?? -1, net.branchIndex.get('trial/c.b') ?? -1]
    const spec = net.parts[partOf(net, 'c')]?.spec ?? { kind: '' }
    const faults = [
      faultOf('c.a open', { lifted: a }),
      faultOf('c.b open', { lifted: b }),
      faultOf('c turns', { instead: { part: partOf(net, 'c'), spec } }),
    ]
    expect(named({ net, faults, tests: [], transmitterSpread: 3 })).toEqual(['c.a open + c.b open'])
  })
})

describe('the pairs of a divider', () => {
  const inputs = divider()
  const pairs = makePairs(inputs)
  const SINGLE = { relative: 1e-6 }

  test('hold what two faults make together, as Ohm’s law says', () => {
    const beside = (one: number, other: number): number => 1 / (1 / one + 1 / other)
    const v = (r1: number, low: number): number => (12 * low) / (r1 + low)
    const expected = [0, 0, 0, v(2000, beside(500, 1e7)), v(1000, 500), 0, 0, v(2000, 2000)]
    for (const [k, value] of expected.entries())
      assertClose(pairs.scores[2 * k], value, { ...SINGLE, absolute: 1e-9 }, `pair ${k}`)
    for (const [k, _] of expected.entries()) assertClose(pairs.scores[2 * k + 1], 12, SINGLE, `pair ${k}`)
  })

  test('come out the same in whatever pieces they are made', () => {
    const maker = pairMaker(divider())
    expect([...maker.rows(5, 8).scores, ...maker.rows(0, 5).scores]).toEqual([
      ...pairs.scores.slice(10),
      ...pairs.scores.slice(0, 10),
    ])
    expect(() => maker.rows(8, 9)).toThrow(RangeError)
  })

  test('spread as both of their faults do', () => {
    const book = makeBook(inputs)
    const [drifted = 0, resists = 0] = [book.spreads[2 * 2], book.spreads[4 * 2]]
    assertClose(
      spreadOfPair(book, pairs, 3, 0),
      Math.sqrt(drifted ** 2 + resists ** 2),
      { relative: 1e-12 },
      'spread',
    )
  })

  test('tell how far they are, and are none where there is but one fault', () => {
    const said: string[] = []
    makePairs(inputs, (says) => said.push(says))
    expect(said).toEqual(['working out pairs of faults: 0 of 8'])
    const none = makePairs({ ...inputs, faults: inputs.faults.slice(0, 1) })
    expect([none.count, none.scores.length]).toEqual([0, 0])
  })

  test('of 300 faults take a few megabytes a hundred tests, not more', () => {
    const net = compiled(
      ...Array.from(
        { length: 300 },
        (_, k) => `r${k}: {kind: resistor, from: n${k}, to: earth, resistance: 1 kΩ}`,
      ),
    )
    const faults = Array.from({ length: 300 }, (_, k) =>
      faultOf(`r${k} open`, { lifted: branchOf(net, `r${k}`) }),
    )
    const { count, first, second } = pairsOf(net, faults)
    expect(count).toBe((300 * 299) / 2)
    // 45,000 pairs: four bytes a score and four for the two indices
    expect((first.byteLength + second.byteLength + 4 * 100 * count) / 2 ** 20).toBeLessThan(20)
    expect([first[0], second[0], first[count - 1], second[count - 1]]).toEqual([0, 1, 298, 299])
  })

  test('rest on updates that agree with a drifted value given at once', () => {
    const drifted = resisting(inputs.net, 'r2', 500)
    const both = faultOf(
      'both',
      { instead: { part: partOf(inputs.net, 'r2'), spec: drifted } },
      { within: { branch: branchOf(inputs.net, 'r1'), ohms: 1000 } },
    )
    const book = makeBook({ ...inputs, faults: [both], tests: [testOf('q', volts(inputs.net, 'trial/q'))] })
    assertClose(pairs.scores[2 * 3], book.scores[1] ?? Number.NaN, SINGLE, 'r2 drifted + r1 resists')
  })
})
