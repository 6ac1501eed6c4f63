/** Whether bells ring, and whether the set's own does, beside others and alone. */
import type { Changes } from '../../figures/figure.ts'
import { ringingCurrent, withRole } from '../../figures/ringing.ts'
import { conditionIn } from '../../meter/table.ts'
import type { Branch, NetPlace } from '../../netlist/netlist.ts'
import type { BenchAnswer, BenchTest } from '../bench-test.ts'
import { amiss, ask, fine } from './ask.ts'
import { type OnLine, othersOf, partOf, plugLinksOf } from './bench-set.ts'
import { flowing, type Measure, most } from './measure.ts'

/**
 * The score from which a bell rings well: what it has where everything is sound, less what no ear misses; not so much
 * that nobody would call it weak anyhow, and never less than rings it at all.
 */
export function wellFrom(bench: OnLine, sound: number): number {
  return Math.max(1, Math.min(bench.limit('bell-well'), bench.limit('bell-usual') * sound))
}

/** What is heard of a bell. */
function bellCuts(bench: OnLine, own: Measure): readonly number[] {
  return [bench.limit('bell-silent'), wellFrom(bench, soundScore(bench, own))]
}

/**
 * Current in a bell while the line rings and all are hung up, over the least that rings what it has become; 0 where
 * no current rings it.
 */
export function bellRings(bench: OnLine, bell: Branch, changes: Changes = {}): Measure | undefined {
  const { net, place, line } = bench
  const { ringingFrequency, ringingHarmonics } = line
  const { law, spec } = bell.part
  if (ringingFrequency === undefined || law.sounds?.(spec) === undefined) return undefined
  const { index } = partOf(net, bell)
  const condition = conditionIn(net, place, 'on-hook/ringing')
  return {
    plans: [ringingCurrent(bell, condition, ringingFrequency, ringingHarmonics, changes)],
    of: ([amount], specs) => {
      const needs = law.sounds?.(specs(index))
      return needs === undefined || needs.never !== undefined ? 0 : flowing(amount) / needs.current
    },
  }
}

/** The loudest of a set's bells; undefined where nothing can ring. */
export function setRings(bench: OnLine, place: NetPlace, changes: Changes = {}): Measure | undefined {
  const all = withRole(bench.net, place, 'sounder')
    .map((bell) => bellRings(bench, bell, changes))
    .filter((one) => one !== undefined)
  return all.length === 0 ? undefined : most(...all)
}

/** A measure on the sound netlist. */
export function soundScore(bench: OnLine, { plans, of }: Measure): number {
  return of(
    plans.map((plan) => bench.amount(plan)),
    (part) => bench.net.parts[part]?.spec ?? { kind: '' },
  )
}

const HEARD: readonly BenchAnswer[] = [
  amiss('silent', 'it is silent', 'no'),
  amiss('weak', 'it rings weakly or only buzzes', 'yes'),
  fine('rings', 'it rings well', 'yes'),
]

/** Symptoms of ringing. */
export function ringingTests(bench: OnLine): readonly BenchTest[] {
  const tests: BenchTest[] = []
  const own = setRings(bench, bench.place)
  if (own !== undefined) {
    tests.push(
      ask(bench, {
        id: 'rings',
        asks: 'Does the bell ring?',
        how: 'Leave everything plugged in as it stands and the handset down, and have the line called.',
        when: 'on-hook/ringing',
        measure: own,
        answers: HEARD,
        cuts: bellCuts(bench, own),
      }),
    )
  }
  const others = othersOf(bench)
  const alone = setRings(bench, bench.place, { lifted: plugLinksOf(bench.net, others) })
  if (alone !== undefined && others.length > 0) {
    tests.push(
      ask(bench, {
        id: 'rings-alone',
        asks: 'Does the bell ring when the set is the only one on the line?',
        how: 'Unplug every other telephone and bell, leave this handset down, and have the line called.',
        when: 'on-hook/ringing',
        measure: alone,
        answers: HEARD,
        cuts: bellCuts(bench, alone),
      }),
    )
  }
  return tests
}
