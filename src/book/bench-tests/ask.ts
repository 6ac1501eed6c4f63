/** From a measure to a question that a person answers in words. */
import { conditionIn } from '../../meter/table.ts'
import type { Condition } from '../../netlist/condition.ts'
import type { BenchAnswer, BenchTest } from '../bench-test.ts'
import type { Effort } from '../odds.ts'
import type { BenchSet } from './bench-set.ts'
import type { Measure } from './measure.ts'

/** A question before it stands beside others. */
export interface Asked {
  readonly id: string
  readonly asks: string
  readonly how: string
  /** Words of the condition that the examined set is in; nothing else moves. */
  readonly when: string
  readonly effort?: Extract<Effort, 'in-use' | 'in-use-helped'>
  readonly measure: Measure
  /** Answers from the lowest score to the highest, and the scores between them. */
  readonly answers: readonly BenchAnswer[]
  readonly cuts: readonly number[]
}

/** The lowest cut over this is how finely scores near nothing are told apart. */
const FINE = 10

/** A symptom: nobody opens anything, and the line is only used. */
export function ask(bench: BenchSet, one: Asked): BenchTest {
  const { id, asks, how, when, effort = 'in-use', measure, answers, cuts } = one
  return {
    id,
    asks,
    how,
    site: 'in-use',
    live: false,
    effort: bench.odds.efforts[effort].effort,
    condition: conditionIn(bench.net, bench.place, when),
    unit: '1',
    scale: Math.min(...cuts) / FINE,
    error: () => 0,
    words: { answers, cuts, slip: bench.odds.slips.heard.probability },
    plans: measure.plans,
    score: (figures, specs) => measure.of(figures, specs),
  }
}

/** As it should be; `also` are other words that plainly mean it. */
export function fine(id: string, says: string, ...also: readonly string[]): BenchAnswer {
  return { id, says, fine: true, ...(also.length === 0 ? {} : { also }) }
}

/** Not as it should be. */
export function amiss(id: string, says: string, ...also: readonly string[]): BenchAnswer {
  return { id, says, fine: false, ...(also.length === 0 ? {} : { also }) }
}

/** A condition of the examined set, all others as they rest. */
export function whenSet({ net, place }: Pick<BenchSet, 'net' | 'place'>, words: string): Condition {
  return conditionIn(net, place, words)
}
