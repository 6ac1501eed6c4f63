/** What is to be believed of a case in a state. */
import { answerAt, scoreRead } from '../book/tell-apart.ts'
import { type Belief, believe } from '../inference/belief.ts'
import type { Hypotheses, Observation } from '../inference/hypotheses.ts'
import { given } from '../inference/joint/given.ts'
import type { Case, Grouping } from './case.ts'
import type { Outcome, State, Step } from './state.ts'

/** Tests of the book by their index that the state allows. */
export function allowedTests({ book }: Case, { allowed }: State): number[] {
  return [...book.tests.keys()].filter((t) => {
    const test = book.tests[t]
    return test !== undefined && (allowed.inside || test.site !== 'inside') && (allowed.live || !test.live)
  })
}

/** The causes that the allowed tests do not tell apart. */
export function groupingIn(one: Case, state: State): Grouping {
  return one.grouping(allowedTests(one, state))
}

/** A step as an observation; undefined where it tells nothing to this book. */
export function observationOf({ book }: Case, { test, outcome }: Step): Observation | undefined {
  const observable = book.tests.findIndex(({ id }) => id === test)
  const asked = book.tests[observable]
  if (asked === undefined || outcome === undefined) return undefined
  if ('open' in outcome) return { observable, x: Number.POSITIVE_INFINITY }
  if ('x' in outcome) return { observable, x: scoreRead(asked, outcome.x) }
  const known = asked.words?.answers.map(({ id }) => id) ?? []
  const said = 'answers' in outcome ? outcome.answers : [outcome.answer]
  const answers = said.map((id) => known.indexOf(id)).filter((at) => at !== -1)
  return answers.length === 0 ? undefined : { observable, answers }
}

/** Observations of a state, in their order. */
export function observationsOf(one: Case, { steps }: State): Observation[] {
  return steps.flatMap((step) => observationOf(one, step) ?? [])
}

/** Beliefs worked out so far: a state never changes, and is asked for its question and its result alike. */
const known = new WeakMap<Case, WeakMap<State, Belief>>()

/** The probability of each cause, and that it is none of them. */
export function beliefIn(one: Case, state: State): Belief {
  const beliefs = known.get(one) ?? new WeakMap<State, Belief>()
  known.set(one, beliefs)
  const belief = beliefs.get(state) ?? believe(one.among, observationsOf(one, state))
  beliefs.set(state, belief)
  return belief
}

/** What each cause lets expect of further tests, now that the evidence has told something of the parts' values. */
export function expectedIn({ among }: Case, belief: Belief): Hypotheses {
  return given(among, belief)
}

/** The probability of each group, in the order of the grouping. */
export function groupProbabilities({ groups }: Grouping, { of }: Belief): number[] {
  return groups.map((members) => members.reduce((sum, k) => sum + (of[k] ?? 0), 0))
}

/** What a row of the book would show of a test. */
export function outcomeAt({ book }: Case, score: number, test: number): Outcome | undefined {
  const asked = book.tests[test]
  if (asked === undefined || Number.isNaN(score) || score === Number.NEGATIVE_INFINITY) return undefined
  const answer = answerAt(asked, score)
  if (answer !== undefined) return { answer: answer.id }
  return score === Number.POSITIVE_INFINITY ? { open: true } : { x: score }
}
