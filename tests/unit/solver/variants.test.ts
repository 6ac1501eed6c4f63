import * as fc from 'fast-check'
import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { readSheet } from 'ringproof/sheet/read'
import type { Question } from 'ringproof/solver/question'
import { type Change, changed } from 'ringproof/solver/variants/change'
import type { Reading } from 'ringproof/solver/variants/tables'
import { furthest, VariantTable } from 'ringproof/solver/variants/variant-table'
import { describe, expect, test } from 'vitest'
import type { Circuit } from '../../support/circuit.ts'
import { circuitSheet } from '../../support/circuit-sheet.ts'
import { analyses, circuits } from '../../support/circuits.ts'
import { SEED } from '../../support/seed.ts'
import { shelfOf } from '../../support/sheets.ts'
import { alternating, ask, branch, circuit, DIRECT, node } from './_circuit.ts'

function netOf(one: Circuit): Netlist {
  const { sheet } = readSheet({ file: 'net.yaml', text: circuitSheet(one) }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error('the random circuit is no sheet')
  return compileCircuit(sheet)
}

/** Every change that a netlist offers: each branch lifted or with 5 Ω within, some links, other values for resistors. */
function changesOf(net: Netlist, links: readonly number[]): readonly Change[] {
  const at = (k: number) => (links[k] ?? 0) % net.nodes.length
  return [
    ...net.branches.map(({ index }): Change => ({ lifted: index })),
    ...net.branches.map(({ index }): Change => ({ within: { branch: index, ohms: 5 } })),
    { bridge: { from: at(0), to: at(1), ohms: 0.01 } },
    { bridge: { from: at(2), to: at(3), ohms: 1e6 } },
    ...net.parts.flatMap((part, index): Change[] => {
      const { resistance } = part.spec as unknown as { readonly resistance?: { readonly value: number } }
      if (part.spec.kind !== 'resistor' || resistance === undefined) return []
      const spec = { ...part.spec, resistance: { ...resistance, value: resistance.value * 1.1 } }
      return [{ instead: { part: index, spec } }]
    }),
  ]
}

function readingsOf(net: Netlist): readonly Reading[] {
  return [
    ...net.nodes.slice(1).map((_, k): Reading => ({ voltage: [k + 1, 0] })),
    ...net.branches.map(({ index }): Reading => ({ current: index })),
  ]
}

/** What a fresh solve of the changed question reads; undefined where it is refused. */
function fresh(net: Netlist, question: Question, readings: readonly Reading[], changes: readonly Change[]) {
  const table = new VariantTable(net, changed(question, changes), readings, [])
  return table.base
}

const links = fc.array(fc.nat(999), { minLength: 4, maxLength: 4 })

describe('variants of a solved network', () => {
  test('each single change reads as a fresh solve does, to nine digits', () => {
    let updated = 0
    fc.assert(
      fc.property(circuits(), analyses, links, (one, frequency, ends) => {
        const net = netOf(one)
        const question = frequency === null ? DIRECT : alternating(frequency)
        const readings = readingsOf(net)
        const changes = changesOf(net, ends)
        const table = new VariantTable(net, question, readings, changes)
        const out = new Float64Array(2 * readings.length)
        changes.forEach((change, c) => {
          if (table.one(c, out) !== 'updated') return
          updated += 1
          const expected = fresh(net, question, readings, [change])
          expect(furthest(readings, out, expected, table.base), JSON.stringify(change)).toBeLessThan(1e-9)
        })
      }),
      { seed: SEED, numRuns: 30 },
    )
    expect(updated).toBeGreaterThan(1000)
  })

  test('pairs of changes too', () => {
    let updated = 0
    fc.assert(
      fc.property(circuits(), analyses, links, fc.nat(), (one, frequency, ends, step) => {
        const net = netOf(one)
        const question = frequency === null ? DIRECT : alternating(frequency)
        const readings = readingsOf(net)
        const changes = changesOf(net, ends)
        const table = new VariantTable(net, question, readings, changes)
        const out = new Float64Array(2 * readings.length)
        changes.forEach((change, c) => {
          const d = (c + 1 + (step % (changes.length - 1))) % changes.length
          if (table.two(c, d, out) !== 'updated') return
          updated += 1
          const expected = fresh(net, question, readings, [change, changes[d] ?? change])
          expect(
            furthest(readings, out, expected, table.base),
            JSON.stringify([change, changes[d]]),
          ).toBeLessThan(1e-9)
        })
      }),
      { seed: SEED + 1, numRuns: 30 },
    )
    expect(updated).toBeGreaterThan(500)
  })

  const DIVIDER = `
    e: {kind: voltage-source, from: a, to: earth, direct: 10 V, alternating: 10 V}
    s: {kind: strap, from: a, to: b}
    r1: {kind: resistor, from: b, to: c, resistance: 1 kΩ}
    r2: {kind: resistor, from: c, to: earth, resistance: 1 kΩ}
    r3: {kind: resistor, from: c, to: earth, resistance: 1 kΩ}
  `

  test('opening the only way to a node is left to a fresh solve, which calls its voltage undetermined', () => {
    const net = circuit(
      DIVIDER.replace('r3', '#r3').replace('r2: {kind: resistor, from: c', 'r2: {kind: resistor, from: d'),
    )
    const readings: Reading[] = [{ voltage: [node(net, 'c'), 0] }, { current: branch(net, 's') }]
    const table = new VariantTable(net, DIRECT, readings, [{ lifted: branch(net, 's') }])
    const out = new Float64Array(4)
    expect(table.one(0, out)).toBe('fresh')
    expect(out).toEqual(Float64Array.of(Number.NaN, Number.NaN, 0, 0))
  })

  test('two cuts that part the network together are seen although neither does alone', () => {
    const net = circuit(`
      e: {kind: voltage-source, from: a, to: earth, direct: 10 V}
      r1: {kind: resistor, from: a, to: c, resistance: 1 kΩ}
      r2: {kind: resistor, from: a, to: c, resistance: 1 kΩ}
      r3: {kind: resistor, from: c, to: d, resistance: 1 kΩ}
      r4: {kind: resistor, from: a, to: earth, resistance: 1 kΩ}
    `)
    const readings: Reading[] = [{ current: branch(net, 'r4') }, { voltage: [node(net, 'd'), 0] }]
    const cuts: Change[] = [{ lifted: branch(net, 'r1') }, { lifted: branch(net, 'r2') }]
    const table = new VariantTable(net, DIRECT, readings, cuts)
    const out = new Float64Array(4)
    expect(table.one(0, out)).toBe('updated')
    expect(out[2]).toBeCloseTo(10, 14)
    expect(table.two(0, 1, out)).toBe('fresh')
    expect(out).toEqual(Float64Array.of(0.01, 0, Number.NaN, Number.NaN))
  })

  test('a short across a source is refused as the contradiction that it is', () => {
    const net = circuit(DIVIDER)
    const short: Change = { bridge: { from: node(net, 'a'), to: 0, ohms: 0 } }
    const table = new VariantTable(net, DIRECT, [{ current: branch(net, 's') }], [short])
    const out = new Float64Array(2)
    expect(table.one(0, out)).toBe('refused')
    expect(out[0]).toBeNaN()
  })

  test('samples are solved afresh and the worst difference is kept', () => {
    const net = circuit(DIVIDER)
    const changes: Change[] = ['r1', 'r2', 'r3'].map((name) => ({
      within: { branch: branch(net, name), ohms: 50 },
    }))
    const table = new VariantTable(net, alternating(50), readingsOf(net), changes, { seed: 7, every: 1 })
    const out = new Float64Array(2 * readingsOf(net).length)
    for (const c of [0, 1, 2]) table.one(c, out)
    for (const c of [0, 1]) table.two(c, c + 1, out)
    expect(table.counts).toEqual({ updated: 5, fresh: 0, refused: 0 })
    expect(table.sampled).toBe(5)
    expect(table.worst).toBeLessThan(1e-13)
  })

  test('a change of the same branch twice, and one that changes nothing, are answered too', () => {
    const net = circuit(DIVIDER)
    const r2 = branch(net, 'r2')
    const readings: Reading[] = [{ current: branch(net, 's') }]
    const changes: Change[] = [
      { within: { branch: r2, ohms: 1000 } },
      { within: { branch: r2, ohms: 2000 } },
      { bridge: { from: node(net, 'c'), to: node(net, 'c'), ohms: 5 } },
    ]
    const table = new VariantTable(net, DIRECT, readings, changes)
    const out = new Float64Array(2)
    const current = (below: number) => 10 / (1000.01 + 1 / (1 / below + 1 / 1000))
    expect(table.two(0, 1, out)).toBe('fresh')
    expect(out[0]).toBeCloseTo(current(4000), 15)
    expect(table.two(0, 2, out)).toBe('updated')
    expect(out[0]).toBeCloseTo(current(2000), 15)
    expect(table.one(2, out)).toBe('updated')
    expect(out[0]).toBe(ask(net).i('s').re)
  })

  test('a reading that stands twice is a mistake', () => {
    const net = circuit(DIVIDER)
    expect(() => new VariantTable(net, DIRECT, [{ current: 0 }, { current: 0 }], [])).toThrow(RangeError)
  })
})
