import { stand } from 'ringproof/answer/standing'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import {
  CAPACITOR_SHARE,
  ringingCapacitors,
  ringingCurrent,
  ringingVoltage,
  withRole,
} from 'ringproof/figures/ringing'
import { branchAt, placeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const RINGING = { line: 'ringing', sets: {} } as const

describe('a bell on a ringing generator', () => {
  const net = compiled(
    'e: {kind: voltage-source, from: p, to: earth, direct: 0 V, alternating: 75 V}',
    'c: {kind: capacitor, from: p, to: q, capacitance: 1.8 µF}',
    'bell: {kind: bell, from: q, to: earth, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}',
  )
  const bell = branchAt(net, net.branchIndex.get('trial/bell') ?? -1)
  const read = (plan: Parameters<typeof readFigure>[1]) => readFigure(net, plan, freshSupplier(net))
  const w = 2 * Math.PI * 25
  const coil = Math.hypot(1000, w * 12)

  test('carries the current of its series circuit, by hand', () => {
    const figure = read(ringingCurrent(bell, RINGING, 25))
    expect(figure).toMatchObject({ id: 'ringing.current', subject: 'trial/bell', frequency: 25, unit: 'A' })
    assertClose(figure.value, 75 / Math.hypot(1000, w * 12 - 1 / (w * 1.8e-6)), { relative: 1e-9 }, 'current')
  })

  test('has its current times its impedance across it', () => {
    const current = read(ringingCurrent(bell, RINGING, 25)).value ?? 0
    const voltage = read(ringingVoltage(bell, RINGING, 25))
    expect(voltage).toMatchObject({ id: 'ringing.voltage', unit: 'V' })
    assertClose(voltage.value, current * coil, { relative: 1e-9 }, 'voltage')
  })
})

describe('the ringing capacitors of a bell', () => {
  const count = (beside: string, bellFrom = 'q') => {
    const net = compiled(
      'e: {kind: voltage-source, from: p, to: earth, direct: 0 V, alternating: 75 V}',
      'c: {kind: capacitor, from: p, to: q, capacitance: 1.8 µF}',
      `d: {kind: capacitor, from: p, to: q, capacitance: ${beside}}`,
      `bell: {kind: resistor, from: ${bellFrom}, to: earth, resistance: 4 kΩ}`,
      'leak: {kind: resistor, from: r, to: earth, resistance: 4 kΩ}',
    )
    const at = (id: string) => branchAt(net, net.branchIndex.get(`trial/${id}`) ?? -1)
    const plan = ringingCapacitors(net, at('bell'), [at('c'), at('d')], RINGING, 25)
    return readFigure(net, plan, freshSupplier(net)).value
  }

  test('are those that carry at least a tenth of its current', () => {
    // two capacitors share a current as their capacitances
    const tenth = (1.8 * CAPACITOR_SHARE) / (1 - CAPACITOR_SHARE)
    expect(count(`${(tenth * 0.99).toFixed(6)} µF`)).toBe(1)
    expect(count(`${(tenth * 1.01).toFixed(6)} µF`)).toBe(2)
  })

  test('are none where the bell is silent', () => {
    expect(count('1.8 µF', 'r')).toBe(0)
  })
})

test('parts are found by their role in their own place', () => {
  const { net, places } = stand({ target: 'fescue' }, DEMO)
  const place = placeOf(net, places[0] ?? '')
  expect(withRole(net, place, 'sounder').map(({ id }) => id)).toEqual(['fescue/bell'])
  expect(withRole(net, { ...place, place: 'elsewhere' }, 'sounder')).toEqual([])
})

test('a capacitor that was not read carries nothing', () => {
  const { net, places } = stand({ target: 'fescue' }, DEMO)
  const [bell] = withRole(net, placeOf(net, places[0] ?? ''), 'sounder')
  if (bell === undefined) throw new Error('no bell')
  const plan = ringingCapacitors(net, bell, [bell, bell], RINGING, 25)
  expect(plan.value(Float64Array.of(1, 0, 1, 0))).toBe(1)
  expect(plan.value(new Float64Array())).toBe(0)
})
