import { conversionLoss, type Stray } from 'ringproof/figures/conversion-loss'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const REST = { line: 'idle', sets: {} } as const
const HOUSE = { relative: 1e-9 }
/** To the digits of the table. */
const PRINTED = { relative: 0, absolute: 6e-5 }

function read(net: Netlist, frequency: number, stray?: Stray, changes: object = {}) {
  const pair = { name: 'house', a: nodeOf(net, 'trial/a'), b: nodeOf(net, 'trial/b') }
  return readFigure(net, conversionLoss(pair, REST, frequency, changes, stray), freshSupplier(net))
}

/** Two wires, the first of which has a capacitor to earth. */
function loaded(nanofarads: number, ...more: readonly string[]): Netlist {
  return compiled(
    `c: {kind: capacitor, from: a, to: earth, capacitance: ${nanofarads} nF}`,
    'idle: {kind: resistor, from: b, to: x, resistance: 1 kΩ}',
    ...more,
  )
}

describe('longitudinal conversion loss by the two resistances of AS/CA S002:2010 clause 6.7.3', () => {
  // 20 lg |(1 + jx)/jx| with x = ω·300 Ω·C; derived
  const table: readonly (readonly [number, number, number, number])[] = [
    [0.1, 84.9516, 74.494, 63.8644],
    [0.5, 70.9722, 60.5146, 49.885],
    [1, 64.9516, 54.494, 43.8646],
    [10, 44.9517, 34.4955, 23.8822],
  ]
  test.each(table)('with %d nF on one wire is right at 300, 1000 and 3400 Hz', (nanofarads, ...expected) => {
    const net = loaded(nanofarads)
    expected.forEach((value, k) => {
      const figure = read(net, [300, 1000, 3400][k] ?? 0)
      expect(figure).toMatchObject({ id: 'balance.conversion-loss', subject: 'house', unit: 'dB' })
      assertClose(figure.value, value, PRINTED, `${nanofarads} nF`)
    })
  })

  test('meets the limit of clause 5.4.4, 46 dB, at 0.78203 nF and 3400 Hz', () => {
    expect(read(loaded(0.78202), 3400).value).toBeGreaterThan(46)
    expect(read(loaded(0.78204), 3400).value).toBeLessThan(46)
  })

  test('takes a capacitance that the netlist does not know of as it would one that is there', () => {
    const net = loaded(0.3, 'across: {kind: resistor, from: a, to: b, resistance: 900 Ω}')
    const stray = { node: nodeOf(net, 'trial/a'), farads: 0.7e-9 }
    const there = loaded(1, 'across: {kind: resistor, from: a, to: b, resistance: 900 Ω}')
    for (const frequency of [300, 3400, 1e6])
      assertClose(read(net, frequency, stray).value, read(there, frequency).value ?? 0, HOUSE, 'dB')
  })

  test('takes one behind a ringing capacitor as a part of a third wire', () => {
    const lead = 'ringing: {kind: capacitor, from: b, to: r, capacitance: 1.8 µF}'
    const net = compiled(lead, 'x: {kind: resistor, from: a, to: y, resistance: 1 kΩ}')
    const stray = { node: nodeOf(net, 'trial/r'), farads: 1e-9 }
    // 1 nF behind 1.8 µF is their series; the method is the same for either wire
    const series = 1 / (1 + 1 / 1800)
    for (const frequency of [1000, 3400])
      assertClose(
        read(net, frequency, stray).value,
        read(loaded(series), frequency).value ?? 0,
        { relative: 1e-7 },
        'dB',
      )
  })

  test('is 6 dB better with 600 Ω across the pair', () => {
    const net = loaded(0.1, 'across: {kind: resistor, from: a, to: b, resistance: 600 Ω}')
    const bare = read(loaded(0.1), 1000).value ?? 0
    // exact only for a small capacitance
    assertClose(read(net, 1000).value, bare + 20 * Math.log10(2), { relative: 0, absolute: 1e-3 }, 'dB')
  })

  test('of wires that have the same to earth is no number', () => {
    const net = loaded(1, 'd: {kind: capacitor, from: b, to: earth, capacitance: 1 nF}')
    expect(read(net, 3400)).toMatchObject({ value: null, state: 'beyond-range' })
  })

  test('leaves out what is lifted', () => {
    const net = loaded(1)
    const lifted = [net.branchIndex.get('trial/c') ?? -1]
    expect(read(net, 3400, undefined, { lifted })).toMatchObject({ value: null, state: 'beyond-range' })
  })
})
