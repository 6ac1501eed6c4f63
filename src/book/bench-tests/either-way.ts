/** Whether a set does its work with the pair either way round, or one way only. */
import { exchangeReversed } from '../../figures/exchange-reversed.ts'
import type { Changes } from '../../figures/figure.ts'
import { loopCurrent } from '../../figures/loop.ts'
import type { BenchTest } from '../bench-test.ts'
import { amiss, ask, fine, whenSet } from './ask.ts'
import { hasContact, type OnLine } from './bench-set.ts'
import { FAR, joined, least, type Measure, share } from './measure.ts'
import { setRings } from './ringing.ts'

/**
 * The pair turned round on the exchange's side beside the pair as it lies. Where one of the two ways does all that is
 * asked, the score is what the other one does; where neither does, the way of the pair is not to blame and it is
 * above 1.
 */
export function eitherWayTests(bench: OnLine): readonly BenchTest[] {
  const asItLies = works(bench, {})
  const turned = works(bench, exchangeReversed(bench.net, bench.line))
  if (asItLies === undefined || turned === undefined) return []
  return [
    ask(bench, {
      id: 'either-way',
      asks: 'Does it do the same with the two wires of the pair turned round?',
      how: 'Make up a lead whose two line cores change places, or use one that you have, and plug the set in by way of it; compare ringing, tone and whether lifting stops the ringing with how it was. Open no socket for it.',
      when: 'on-hook',
      effort: 'in-use-helped',
      measure: joined([asItLies, turned], ([one = Number.NaN, other = Number.NaN]) => {
        const better = Math.max(one, other)
        return better < 1 ? Math.min(FAR, 1 / better) : Math.min(one, other)
      }),
      answers: [
        amiss('one-way', 'it works one way round only', 'no'),
        fine('same', 'it does the same', 'yes'),
      ],
      cuts: [1],
    }),
  ]
}

/** The least of what a set must do: make the loop, stop the ringing, ring; each over what is due. */
function works(bench: OnLine, changes: Changes): Measure | undefined {
  const { net, place, line } = bench
  const all: Measure[] = []
  if (hasContact(bench, 'off-hook')) {
    const loop = (words: string, due: number): Measure =>
      share(loopCurrent(net, place, whenSet(bench, words), 'loop.current', changes), due)
    const due = line.sheet.limits['loop current']?.least.value ?? bench.limit('loop-make')
    const trip = line.sheet.trip?.current.value
    all.push(loop('off-hook', due))
    if (trip !== undefined && trip > 0 && line.ringingFrequency !== undefined)
      all.push(loop('off-hook/ringing', trip))
  }
  const rings = setRings(bench, place, changes)
  if (rings !== undefined) all.push(rings)
  return all.length === 0 ? undefined : least(...all)
}
