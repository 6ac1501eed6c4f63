/** Every fault is solved once: as data it is lawful, whatever it does to the loop, the bell and speech. */
import { loopCurrent, loopResistance, onHookLeakage } from 'ringproof/figures/loop'
import { ringingCurrent, withRole } from 'ringproof/figures/ringing'
import { speechPlans } from 'ringproof/figures/speech'
import { freshVariants, UNSETTLED } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'
import { faulty } from './_faults.ts'

const STANDING: readonly (readonly [string, string | undefined])[] = [
  ['fescue', undefined],
  ['sedge-converted', undefined],
  ['foxtail', undefined],
  ['melick', undefined],
  ['station-house', 'kitchen'],
]

describe.each(STANDING)('the faults of %s, %s', (target, at) => {
  const asked = faulty(target, undefined, at)
  const { net, place, faults, when } = asked
  const { line } = net
  const [bell] = withRole(net, place, 'sounder')
  const [sender] = withRole(net, place, 'sender')
  const [receiver] = withRole(net, place, 'receiver')

  test('are solved without a throw, to a number or to what stands for the lack of one', () => {
    if (line === undefined || bell === undefined || sender === undefined || receiver === undefined)
      throw new Error('no whole set')
    const plans = [
      loopResistance(net, place, when('off-hook')),
      loopCurrent(net, place, when('off-hook')),
      onHookLeakage(net, place, when('on-hook')),
      ringingCurrent(bell, when('on-hook/ringing'), line.ringingFrequency ?? 25),
      ...speechPlans({ line, sender, receiver }, when('off-hook/speech')),
    ].filter((one) => one !== undefined)
    const sound = new Float64Array(plans.length)
    freshVariants(net, plans, []).read([], sound)
    let moved = 0
    for (const { id, changes } of faults) {
      const out = new Float64Array(plans.length)
      freshVariants(net, plans, changes).read([...changes.keys()], out)
      expect(
        [...out].filter((one) => one === UNSETTLED || one < 0),
        id,
      ).toEqual([])
      if ([...out].some((one, k) => Math.abs(one - (sound[k] ?? 0)) > 1e-3 * (sound[k] ?? 0))) moved += 1
    }
    // spare cores, and parts that work while the dial is off normal alone, move none of these
    expect(moved).toBeGreaterThan(0.4 * faults.length)
  })
})
