/** What a diagnosis has come to. */
import type { BenchTest } from '../book/bench-test.ts'
import { at } from '../book/book.ts'
import type { Belief } from '../inference/belief.ts'
import { expectedInformation, worthOf } from '../inference/information.ts'
import { likelihoodsOf } from '../inference/likelihood.ts'
import { valueAt } from '../inference/value-at.ts'
import type { Case } from './case.ts'
import { nextQuestion, type Question, type Stop } from './next.ts'
import type { Outcome, State, Step } from './state.ts'
import { allowedTests, beliefIn, expectedIn, groupingIn, observationOf, outcomeAt } from './weigh.ts'

/** One cause with its share. */
export interface Ranked {
  /** Index of the cause. */
  readonly cause: number
  readonly probability: number
}

/** Causes that nothing allowed tells apart. */
export interface RankedGroup {
  readonly probability: number
  /** The most probable first. */
  readonly members: readonly Ranked[]
  /** A test that is not allowed, yet would tell its members apart. */
  readonly apart?: BenchTest
}

/** One observation and what it says of the leading cause. */
export interface Evidence {
  readonly test: BenchTest
  readonly outcome: Outcome
  /** What the leading cause and the sound set would show; absent where that is not known. */
  readonly leading?: Outcome
  readonly sound?: Outcome
  readonly speaks: 'for' | 'against' | 'neither'
  /** How much more probable the leading group makes it than all the rest do, on average. */
  readonly ratio: number
}

/** The whole result. */
export interface Result {
  /** The most probable first; those under a thousandth left out. */
  readonly groups: readonly RankedGroup[]
  /** That it is none of these. */
  readonly none: number
  readonly evidence: readonly Evidence[]
  /** Tests that were passed over. */
  readonly skipped: readonly BenchTest[]
  /** Why nothing more is asked; `asking` while something tells more. */
  readonly stands: Stop | 'asking'
  /** What is worth asking next, while something is. */
  readonly next?: Question
}

const SHOWN = 1e-3
const BITS_THAT_TELL = 0.3
/** Of so many groups it is said what would tell their members apart. */
const TOLD_APART = 3

/** Ranks the causes and weighs what was observed. */
export function resultOf(one: Case, state: State): Result {
  const belief = beliefIn(one, state)
  const next = nextQuestion(one, state)
  const groups = rankedGroups(one, state, belief)
  const first = groups[0]
  return {
    groups,
    none: belief.none,
    evidence: first === undefined ? [] : evidenceOf(one, state, first),
    skipped: state.steps.flatMap(({ test, outcome }) =>
      outcome === undefined ? (one.book.tests.find(({ id }) => id === test) ?? []) : [],
    ),
    ...(typeof next === 'string' ? { stands: next } : { stands: 'asking', next }),
  }
}

function rankedGroups(one: Case, state: State, belief: Belief): RankedGroup[] {
  const { groups } = groupingIn(one, state)
  const ranked = groups.map((members) => {
    const all = members.map((cause) => ({ cause, probability: valueAt(belief.of, cause) }))
    all.sort((a, b) => b.probability - a.probability || a.cause - b.cause)
    return { members: all, probability: all.reduce((sum, { probability }) => sum + probability, 0) }
  })
  ranked.sort(
    (a, b) => b.probability - a.probability || (a.members[0]?.cause ?? 0) - (b.members[0]?.cause ?? 0),
  )
  return ranked
    .filter(({ probability }, k) => k === 0 || probability >= SHOWN)
    .map((group, k) => {
      const isTold = group.members.length > 1 && k < TOLD_APART
      const apart = isTold ? apartBy(one, state, belief, group.members) : undefined
      return apart === undefined ? group : { ...group, apart }
    })
}

/** The test among those that are not allowed that tells the members of a group apart best, if any does. */
function apartBy(one: Case, state: State, belief: Belief, members: readonly Ranked[]): BenchTest | undefined {
  const { book } = one
  const among = expectedIn(one, belief)
  const allowed = new Set(allowedTests(one, state))
  const of = new Float64Array(among.count)
  const all = members.reduce((sum, { probability }) => sum + probability, 0)
  for (const { cause, probability } of members) of[cause] = all > 0 ? probability / all : 1 / members.length
  const worth = worthOf({ of, none: 0 })
  let best: { bits: number; test: BenchTest } | undefined
  book.tests.forEach((test, t) => {
    const bits = allowed.has(t) ? 0 : expectedInformation(among, worth, t)
    if (bits >= BITS_THAT_TELL && bits > (best?.bits ?? 0)) best = { bits, test }
  })
  return best?.test
}

function evidenceOf(one: Case, { steps }: State, { members }: RankedGroup): Evidence[] {
  const last = new Map<string, Step>(steps.map((step) => [step.test, step]))
  const inGroup = new Set(members.map(({ cause }) => cause))
  const cause = members[0]?.cause ?? 0
  return [...last.values()].flatMap((step): Evidence[] => {
    const observation = observationOf(one, step)
    const test = observation && one.book.tests[observation.observable]
    if (observation === undefined || test === undefined || step.outcome === undefined) return []
    const ratio = ratioOf(one, inGroup, likelihoodsOf(one.among, observation))
    const t = observation.observable
    const scoreOf = (row: number): number => one.among.expected[at(one.book, row, t)] ?? Number.NaN
    const [leading, sound] = [outcomeAt(one, scoreOf(cause), t), outcomeAt(one, scoreOf(0), t)]
    return [
      {
        test,
        outcome: step.outcome,
        ...(leading === undefined ? {} : { leading }),
        ...(sound === undefined ? {} : { sound }),
        speaks: ratio >= 1.5 ? 'for' : ratio <= 1 / 1.5 ? 'against' : 'neither',
        ratio,
      },
    ]
  })
}

/** The likelihood by the group over that by all else, each averaged by the priors. */
function ratioOf(
  { among }: Case,
  group: ReadonlySet<number>,
  { of, none }: ReturnType<typeof likelihoodsOf>,
): number {
  let most = none
  for (const log of of) most = Math.max(most, log)
  let [own, ownPrior, rest, restPrior] = [0, 0, among.none * Math.exp(none - most), among.none]
  for (let k = 0; k < among.count; k++) {
    const prior = valueAt(among.prior, k)
    const share = prior * Math.exp(valueAt(of, k) - most)
    if (group.has(k)) [own, ownPrior] = [own + share, ownPrior + prior]
    else [rest, restPrior] = [rest + share, restPrior + prior]
  }
  return own / Math.max(Number.MIN_VALUE, ownPrior) / Math.max(1e-300, rest / Math.max(1e-300, restPrior))
}
