import { NetlistBuilder } from 'ringproof/netlist/builder'
import { compile } from 'ringproof/netlist/compile'
import { nodeName } from 'ringproof/netlist/netlist'
import { copperResistance } from 'ringproof/parts/copper'
import { describe, expect, test } from 'vitest'
import { endsOf, line, premises, replacing, specOf, stationHouse } from './_nets.ts'

const FEED =
  'feed: {voltage: 50 V, resistance: 400 Ω, shared: half in each wire, negative: b wire, earth: positive pole}'
const withFeed = (feed: string) =>
  compile({ name: 'x', line: line(replacing([FEED, `feed: {${feed}}`])), sets: {} })
const legs = (feed: string) => {
  const net = withFeed(feed)
  return ['exchange/feed.a', 'exchange/feed.b'].map((id) => {
    const { direct, resistance } = specOf(net, id) as { direct: number; resistance: number }
    return [Math.abs(direct) === 0 ? 0 : direct, resistance, endsOf(net, id)[1]]
  })
}

describe('the exchange', () => {
  test('feeds through half the resistance in each wire, with the battery where its poles stand', () => {
    const rest = 'voltage: 50 V, resistance: 400 Ω, shared: half in each wire'
    expect(legs(`${rest}, negative: b wire, earth: positive pole`)).toEqual([
      [0, 200, 'earth'],
      [-50, 200, 'earth'],
    ])
    expect(legs(`${rest}, negative: a wire, earth: positive pole`)).toEqual([
      [-50, 200, 'earth'],
      [0, 200, 'earth'],
    ])
    expect(legs(`${rest}, negative: b wire, earth: negative pole`)).toEqual([
      [50, 200, 'earth'],
      [0, 200, 'earth'],
    ])
    expect(legs(`${rest}, negative: a wire, earth: negative pole`)).toEqual([
      [0, 200, 'earth'],
      [50, 200, 'earth'],
    ])
  })

  test('feeds from a battery of its own when no pole is earthed', () => {
    expect(legs('voltage: 50 V, resistance: 400 Ω, negative: b wire, earth: none')).toEqual([
      [0, 200, 'exchange/battery'],
      [-50, 200, 'exchange/battery'],
    ])
  })

  test('may have all its resistance in one wire', () => {
    const rest = 'voltage: 50 V, resistance: 400 Ω, negative: b wire, earth: positive pole'
    expect(legs(`${rest}, shared: all in a wire`).map(([, ohms]) => ohms)).toEqual([400, 0])
    expect(legs(`${rest}, shared: all in b wire`).map(([, ohms]) => ohms)).toEqual([0, 400])
  })

  test('limits its current in the leg where the battery is, so that the other ties the pair to its pole', () => {
    const limits = (feed: string) => {
      const net = withFeed(`voltage: 50 V, resistance: 230 Ω, current limit: 60 mA, ${feed}`)
      return ['exchange/feed.a', 'exchange/feed.b'].map((id) => (specOf(net, id) as { limit?: number }).limit)
    }
    expect(limits('negative: b wire, earth: positive pole')).toEqual([undefined, 0.06])
    expect(limits('negative: a wire, earth: positive pole')).toEqual([0.06, undefined])
    expect(limits('negative: b wire, earth: negative pole')).toEqual([0.06, undefined])
    expect(limits('negative: b wire, earth: none')).toEqual([undefined, 0.06])
  })

  test('with a limit alone has no resistance below it', () => {
    expect(legs('voltage: 21 V, current limit: 20 mA, negative: b wire, earth: positive pole')).toEqual([
      [0, 0, 'earth'],
      [-21, 0, 'earth'],
    ])
  })

  test('rings the wire that its sheet names, over the battery, and returns by the other', () => {
    const net = stationHouse()
    expect(endsOf(net, 'exchange/ringing')).toEqual(['exchange/b', 'earth'])
    expect(endsOf(net, 'exchange/ringing-return')).toEqual(['exchange/a', 'earth'])
    expect(specOf(net, 'exchange/ringing')).toMatchObject({ resistance: 400, alternating: 75, direct: -50 })
    const other = compile({
      name: 'x',
      line: line(replacing(['sent to: b wire', 'sent to: a wire'])),
      sets: {},
    })
    expect(endsOf(other, 'exchange/ringing')).toEqual(['exchange/a', 'earth'])
    expect(specOf(other, 'exchange/ringing')).toMatchObject({ direct: 50 })
  })

  test('rings without a battery beneath when its sheet names none, in the wave that its sheet names', () => {
    const bare = line(replacing([', over battery: 50 V', ''], ['wave: sine', 'wave: {trapezoid: 1.25}']))
    const net = compile({ name: 'x', line: bare, sets: {} })
    expect(Math.abs((specOf(net, 'exchange/ringing') as { direct: number }).direct)).toBe(0)
    expect(specOf(net, 'exchange/ringing')).toMatchObject({ wave: { frequency: 25, crest: 1.25 } })
    expect(net.line?.ringingHarmonics).toEqual([1, 3, 5, 7, 9, 11, 13, 15])
  })

  test('is described by its figures and by the branches that stand for it', () => {
    const net = stationHouse()
    const ids = (all: readonly number[] = []) => all.map((k) => net.branches[k]?.id)
    expect(net.line).toMatchObject({
      name: 'depot-exchange',
      feedVoltage: 50,
      ringingFrequency: 25,
      ringingVoltage: 75,
      ringingHarmonics: [1],
    })
    expect([net.line?.a, net.line?.b].map((node) => nodeName(net, node ?? -1))).toEqual([
      'exchange/a',
      'exchange/b',
    ])
    expect(ids(net.line?.exchange)).toEqual([
      'exchange/feed.a',
      'exchange/feed.b',
      'exchange/ringing',
      'exchange/ringing-return',
      'exchange/speech.a',
      'exchange/speech.b',
    ])
    expect(ids(net.line?.termination)).toEqual(['exchange/speech.a', 'exchange/speech.b'])
  })

  test('may have no ringing at all', () => {
    const { ringing: _, ...silent } = line()
    const net = compile({ name: 'x', line: silent as never, sets: {} })
    expect(net.line).toMatchObject({ ringingFrequency: undefined, ringingHarmonics: [] })
    expect(net.branches.map(({ id }) => id)).toEqual([
      'exchange/feed.a',
      'exchange/feed.b',
      'exchange/speech.a',
      'exchange/speech.b',
    ])
  })
})

describe('a run of cable', () => {
  test('is the resistance of its copper, wire by wire, at its temperature', () => {
    // copper by IEC 60028 (1925), see parts/copper.test.ts
    const net = stationHouse()
    expect(specOf(net, 'front/cable.a')).toMatchObject({ resistance: copperResistance(0.0005, 1000, 20) })
    expect(specOf(net, 'hall/cable.ringing')).toMatchObject({ resistance: copperResistance(0.0005, 12) })
    const cold = stationHouse({ line: line(replacing(['temperature: 20 °C', 'temperature: 0 °C'])) })
    expect(specOf(cold, 'front/cable.b')).toMatchObject({ resistance: copperResistance(0.0005, 1000, 0) })
  })

  test('that a sheet leaves out is links of no resistance, with nothing between them', () => {
    const near = premises(replacing([', over: {type: house-three, gauge: 0.5 mm, length: 12 m}', '']))
    const net = stationHouse({ premises: near })
    expect(specOf(net, 'hall/cable.a')).toMatchObject({ kind: 'strap', resistance: { value: 0 } })
    expect(net.branches.map(({ id }) => id).filter((id) => id.startsWith('hall/cable'))).toEqual([
      'hall/cable.a',
      'hall/cable.b',
      'hall/cable.ringing',
    ])
  })

  test('has between its wires what its type has for a kilometre', () => {
    // 50 nF/km: nominal line of a national interface note, secondary copy
    const net = stationHouse()
    expect(specOf(net, 'front/cable.near-a-b')).toMatchObject({ capacitance: 50e-9, leakance: 0 })
    expect(endsOf(net, 'front/cable.near-a-b')).toEqual(['exchange/a', 'exchange/b'])
    expect(endsOf(net, 'front/cable.far-a-b')).toEqual(['front/a', 'front/b'])
    expect(endsOf(net, 'hall/cable.far-b-ringing')).toEqual(['hall/b', 'hall/ringing'])
  })
})

describe('the builder', () => {
  test('names only nodes that exist', () => {
    expect(() => new NetlistBuilder().names(0, 1)).toThrow('no node has the index 1')
  })
})
