/** Faults of what brings the line to a set, and every demo premises once. */
import { deliveredOdds } from 'ringproof/answer/odds-table'
import { faultsOf } from 'ringproof/book/faults/index'
import { loopCurrent, loopVoltage } from 'ringproof/figures/loop'
import { ringingCurrent, withRole } from 'ringproof/figures/ringing'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { faulty } from './_faults.ts'

const HOUSE = faulty('station-house', undefined, 'kitchen')

function bellCurrent(fault?: string): number {
  const { net, place, when, read } = HOUSE
  const [bell] = withRole(net, place, 'sounder')
  if (bell === undefined || net.line?.ringingFrequency === undefined) throw new Error('no bell')
  return read(ringingCurrent(bell, when('on-hook/ringing'), net.line.ringingFrequency), fault)
}

function current(fault?: string): number {
  const { net, place, when, read } = HOUSE
  return read(loopCurrent(net, place, when('off-hook')), fault)
}

function voltage(written: string, fault?: string): number {
  return HOUSE.read(loopVoltage(HOUSE.place, HOUSE.when(written)), fault)
}

describe('a set at the end of house cable', () => {
  test.each([
    'exchange/feed.a open',
    'exchange/feed.b open',
    'front/cable open-a',
    'hall/cable open-b',
    'plug.5 open',
  ])('has no loop current with %s', (fault) => {
    expect(current()).toBeGreaterThan(0.02)
    expect(current(fault)).toBeLessThan(1e-6)
  })

  test.each(['exchange/ringing open', 'front/capacitor open', 'hall/cable open-ringing', 'plug.3 open'])(
    'has a silent bell with %s, and its loop as before',
    (fault) => {
      expect(bellCurrent()).toBeGreaterThan(3e-3)
      expect(bellCurrent(fault)).toBeLessThan(0.05 * bellCurrent())
      // the resistor of the master socket no longer lets its microamperes past
      assertClose(current(fault), current(), { relative: 1e-3 }, fault)
    },
  )

  test('has no voltage with the pair shorted, by cable or by gas tube, and as much as before with what shorts nothing', () => {
    expect(voltage('on-hook')).toBeGreaterThan(40)
    for (const fault of ['front/gas-tube shorted', 'hall/cable shorted-a-b', 'line.a+line.b touching'])
      expect(voltage('on-hook', fault), fault).toBeLessThan(0.1)
    for (const fault of ['front/gas-tube open', 'hall/cable leaky-a-ringing', 'plug.3 open'])
      assertClose(voltage('on-hook', fault), voltage('on-hook'), { relative: 0.01 }, fault)
  })

  test('gets what a bad contact of 2 kΩ in a leg leaves: R rises by 2 kΩ', () => {
    // the set takes what its own parts settle on; what stands before it is V = E − I·R
    const before = (voltage('on-hook') - voltage('off-hook')) / current()
    const fault = 'exchange/feed.a high-resistance'
    const after = (voltage('on-hook', fault) - voltage('off-hook', fault)) / current(fault)
    assertClose(after - before, 2000, { relative: 1e-3 }, 'the leg')
  })
})

// where nothing stands yet, no set is asked for
test.each(DEMO.names('premises').filter((name) => name !== 'workshop'))(
  'each set in %s has its faults, by ids of their own and words that stand alone',
  (name) => {
    const { net } = faulty(name)
    expect(net.places.length).toBeGreaterThan(0)
    for (const place of net.places) {
      const faults = faultsOf(net, place, deliveredOdds())
      expect(faults.length).toBeGreaterThan(40)
      expect(new Set(faults.map(({ id }) => id)).size).toBe(faults.length)
      for (const { id, says, sign, mend } of faults)
        expect(`${says} ${sign} ${mend}`, id).not.toMatch(/NaN|undefined|null|\[object|Infinity/)
    }
  },
)
