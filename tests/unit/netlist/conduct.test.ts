import { compile } from 'ringproof/netlist/compile'
import { type Condition, conditionOf, type WrittenCondition } from 'ringproof/netlist/condition'
import { conducting, linksOf, stateOf, without } from 'ringproof/netlist/conduct'
import type { Netlist } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { circuit, DEMO, line, replacing, set, stationHouse } from './_nets.ts'

const rest: WrittenCondition = { hook: 'on-hook', dial: 'rest', key: 'up', line: 'idle' }
const doing = (place: string, one: Partial<WrittenCondition>): Condition =>
  conditionOf(place, { ...rest, ...one })
const chosen = (net: Netlist, choice: ReturnType<typeof conducting>): readonly string[] =>
  net.branches.filter(choice).map(({ id }) => id.replace(/^net\//, ''))

const mixed = circuit(`
  r: {kind: resistor, from: p, to: earth, resistance: 1 kΩ}
  c: {kind: capacitor, from: p, to: q, capacitance: 1 µF}
  leaky: {kind: capacitor, from: p, to: q, capacitance: 1 µF, leakage: 1 MΩ}
  t: {kind: induction-coil, windings: {x: {from: p, to: q, resistance: 1 Ω, inductance: 1 H}, y: {from: s, to: u, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}
  v: {kind: varistor, from: p, to: q, voltage at 1 A: 60 V, exponent: 4}
  e: {kind: voltage-source, from: p, to: earth, direct: 1 V}
  j: {kind: current-source, from: p, to: earth, direct: 1 A}
  w: {kind: strap, from: p, to: q}
  broken: {kind: strap, from: p, to: q, resistance: open}
  hook: {kind: contact, from: p, to: q, closed when: off-hook}
  pulse: {kind: contact, from: p, to: q, open when: break}
`)

describe('what conducts', () => {
  test('for direct current: no capacitor unless it leaks, no open contact, nothing that a law leaves open', () => {
    expect(chosen(mixed, conducting(mixed, doing('net', {}), 'direct'))).toEqual([
      'r',
      'leaky',
      't.x',
      't.y',
      'e',
      'w',
      'pulse',
    ])
  })

  test('for alternating current: capacitors too', () => {
    expect(chosen(mixed, conducting(mixed, doing('net', {}), 'alternating'))).toEqual([
      'r',
      'c',
      'leaky',
      't.x',
      't.y',
      'e',
      'w',
      'pulse',
    ])
  })

  test('depends on the condition of the place that a contact stands in', () => {
    const contacts = (condition: Condition) =>
      chosen(mixed, conducting(mixed, condition, 'direct')).filter((id) => id === 'hook' || id === 'pulse')
    expect(contacts(doing('net', { hook: 'off-hook' }))).toEqual(['hook', 'pulse'])
    expect(contacts(doing('net', { hook: 'off-hook', dial: 'break' }))).toEqual(['hook'])
    expect(contacts(doing('elsewhere', { hook: 'off-hook', dial: 'break' }))).toEqual(['pulse'])
    expect(contacts({ line: 'idle', sets: {} })).toEqual(['pulse'])
  })

  test('leaves out what it is told to', () => {
    const all = conducting(mixed, doing('net', {}), 'direct')
    const strap = mixed.branchIndex.get('net/w') ?? -1
    expect(chosen(mixed, without(all, [strap]))).toEqual(['r', 'leaky', 't.x', 't.y', 'e', 'pulse'])
  })

  test('at the exchange follows the state of the line', () => {
    const net = stationHouse()
    const exchange = (state: WrittenCondition['line'], analysis: 'direct' | 'alternating') =>
      chosen(net, conducting(net, { line: state, sets: {} }, analysis))
        .filter((id) => id.startsWith('exchange/'))
        .map((id) => id.slice(9))
    expect(exchange('idle', 'direct')).toEqual(['feed.a', 'feed.b'])
    expect(exchange('speech', 'alternating')).toEqual(['speech.a', 'speech.b'])
    expect(exchange('ringing', 'direct')).toEqual(['ringing', 'ringing-return'])
    expect(exchange('ringing', 'alternating')).toEqual(['ringing', 'ringing-return'])
  })

  test('never changes the netlist or its ids', () => {
    const net = stationHouse()
    const before = JSON.stringify([net.nodes, net.branches.map(({ id }) => id)])
    for (const hook of ['on-hook', 'off-hook'] as const)
      conducting(net, doing('office', { hook, line: 'ringing' }), 'alternating')
    expect(JSON.stringify([net.nodes, net.branches.map(({ id }) => id)])).toBe(before)
  })
})

describe('links of a set', () => {
  test('are its straps, cores, plug contacts and closed contacts', () => {
    const net = stationHouse({ sets: { office: { set: set('fescue'), in: 'front' } } })
    const links = chosen(net, linksOf(conducting(net, doing('office', { hook: 'off-hook' }), 'direct')))
    expect(links).toEqual(
      [
        'B2-B3',
        'B4-B5',
        'C3-A1',
        'hook',
        'impulse',
        'line.a',
        'line.b',
        'line.ringing',
        'line.spare',
        'handset.t1',
        'handset.t2',
        'handset.r1',
        'handset.r2',
        'plug.2',
        'plug.3',
        'plug.5',
      ].map((id) => `office/${id}`),
    )
  })
})

describe('links that stand among the parts', () => {
  test('are links too, whatever their sheet calls them: a strap, a contact, a bridge over a handset part', () => {
    const change = replacing(
      [
        '  bell-resistor: {',
        '  extra: {kind: strap, from: C1, to: C2}\n  key: {kind: contact, from: C1, to: C2, closed when: off-hook}\n  bell-resistor: {',
      ],
      ['  receiver:    {', '  receiver-bridge: {kind: strap, from: r1, to: r2}\n  receiver:    {'],
    )
    const net = compile({ name: 'fescue', sets: { fescue: { set: set('fescue', DEMO, change) } } })
    const links = chosen(net, linksOf(conducting(net, doing('fescue', { hook: 'off-hook' }), 'direct')))
    for (const id of ['extra', 'key', 'receiver-bridge']) expect(links).toContain(`fescue/${id}`)
    for (const id of ['receiver', 'bell-resistor', 'coil.a']) expect(links).not.toContain(`fescue/${id}`)
  })

  test('are never the wires of a cable, which is a way of some length', () => {
    const net = stationHouse()
    const links = chosen(net, linksOf(conducting(net, doing('office', {}), 'direct')))
    expect(links.filter((id) => id.includes('/cable.'))).toEqual([])
  })
})

describe('the state of a part', () => {
  test('is closed when it has neither contact nor line state, open outside its states', () => {
    const net = compile({ name: 'x', line: line(), sets: {} })
    const ringing = net.parts.find(({ id }) => id === 'exchange/ringing')
    if (ringing === undefined) throw new Error('no ringing leg')
    expect(stateOf(ringing, { line: 'ringing', sets: {} })).toBe('closed')
    expect(stateOf(ringing, { line: 'speech', sets: {} })).toBe('open')
    expect(mixed.parts.slice(0, 9).map((part) => stateOf(part, doing('net', {})))).toEqual(
      Array(9).fill('closed'),
    )
  })
})
