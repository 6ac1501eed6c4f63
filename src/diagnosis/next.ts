/** The question that is worth asking next. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Belief } from '../inference/belief.ts'
import { worthOf } from '../inference/information.ts'
import { type Candidate, rankNext } from '../inference/next.ts'
import { LIVE, OPEN_AND_LIVE, UNPLUG } from '../meter/cautions.ts'
import type { Case } from './case.ts'
import { type Expectation, expectationsOf } from './outcomes.ts'
import { planOf } from './plan.ts'
import type { State } from './state.ts'
import { allowedTests, beliefIn, expectedIn, groupingIn, groupProbabilities } from './weigh.ts'

/** A question, with all that a person needs for answering it. */
export interface Question {
  /** Index of the test in the book. */
  readonly index: number
  readonly test: BenchTest
  /** What it is expected to tell, bits. */
  readonly bits: number
  /** What it costs now, minutes; less inside once the case is open. */
  readonly effort: number
  /** Before leads are held anywhere; always there where the line is live. */
  readonly cautions: readonly string[]
  readonly outcomes: readonly Expectation[]
}

/** A group that is more probable than this is what it is, unless a question is left that may well overturn it. */
export const SURE = 0.95
/** What a question must tell to be asked even so, bits; never on a live line. */
const DOUBT = 0.1
/** What tells less than this is not worth a question, bits. */
export const LITTLE = 0.02
/** Where nothing safer tells this much, a live line may be asked for, bits. */
const SAFE_ENOUGH = 0.1

/** Questions found so far: a state never changes, and its result names its question too. */
const known = new WeakMap<Case, WeakMap<State, Question | Stop>>()

/** Why nothing more is asked. */
export type Stop = 'sure' | 'nothing-tells'

/**
 * What a call shows, as planned; then the question that tells most for its effort, or why there is none: one group is sure, or nothing that may be asked
 * tells anything more. Sure is what is over 95 % with no question left that is expected to tell a tenth of a bit. What was asked or passed over is not asked again. A live line is asked for only where nothing
 * safer tells enough.
 */
export function nextQuestion(one: Case, state: State): Question | Stop {
  const questions = known.get(one) ?? new WeakMap<State, Question | Stop>()
  known.set(one, questions)
  const question = questions.get(state) ?? questionIn(one, state)
  questions.set(state, question)
  return question
}

function questionIn(one: Case, state: State): Question | Stop {
  const belief = beliefIn(one, state)
  const grouping = groupingIn(one, state)
  const ranked = rankedTests(one, state, belief)
  if (isSure(one, Math.max(...groupProbabilities(grouping, belief)), ranked)) return 'sure'
  const first = planOf(one, state).find((t) => ranked.some(({ observable }) => observable === t))
  const best = ranked.find(({ observable }) => observable === first) ?? ranked[0]
  const test = best && one.book.tests[best.observable]
  if (best === undefined || test === undefined) return 'nothing-tells'
  return {
    index: best.observable,
    test,
    bits: best.bits,
    effort: best.effort,
    cautions: cautionsOf(test),
    outcomes: expectationsOf(one, belief, grouping, best.observable),
  }
}

function isSure({ book }: Case, most: number, ranked: readonly Candidate[]): boolean {
  const isWorth = ({ bits, observable }: Candidate): boolean =>
    bits >= DOUBT && book.tests[observable]?.live !== true
  return most > SURE && !ranked.some(isWorth)
}

/** The tests that still tell something, best first; those on a live line only where nothing safer tells enough. */
export function rankedTests(one: Case, state: State, belief: Belief): readonly Candidate[] {
  const done = new Set(state.steps.map(({ test }) => test))
  const left = allowedTests(one, state).filter((t) => !done.has(one.book.tests[t]?.id ?? ''))
  const worth = worthOf(belief, groupingIn(one, state).of)
  const among = expectedIn(one, belief)
  const effort = effortsIn(one, state)
  const isLive = (t: number): boolean => one.book.tests[t]?.live === true
  const ranked = (tests: readonly number[]) =>
    rankNext(among, worth, tests, effort).filter(({ bits }) => bits >= LITTLE)
  const safe = ranked(left.filter((t) => !isLive(t)))
  if (safe.some(({ bits }) => bits >= SAFE_ENOUGH)) return safe
  const live = ranked(left.filter(isLive))
  return safe.length === 0 ? live : [...safe, ...live].sort((a, b) => b.bits / b.effort - a.bits / a.effort)
}

/** Effort of each test now: opening the case counts once, with what a reading inside costs more than one outside. */
function effortsIn({ book, odds }: Case, { steps }: State): (test: number) => number {
  const isOpened = steps.some(
    ({ test, outcome }) =>
      outcome !== undefined && book.tests.find(({ id }) => id === test)?.site === 'inside',
  )
  const { inside, outside } = odds.efforts
  return (t) => {
    const test = book.tests[t]
    const effort = test?.effort ?? 1
    if (!isOpened || test?.site !== 'inside') return effort
    return Math.max(Math.min(effort, outside.effort), effort - (inside.effort - outside.effort))
  }
}

/** What is said before hands come near wires. */
export function cautionsOf({ live, site }: BenchTest): readonly string[] {
  if (live) return site === 'inside' ? [LIVE, OPEN_AND_LIVE] : [LIVE]
  return site === 'in-use' ? [] : [UNPLUG]
}
