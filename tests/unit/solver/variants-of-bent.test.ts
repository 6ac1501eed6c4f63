import type { Netlist } from 'ringproof/netlist/netlist'
import type { Question } from 'ringproof/solver/question'
import { type Change, changed } from 'ringproof/solver/variants/change'
import type { Reading } from 'ringproof/solver/variants/tables'
import { furthest, VariantTable } from 'ringproof/solver/variants/variant-table'
import { describe, expect, test } from 'vitest'
import { alternating, branch, circuit, DIRECT, node } from './_circuit.ts'

const NET = `
  e: {kind: voltage-source, from: s, to: earth, direct: 48 V, alternating: 1 V}
  r: {kind: resistor, from: s, to: p, resistance: 800 Ω}
  t: {kind: transmitter, from: p, to: q, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
  d: {kind: diode, from: q, to: earth, drop: 0.7 V at 10 mA}
  c: {kind: capacitor, from: p, to: w, capacitance: 1 µF}
  l: {kind: resistor, from: w, to: earth, resistance: 600 Ω}
  m: {kind: resistor, from: w, to: x, resistance: 0.5 Ω}
  n: {kind: capacitor, from: x, to: earth, capacitance: 2 µF}
`

function specOf(net: Netlist, name: string, values: object) {
  const part = net.parts.findIndex((one) => one.name === name)
  return { part, spec: { ...net.parts[part]?.spec, ...values } as never }
}
const quantity = (value: number, unit: string) => ({ value, unit, text: `${value} ${unit}` })
const readingsOf = (net: Netlist): readonly Reading[] => [
  ...net.nodes.slice(1).map((_, k): Reading => ({ voltage: [k + 1, 0] })),
  ...net.branches.map(({ index }): Reading => ({ current: index })),
]

/** How each change was found, alone; every answer must be that of a fresh solve. */
function found(net: Netlist, question: Question, changes: readonly Change[]): readonly string[] {
  const readings = readingsOf(net)
  const table = new VariantTable(net, question, readings, changes)
  const out = new Float64Array(2 * readings.length)
  return changes.map((change, c) => {
    const how = table.one(c, out)
    const { base } = new VariantTable(net, changed(question, [change]), readings, [])
    expect(furthest(readings, out, base, table.base), JSON.stringify(change)).toBeLessThan(1e-9)
    return how
  })
}

describe('variants of a network in which laws bend', () => {
  const net = circuit(NET)
  const at = (name: string) => branch(net, name)

  test('are updates where no direct current flows, and fresh where the point moves', () => {
    const changes: Change[] = [
      { lifted: at('c') },
      { within: { branch: at('l'), ohms: 50 } },
      { bridge: { from: node(net, 'w'), to: node(net, 'x'), ohms: 10 } },
      { instead: specOf(net, 'n', { capacitance: quantity(1e-6, 'F') }) },
      { within: { branch: at('r'), ohms: 50 } },
      { bridge: { from: node(net, 'p'), to: 0, ohms: 1000 } },
      { instead: specOf(net, 'r', { resistance: quantity(900, 'Ω') }) },
      { instead: specOf(net, 't', { 'falls with exponent': 0.3 }) },
    ]
    expect(found(net, alternating(1000), changes)).toEqual([
      ...['updated', 'updated', 'updated', 'updated'],
      ...['fresh', 'fresh', 'fresh', 'fresh'],
    ])
  })

  test('are fresh in direct current, unless nothing changes there', () => {
    const changes: Change[] = [
      { instead: specOf(net, 'c', { capacitance: quantity(2e-6, 'F') }) },
      { within: { branch: at('r'), ohms: 50 } },
    ]
    expect(found(net, DIRECT, changes)).toEqual(['updated', 'fresh'])
  })

  test('take a small resistance for a large one and the other way round', () => {
    const changes: Change[] = [
      { instead: specOf(net, 'm', { resistance: quantity(50, 'Ω') }) },
      { instead: specOf(net, 'l', { resistance: quantity(0.25, 'Ω') }) },
    ]
    expect(found(net, alternating(1000), changes)).toEqual(['fresh', 'fresh'])
  })

  test('of one part given two sets of values are refused', () => {
    const changes: Change[] = [1, 2].map((value) => ({
      instead: specOf(net, 'l', { resistance: quantity(value, 'Ω') }),
    }))
    const table = new VariantTable(net, alternating(1000), [{ current: at('l') }], changes)
    const out = new Float64Array(2)
    expect(table.two(0, 1, out)).toBe('refused')
    expect(out[0]).toBeNaN()
    expect(table.counts).toEqual({ updated: 0, fresh: 0, refused: 1 })
  })

  test('with a tone ringer are fresh, each with a swing of its own', () => {
    const rung = circuit(`
      e: {kind: voltage-source, from: s, to: earth, alternating: 75 V}
      r: {kind: resistor, from: s, to: p, resistance: 800 Ω}
      t: {kind: tone-ringer, from: p, to: earth, threshold: 12 V, load: 8 kΩ, capacitance: 1 µF, rings from: 2 mA at 25 Hz}
    `)
    expect(found(rung, alternating(25), [{ within: { branch: branch(rung, 'r'), ohms: 500 } }])).toEqual([
      'fresh',
    ])
  })

  test('that join what was apart are fresh', () => {
    const parts = circuit(`
      e: {kind: voltage-source, from: s, to: earth, direct: 10 V}
      r: {kind: resistor, from: s, to: earth, resistance: 1 kΩ}
      c: {kind: capacitor, from: s, to: x, capacitance: 1 µF}
      l: {kind: resistor, from: x, to: y, resistance: 1 kΩ}
    `)
    const changes: Change[] = [
      { bridge: { from: node(parts, 'x'), to: 0, ohms: 10 } },
      { instead: specOf(parts, 'c', { leakage: quantity(1e6, 'Ω') }) },
    ]
    const table = new VariantTable(parts, DIRECT, [{ current: branch(parts, 'r') }], changes)
    const out = new Float64Array(2)
    expect([table.one(0, out), table.one(1, out)]).toEqual(['fresh', 'fresh'])
  })
})
