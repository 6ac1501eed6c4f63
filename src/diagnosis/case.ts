/** A fault book as hypotheses: every fault, the sound set, and on request every two faults at once. */
import { at, type Book } from '../book/book.ts'
import type { Odds } from '../book/odds.ts'
import { type PairList, type Pairs, spreadOfPair } from '../book/pairs.ts'
import { groupIndex, groupsOf } from '../inference/groups.ts'
import { type Hypotheses, type Observable, widthOf } from '../inference/hypotheses.ts'
import { looseOf, spreadBy } from './loose.ts'

/** What may be the case: the faults by their index in the book; none, the set is sound. */
export type Cause = readonly number[]

/** Causes that nothing in reach tells apart. */
export interface Grouping {
  readonly groups: readonly (readonly number[])[]
  /** The group of each cause. */
  readonly of: Int32Array
}

/** A book laid out for reasoning. Hypothesis k is `causes[k]`, observable t is test t of the book. */
export interface Case {
  readonly book: Book
  readonly odds: Odds
  readonly causes: readonly Cause[]
  readonly among: Hypotheses
  /** Causes that these tests, by their index, do not tell apart; worked out once for each choice of tests. */
  grouping(tests: readonly number[]): Grouping
}

/** Lays a book out. `pairs` are its two faults at once, where they are asked for. */
export function caseOf(book: Book, odds: Odds, pairs?: Pairs): Case {
  const causes = causesOf(book, pairs)
  const among = hypothesesOf(book, odds, pairs)
  const known = new Map<string, Grouping>()
  return {
    book,
    odds,
    causes,
    among,
    grouping(tests) {
      const key = tests.join(' ')
      const found = known.get(key) ?? groupingOf(among, tests)
      known.set(key, found)
      return found
    },
  }
}

function groupingOf(among: Hypotheses, tests: readonly number[]): Grouping {
  const groups = groupsOf(among, tests)
  return { groups, of: groupIndex(groups, among.count) }
}

function causesOf({ faults }: Book, pairs: PairList | undefined): Cause[] {
  const single: Cause[] = [[], ...faults.map((_, f) => [f])]
  if (pairs === undefined) return single
  for (let k = 0; k < pairs.count; k++) single.push([pairs.first[k] ?? 0, pairs.second[k] ?? 0])
  return single
}

/**
 * The book's rows as hypotheses. A fault's prior is its weight, the sound set's that of the odds; two faults at once
 * share the probability of `pairs` in proportion to the product of their weights; `none` has its own.
 */
export function hypothesesOf(book: Book, odds: Odds, pairs?: Pairs): Hypotheses {
  const single = 1 + book.faults.length
  const count = single + (pairs?.count ?? 0)
  const size = book.tests.length
  const expected = new Float64Array(count * size)
  const spread = new Float64Array(count * size)
  expected.set(book.scores.subarray(0, single * size))
  spread.set(book.spreads.subarray(0, single * size))
  const loose = looseOf(book, pairs)
  const steps = loose === undefined ? undefined : new Float64Array(widthOf(loose))
  for (let k = 0; pairs !== undefined && k < pairs.count; k++) {
    for (let t = 0; t < size; t++) {
      expected[at(book, single + k, t)] = pairs.scores[k * size + t] ?? Number.NaN
      if (loose !== undefined && steps !== undefined) loose.steps(single + k, t, steps)
      spread[at(book, single + k, t)] =
        loose === undefined || steps === undefined ? spreadOfPair(book, pairs, k, t) : spreadBy(loose, steps)
    }
  }
  return {
    observables: observablesOf(book, odds),
    count,
    prior: priorOf(book, odds, pairs),
    none: odds.none.probability,
    expected,
    spread,
    ...(loose === undefined ? {} : { loose }),
  }
}

function observablesOf({ tests }: Book, { slips }: Odds): Observable[] {
  return tests.map((test) => ({
    scale: test.scale,
    error: (x) => test.error(x),
    slip: test.words?.slip ?? slips.read.probability,
    effort: test.effort,
    ...(test.words === undefined ? {} : { cuts: test.words.cuts }),
  }))
}

function priorOf({ faults }: Book, odds: Odds, pairs: PairList | undefined): Float64Array {
  const weights = [odds.sound.weight, ...faults.map(({ weight }) => weight)]
  const known = 1 - odds.none.probability
  const two = pairs === undefined || pairs.count === 0 ? 0 : odds.pairs.probability
  const prior = new Float64Array(weights.length + (pairs?.count ?? 0))
  const one = weights.reduce((sum, weight) => sum + weight, 0)
  weights.forEach((weight, k) => {
    prior[k] = (known * (1 - two) * weight) / one
  })
  if (pairs === undefined) return prior
  const product = (k: number): number =>
    (faults[pairs.first[k] ?? 0]?.weight ?? 0) * (faults[pairs.second[k] ?? 0]?.weight ?? 0)
  let all = 0
  for (let k = 0; k < pairs.count; k++) all += product(k)
  for (let k = 0; k < pairs.count; k++) prior[weights.length + k] = (known * two * product(k)) / all
  return prior
}
