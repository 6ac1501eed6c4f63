import { makeBook } from 'ringproof/book/make-book'
import { graverBy } from 'ringproof/book/severity'
import type { Change } from 'ringproof/figures/variants'
import { nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { compiled } from '../../support/compiled.ts'
import { branchOf, DIVIDER, faultOf, partOf, resisting, testOf, volts } from './_divider.ts'

const SEVERITY = { ohms: 2.5, values: 0.25, source: 'from memory' }
const net = compiled(...DIVIDER)
const graver = (...changes: Change[]) => graverBy(net, changes, SEVERITY)
const node = nodeOf(net, 'trial/q')

describe('a fault that is graver than the book has it', () => {
  test('opens and links have no size', () => {
    expect(graver({ lifted: branchOf(net, 'r1') })).toBeUndefined()
    expect(graver({ bridge: { from: node, to: 0, ohms: 0.01 } })).toBeUndefined()
  })

  test('leaks more, resists more', () => {
    const branch = branchOf(net, 'r1')
    expect(graver({ bridge: { from: node, to: 0, ohms: 100 } }, { within: { branch, ohms: 20 } })).toEqual([
      { bridge: { from: node, to: 0, ohms: 40 } },
      { within: { branch, ohms: 50 } },
    ])
  })

  test('keeps what has no size beside what has', () => {
    const lifted = { lifted: branchOf(net, 'r1') }
    expect(graver(lifted, { bridge: { from: node, to: 0, ohms: 100 } })?.[0]).toEqual(lifted)
  })

  test('drifts further by the power of the ratio', () => {
    const part = partOf(net, 'r2')
    const found = graver({ instead: { part, spec: resisting(net, 'r2', 500) } })
    // 2 kΩ to 500 Ω is a quarter; a quarter to the power 1.25
    expect(found).toMatchObject([{ instead: { spec: { resistance: { value: 2000 * 0.25 ** 1.25 } } } }])
  })

  test('levels go further by their difference', () => {
    const part = partOf(net, 'r2')
    const level = (value: number) => ({ kind: 'resistor', level: { value, unit: 'dB', text: '' } })
    const changed = {
      ...net,
      parts: net.parts.map((one, k) => (k === part ? { ...one, spec: level(40) } : one)),
    }
    const found = graverBy(changed, [{ instead: { part, spec: level(28) } }], SEVERITY)
    expect(found).toMatchObject([{ instead: { spec: { level: { value: 25 } } } }])
  })
})

test('spreads its row by what one standard deviation of its size moves', () => {
  const free = compiled(
    'e: {kind: voltage-source, from: p, to: earth, direct: 12 V}',
    'r1: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
    'r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ}',
  )
  const inputs = {
    net: free,
    transmitterSpread: 3,
    severity: SEVERITY,
    tests: [testOf('q', volts(free, 'trial/q'))],
    faults: [
      faultOf('r1 resists', { within: { branch: branchOf(free, 'r1'), ohms: 1000 } }),
      faultOf('r1 open', { lifted: branchOf(free, 'r1') }),
    ],
  }
  const { spreads } = makeBook(inputs)
  // closed form of a divider: 12 V · 2 / (1 + 1 + 2) as the book has it, 12 V · 2 / (1 + 2.5 + 2) one deviation on
  const step = Math.asinh((12 * 2) / 5.5 / 0.5) - Math.asinh((12 * 2) / 4 / 0.5)
  expect(spreads[1]).toBeCloseTo(Math.abs(step), 9)
  expect([spreads[0], spreads[2]]).toEqual([0, 0])
})
