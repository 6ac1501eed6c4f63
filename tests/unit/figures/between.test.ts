import { between, modulus } from 'ringproof/figures/between'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const REST = { line: 'idle', sets: {} } as const
const HOUSE = { relative: 1e-9 }

function read(net: ReturnType<typeof compiled>, p: string, q: string, how: object = {}) {
  const plan = between(net, nodeOf(net, p), nodeOf(net, q), { condition: REST, ...how })
  return readFigure(net, plan, freshSupplier(net))
}

describe('resistance between two nodes', () => {
  const net = compiled(
    'r1: {kind: resistor, from: p, to: q, resistance: 300 Ω}',
    'r2: {kind: resistor, from: p, to: q, resistance: 600 Ω}',
    'e: {kind: voltage-source, from: s, to: earth, direct: 10 V}',
    'r3: {kind: resistor, from: s, to: t, resistance: 1 kΩ}',
    'c: {kind: capacitor, from: q, to: u, capacitance: 1 µF}',
    'r4: {kind: resistor, from: u, to: p, resistance: 100 Ω}',
  )

  test('is that of parallel resistors, by hand 200 Ω', () => {
    const figure = read(net, 'trial/p', 'trial/q')
    expect(figure).toMatchObject({ id: 'resistance.between', subject: 'trial/p – trial/q', unit: 'Ω' })
    expect(figure).not.toHaveProperty('frequency')
    assertClose(figure.value, 200, HOUSE, '300 Ω beside 600 Ω')
  })

  test('puts the sheet’s own sources to rest', () => {
    assertClose(read(net, 'trial/t', 'earth').value, 1000, HOUSE, 'behind 10 V')
  })

  test('is open between two islands, with no number', () => {
    expect(read(net, 'trial/p', 'trial/s')).toMatchObject({ value: null, state: 'open' })
  })

  test('leaves out what is lifted and takes in what is added', () => {
    const index = net.branchIndex.get('trial/r2') ?? -1
    assertClose(read(net, 'trial/p', 'trial/q', { lifted: [index] }).value, 300, HOUSE, 'without r2')
    const added = [{ from: nodeOf(net, 'trial/p'), to: nodeOf(net, 'trial/t') }]
    // a strap that is only thought of has a hundredth of an ohm, as one of a sheet has
    assertClose(read(net, 'trial/p', 'earth', { added }).value, 1000.01, HOUSE, 'with a strap')
  })

  test('is an impedance at a frequency, by hand a parallel of R and R + C', () => {
    const w = 2 * Math.PI * 1000
    // Z = 200 ∥ (100 + 1/jωC), by |Z1 Z2| / |Z1 + Z2|
    const x = -1 / (w * 1e-6)
    const expected = (200 * Math.hypot(100, x)) / Math.hypot(300, x)
    const figure = read(net, 'trial/p', 'trial/q', { frequency: 1000 })
    expect(figure).toMatchObject({ id: 'impedance.between', frequency: 1000 })
    assertClose(figure.value, expected, HOUSE, 'at 1 kHz')
  })
})

test('the size of a reading is its modulus, and that of none is zero', () => {
  expect(modulus(Float64Array.of(3, 4))).toBe(5)
  expect(modulus(new Float64Array())).toBe(0)
})
