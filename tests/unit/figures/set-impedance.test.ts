import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { REFERENCE_NETWORKS, type ReferenceName } from 'ringproof/figures/reference-networks'
import { impedanceAt, type Port, returnLossAt } from 'ringproof/figures/set-impedance'
import { branchAt, type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const REST = { line: 'speech', sets: {} } as const
const PRINTED = { relative: 0, absolute: 6e-5 }
const HOUSE = { relative: 1e-9 }

/** A source of 2 V behind 75 Ω, the link that stands for a plug contact, and what is measured between `a` and earth. */
function measured(...parts: readonly string[]): Netlist {
  return compiled(
    'e: {kind: voltage-source, from: s, to: earth, alternating: 2 V}',
    'inner: {kind: resistor, from: s, to: w, resistance: 75 Ω}',
    'plug: {kind: strap, from: w, to: a, resistance: 0 Ω}',
    ...parts,
  )
}

function portOf(net: Netlist): Port {
  const link = branchAt(net, net.branchIndex.get('trial/plug') ?? -1)
  return { name: 'trial', a: nodeOf(net, 'trial/a'), b: 0, into: link.index }
}

function question(frequency: number) {
  return { analysis: 'alternating', frequency, condition: REST } as const
}

function impedance(net: Netlist, frequency: number) {
  return readFigure(net, impedanceAt(portOf(net), question(frequency)), freshSupplier(net))
}

function loss(net: Netlist, against: ReferenceName, frequency: number) {
  const network = REFERENCE_NETWORKS.find(({ name }) => name === against)
  if (network === undefined) throw new Error(against)
  return readFigure(net, returnLossAt(portOf(net), network, question(frequency)), freshSupplier(net))
}

const EUROPEAN = measured(
  'r: {kind: resistor, from: a, to: m, resistance: 270 Ω}',
  'r2: {kind: resistor, from: m, to: earth, resistance: 750 Ω}',
  'c: {kind: capacitor, from: m, to: earth, capacitance: 150 nF}',
)
const BRITISH = measured(
  'r: {kind: resistor, from: a, to: m, resistance: 370 Ω}',
  'r2: {kind: resistor, from: m, to: earth, resistance: 620 Ω}',
  'c: {kind: capacitor, from: m, to: earth, capacitance: 310 nF}',
)
const AUSTRALIAN = measured(
  'r: {kind: resistor, from: a, to: m, resistance: 220 Ω}',
  'r2: {kind: resistor, from: m, to: earth, resistance: 820 Ω}',
  'c: {kind: capacitor, from: m, to: earth, capacitance: 120 nF}',
)

describe('the impedance of what hangs on a pair', () => {
  test('is that of the parts, size and phase, whatever feeds it', () => {
    // TBR 21, ZR at 1 kHz; derived: 847.3789 Ω at −24.6569°
    const figure = impedance(EUROPEAN, 1000)
    expect(figure).toMatchObject({ id: 'speech.impedance', subject: 'trial', unit: 'Ω', frequency: 1000 })
    assertClose(figure.value, 847.3789, PRINTED, 'size')
    assertClose(figure.phasor?.re ?? 0, 770.1171, PRINTED, 're')
    assertClose(figure.phasor?.im ?? 0, -353.512, PRINTED, 'im')
  })

  test('is inductive where a coil is', () => {
    const net = measured('l: {kind: inductor, from: a, to: earth, inductance: 100 mH, resistance: 300 Ω}')
    const { phasor } = impedance(net, 1000)
    assertClose(phasor?.re ?? 0, 300, HOUSE, 're')
    assertClose(phasor?.im ?? 0, 200 * Math.PI, HOUSE, 'ωL')
  })

  test('is open where nothing hangs, and has no phase then', () => {
    const figure = impedance(measured('far: {kind: resistor, from: x, to: earth, resistance: 1 kΩ}'), 1000)
    expect(figure).toMatchObject({ value: null, state: 'open' })
    expect(figure).not.toHaveProperty('phasor')
  })

  test('is undetermined where nothing drives it', () => {
    const net = compiled(
      'plug: {kind: strap, from: w, to: a, resistance: 0 Ω}',
      'inner: {kind: resistor, from: w, to: earth, resistance: 75 Ω}',
      'r: {kind: resistor, from: a, to: earth, resistance: 600 Ω}',
    )
    expect(impedance(net, 1000)).toMatchObject({ value: null, state: 'undetermined' })
    expect(loss(net, 'british', 1000)).toMatchObject({ value: null, state: 'undetermined' })
  })
})

describe('return loss', () => {
  // 20 lg |(Za + Zb)/(Za − Zb)| of the networks of TBR 21, of the United Kingdom and of AS/CA S002:2010; derived
  const table: readonly (readonly [string, Netlist, ReferenceName, number, number])[] = [
    ['European network', EUROPEAN, 'six-hundred-ohm', 300, 11.6624],
    ['European network', EUROPEAN, 'six-hundred-ohm', 1000, 11.1424],
    ['European network', EUROPEAN, 'six-hundred-ohm', 3400, 9.3885],
    ['British network', BRITISH, 'six-hundred-ohm', 300, 12.2199],
    ['British network', BRITISH, 'six-hundred-ohm', 1000, 12.3079],
    ['British network', BRITISH, 'six-hundred-ohm', 3400, 12.4592],
    ['Australian network', AUSTRALIAN, 'six-hundred-ohm', 300, 11.355],
    ['Australian network', AUSTRALIAN, 'six-hundred-ohm', 1000, 10.7348],
    ['Australian network', AUSTRALIAN, 'six-hundred-ohm', 3400, 8.3292],
    ['European network', EUROPEAN, 'british', 300, 27.2942],
    ['European network', EUROPEAN, 'british', 1000, 19.8988],
    ['European network', EUROPEAN, 'british', 3400, 16.9494],
    ['British network', BRITISH, 'australian', 300, 25.2012],
    ['British network', BRITISH, 'australian', 1000, 17.9387],
    ['British network', BRITISH, 'australian', 3400, 14.066],
  ]
  test.each(table)('of the %s is right (%#)', (_words, net, against, frequency, expected) => {
    assertClose(loss(net, against, frequency).value, expected, PRINTED, `${against} at ${frequency} Hz`)
  })

  test('is the same whichever of the two is the reference', () => {
    const one = loss(AUSTRALIAN, 'european-harmonised', 700).value ?? 0
    assertClose(loss(EUROPEAN, 'australian', 700).value, one, HOUSE, 'exchanged')
  })

  test('of equal impedances is no number', () => {
    expect(loss(EUROPEAN, 'european-harmonised', 1000)).toMatchObject({ value: null, state: 'beyond-range' })
  })

  test('of an open or a shorted pair is nothing, since all returns', () => {
    const open = measured('far: {kind: resistor, from: x, to: earth, resistance: 1 kΩ}')
    const shorted = measured('s: {kind: strap, from: a, to: earth, resistance: 0 Ω}')
    for (const net of [open, shorted])
      assertClose(loss(net, 'british', 1000).value, 0, { relative: 0, absolute: 1e-9 }, 'dB')
  })

  test('of 900 Ω against 600 Ω is that of the ideal hybrid, 13.979 dB', () => {
    const net = measured('r: {kind: resistor, from: a, to: earth, resistance: 900 Ω}')
    assertClose(
      loss(net, 'six-hundred-ohm', 1000).value,
      20 * Math.log10(5),
      HOUSE,
      '(900 + 600)/(900 − 600)',
    )
  })

  test('names the place and what the network is made of', () => {
    expect(loss(EUROPEAN, 'british', 1000).subject).toBe('trial against 370 Ω + 620 Ω ∥ 310 nF')
  })
})
