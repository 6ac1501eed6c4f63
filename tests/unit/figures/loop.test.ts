import { stand } from 'ringproof/answer/standing'
import type { FigurePlan } from 'ringproof/figures/figure'
import {
  directCurrent,
  earthLeakage,
  loopCurrent,
  loopResistance,
  loopVoltage,
  onHookLeakage,
  plugBranch,
} from 'ringproof/figures/loop'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { type Netlist, type NetPlace, placeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { DEMO, rewireText, setText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'

interface Bench {
  readonly net: Netlist
  readonly place: NetPlace
  read(plan: FigurePlan | undefined): ReturnType<typeof readFigure>
}

function bench(request: Parameters<typeof stand>[0]): Bench {
  const { net, places } = stand(request, DEMO)
  const place = placeOf(net, places[0] ?? '')
  const supplier = freshSupplier(net)
  return {
    net,
    place,
    read(plan) {
      if (plan === undefined) throw new Error('there is no plan')
      return readFigure(net, plan, supplier)
    },
  }
}

function condition({ place }: Bench, written: string) {
  const read = readCondition(written)
  if (read === undefined) throw new Error(written)
  return conditionOf(place.place, read)
}

/** A set that is 600 Ω off-hook and nothing else. */
const LOAD = bench({
  target: '',
  text: {
    file: 'load.yaml',
    text: `ringproof: 1
sheet: set
name: load
strips: {A: 2, B: 1}
contacts: {hook: {from: A1, to: A2, closed when: off-hook}}
parts: {r: {kind: resistor, from: A2, to: B1, resistance: 600 Ω}}
cords: {line: {ends in: plug, cores: {a: {lands: A1}, b: {lands: B1}}}}
plug: {numbered by: wiring, contacts: {5: a, 2: b}}
`,
  },
})

describe('the loop of a set', () => {
  const off = condition(LOAD, 'off-hook')
  const current = LOAD.read(loopCurrent(LOAD.net, LOAD.place, off))
  const voltage = LOAD.read(loopVoltage(LOAD.place, off))
  const resistance = LOAD.read(loopResistance(LOAD.net, LOAD.place, off))

  test('obeys Ohm at the socket', () => {
    assertClose(
      (voltage.value ?? 0) / (current.value ?? 1),
      resistance.value ?? 0,
      { relative: 1e-6 },
      'V over I',
    )
    // 600 Ω, plug contacts and links of some tens of milliohms
    expect(resistance.value).toBeGreaterThan(600)
    expect(resistance.value).toBeLessThan(601)
  })

  test('obeys Ohm round the whole circuit: battery, feed, cable and set', () => {
    // 0.5 mm copper has 0.0178 Ω mm²/m at 20 °C or nearly so: 1 km of pair is 170 Ω to 185 Ω
    const whole = 50 / (current.value ?? 1)
    expect(whole - 600 - 400).toBeGreaterThan(170)
    expect(whole - 600 - 400).toBeLessThan(185)
  })

  test('is open on-hook: nothing but a leak flows, and the voltage is that of the battery', () => {
    const on = condition(LOAD, 'on-hook')
    expect(LOAD.read(onHookLeakage(LOAD.net, LOAD.place, on)).value).toBeLessThan(1e-6)
    expect(LOAD.read(loopCurrent(LOAD.net, LOAD.place, on)).value).toBeLessThan(1e-6)
    assertClose(LOAD.read(loopVoltage(LOAD.place, on)).value, 50, { relative: 1e-3 }, 'idle voltage')
  })

  test('has an open resistance when the line cores are on nothing', () => {
    const loose = bench({ target: '', text: rewireText('fescue', 'park core: line.a', 'park core: line.b') })
    const there = condition(loose, 'off-hook')
    expect(loose.read(loopResistance(loose.net, loose.place, there))).toMatchObject({
      value: null,
      state: 'open',
    })
    expect(loose.read(loopCurrent(loose.net, loose.place, there)).value).toBe(0)
  })

  test('is open without line contacts in the plug, and has no resistance to speak of', () => {
    const without = bench({ target: '', text: setText('fescue', 'without: [plug]') })
    const there = condition(without, 'off-hook')
    expect(plugBranch(without.net, without.place, 5)).toBeUndefined()
    expect(without.read(loopCurrent(without.net, without.place, there))).toMatchObject({ state: 'open' })
    expect(without.read(onHookLeakage(without.net, without.place, there))).toMatchObject({ state: 'open' })
    expect(loopResistance(without.net, without.place, there)).toBeUndefined()
  })

  test('has no voltage of its own where the set stands in no socket', () => {
    expect(loopVoltage({ ...LOAD.place, socket: undefined }, off)).toBeUndefined()
    expect(loopResistance(LOAD.net, { ...LOAD.place, socket: undefined }, off)).toBeUndefined()
  })
})

describe('a direct current', () => {
  test('is a size, and none flows in a branch that is lifted', () => {
    const off = condition(LOAD, 'off-hook')
    const branch = LOAD.net.branches[LOAD.net.branchIndex.get('load/r') ?? -1]
    if (branch === undefined) throw new Error('no load')
    const flows = LOAD.read(directCurrent('transmitter.current', branch, off))
    expect(flows).toMatchObject({ id: 'transmitter.current', subject: 'load/r', unit: 'A' })
    expect(flows.value).toBeGreaterThan(0.01)
    expect(
      LOAD.read(directCurrent('transmitter.current', branch, off, { lifted: [branch.index] })).value,
    ).toBe(0)
  })

  test('to earth is the sum over all that touches earth, none where nothing does', () => {
    const off = condition(LOAD, 'off-hook')
    expect(LOAD.read(earthLeakage(LOAD.net, LOAD.place, off))).toMatchObject({
      id: 'leakage.earth',
      value: 0,
    })
    const two = (ohms: readonly string[]) => {
      const parts = ohms.map(
        (one, k) => `drain-${k}: {kind: resistor, from: B5, to: earth, resistance: ${one}}`,
      )
      const leaky = bench({ target: '', text: setText('fescue', `parts: {${parts.join(', ')}}`) })
      return leaky.read(earthLeakage(leaky.net, leaky.place, condition(leaky, 'on-hook'))).value ?? 0
    }
    assertClose(two(['20 kΩ', '20 kΩ']), two(['10 kΩ']), { relative: 1e-6 }, 'two drains for one')
  })
})

test('a plan makes nothing of readings that are not there, and no figure of nothing over nothing', () => {
  const off = condition(LOAD, 'off-hook')
  const none = new Float64Array()
  expect(loopCurrent(LOAD.net, LOAD.place, off).value(none)).toBe(0)
  expect(onHookLeakage(LOAD.net, LOAD.place, off).value(none)).toBe('open')
  expect(loopResistance(LOAD.net, LOAD.place, off)?.value(Float64Array.of(5))).toBe('open')
  expect(loopResistance(LOAD.net, LOAD.place, off)?.value(none)).toBe('open')
})
