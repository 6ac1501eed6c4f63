/** What a question may bring, and what each outcome would point at. */
import type { Belief } from '../inference/belief.ts'
import { answerProbabilities } from '../inference/likelihood.ts'
import { expectedOf } from '../inference/scale.ts'
import { valueAt } from '../inference/value-at.ts'
import type { Case, Grouping } from './case.ts'
import type { Outcome } from './state.ts'
import { expectedIn } from './weigh.ts'

/** A group that an outcome would point at, by its most probable member. */
export interface Pointed {
  /** Index of the cause that leads the group. */
  readonly cause: number
  /** Causes in its group. */
  readonly members: number
  /** The group's probability after that outcome. */
  readonly probability: number
}

/** One outcome of a test. */
export interface Expectation {
  /** An answer, `open`, or numbers from `least` to `most` in the test's unit. */
  readonly outcome: Outcome | { readonly least: number; readonly most: number }
  /** How probable it is, by what is known so far. */
  readonly probability: number
  readonly points: readonly Pointed[]
}

/** So many groups are named behind an outcome. */
const NAMED = 3
/** So many stretches of numbers are told apart at most. */
const STRETCHES = 6
/** Causes less probable than this say nothing of what may come. */
const NEGLIGIBLE = 1e-4

/** The outcomes of a test that are worth telling, answers from the lowest score up, then numbers rising, then `open`. */
export function expectationsOf(
  one: Case,
  belief: Belief,
  grouping: Grouping,
  test: number,
): readonly Expectation[] {
  const likely = [...belief.of.keys()].filter((k) => valueAt(belief.of, k) >= NEGLIGIBLE)
  const words = one.book.tests[test]?.words
  const among = expectedIn(one, belief)
  if (words === undefined) return stretchesOf({ ...one, among }, belief, grouping, test, likely)
  const seen = among.observables[test]
  const of = likely.map((k) =>
    seen === undefined ? [] : answerProbabilities(seen, expectedOf(among, k, test)),
  )
  return words.answers.map(({ id }, answer) => {
    const weights = likely.map((k, i): Weight => [k, valueAt(belief.of, k) * (of[i]?.[answer] ?? 0)])
    return expectation({ answer: id }, weights, belief.none / words.answers.length, grouping)
  })
}

type Weight = readonly [cause: number, weight: number]

function expectation(
  outcome: Expectation['outcome'],
  weights: readonly Weight[],
  none: number,
  grouping: Grouping,
): Expectation {
  const groups = new Map<number, { cause: number; best: number; weight: number }>()
  let all = none
  for (const [cause, weight] of weights) {
    all += weight
    const group = grouping.of[cause] ?? cause
    const so = groups.get(group) ?? { cause, best: 0, weight: 0 }
    groups.set(group, {
      cause: weight > so.best ? cause : so.cause,
      best: Math.max(weight, so.best),
      weight: so.weight + weight,
    })
  }
  const points = [...groups].map(([group, { cause, weight }]) => ({
    cause,
    members: grouping.groups[group]?.length ?? 1,
    probability: all > 0 ? weight / all : 0,
  }))
  points.sort((a, b) => b.probability - a.probability || a.cause - b.cause)
  return { outcome, probability: all, points: points.slice(0, NAMED) }
}

interface Stretch {
  least: number
  most: number
  /** Where the last expected value lies, and how widely that spreads. */
  u: number
  sigma: number
  readonly weights: Weight[]
}

/** Numbers in stretches: values closer than two standard deviations belong together. */
function stretchesOf(
  { among, book }: Case,
  { of, none }: Belief,
  grouping: Grouping,
  test: number,
  likely: readonly number[],
): Expectation[] {
  const all = likely.map((k) => ({ k, weight: valueAt(of, k), ...expectedOf(among, k, test) }))
  const numbers = all.filter(({ says }) => says === 'number').sort((a, b) => a.u - b.u)
  const stretches: Stretch[] = []
  for (const { k, weight, u, sigma } of numbers) {
    const last = stretches.at(-1)
    const [least, most] = [u - 2 * sigma, u + 2 * sigma]
    if (last === undefined || u - last.u > 2 * Math.max(sigma, last.sigma))
      stretches.push({ least, most, u, sigma, weights: [[k, weight]] })
    else {
      last.weights.push([k, weight])
      Object.assign(last, { u, sigma, least: Math.min(last.least, least), most: Math.max(last.most, most) })
    }
  }
  while (stretches.length > STRETCHES) joinNearest(stretches)
  const scale = book.tests[test]?.scale ?? 1
  const told = stretches.map(({ least, most, weights }) =>
    expectation(
      { least: scale * Math.sinh(least), most: scale * Math.sinh(most) },
      weights,
      none / (stretches.length + 1),
      grouping,
    ),
  )
  const open = all.filter(({ says }) => says === 'open').map(({ k, weight }): Weight => [k, weight])
  return open.length === 0
    ? told
    : [...told, expectation({ open: true }, open, none / (stretches.length + 1), grouping)]
}

/** Joins the two neighbours with the smallest gap between them. */
function joinNearest(stretches: Stretch[]): void {
  const gaps = stretches.slice(1).map((one, k) => one.least - (stretches[k]?.most ?? 0))
  const at = gaps.indexOf(Math.min(...gaps))
  const [one, other] = [stretches[at], stretches[at + 1]]
  if (one === undefined || other === undefined) return
  const { u, sigma, most, least, weights } = other
  stretches.splice(at, 2, {
    least: Math.min(one.least, least),
    most: Math.max(one.most, most),
    u,
    sigma,
    weights: [...one.weights, ...weights],
  })
}
