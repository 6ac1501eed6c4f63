// The trial of one set: draws, questions, and whether what the tool believes is what is true.
import { deliveredOdds } from '../../dist/lib/answer/odds-table.js'
import { makeBook } from '../../dist/lib/book/make-book.js'
import { makePairs } from '../../dist/lib/book/pairs.js'
import { answerAt } from '../../dist/lib/book/tell-apart.js'
import { caseOf } from '../../dist/lib/diagnosis/case.js'
import { rankedTests } from '../../dist/lib/diagnosis/next.js'
import { answer, begin } from '../../dist/lib/diagnosis/state.js'
import { allowedTests, beliefIn, groupingIn, groupProbabilities } from '../../dist/lib/diagnosis/weigh.js'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { dice, metered, worldOf } from './draw.mjs'

const OPEN = Number.POSITIVE_INFINITY

/** The case of a set: its book, and on request its pairs. */
export function layTrialOut(laidOut, supply, withPairs) {
  const book = makeBook(laidOut.inputs, undefined, supply)
  const pairs = withPairs ? makePairs(laidOut.inputs, undefined, supply) : undefined
  return { ...laidOut, book, one: caseOf(book, deliveredOdds(), pairs) }
}

/** What the world shows of a test, as the dialogue takes it; undefined where there is nothing to be had. */
function outcomeOf(test, score, laws, roll) {
  if (Number.isNaN(score) || score === Number.NEGATIVE_INFINITY) return undefined
  const said = answerAt(test, score)
  if (said !== undefined) return { answer: said.id }
  const shown = metered(score, test, laws, roll)
  return shown === OPEN ? { open: true } : { x: shown }
}

/** Answers a test by what is true, or passes over it. */
function tried(state, world, test, laws, roll) {
  const outcome = outcomeOf(test, world.read(test), laws, roll)
  if (outcome === undefined) return { ...state, steps: [...state.steps, { test: test.id }] }
  return answer(state, test.id, outcome)
}

/** Whether an answer is not as it should be. */
function isComplaint(book, id, outcome) {
  const answers = book.tests.find((test) => test.id === id)?.words?.answers ?? []
  return answers.some((one) => one.id === outcome?.answer && !one.fine)
}

/** The same part and the same family of mode, whichever of several faults comes first. */
function matches(one, cause, truth) {
  const named = cause.map((f) => one.book.faults[f])
  const same = (p, q) => p.subjects[0] === q.subjects[0] && p.family === q.family
  return (
    named.length === truth.length &&
    truth.every((wanted) => named.some((found) => same(found, wanted))) &&
    named.every((found) => truth.some((wanted) => same(found, wanted)))
  )
}

/** The groups as they stand, the most probable first; `none` is a group of its own without a member. */
function standing(one, state) {
  const belief = beliefIn(one, state)
  const grouping = groupingIn(one, state)
  const of = groupProbabilities(grouping, belief)
  const groups = of.map((probability, g) => ({ probability, members: grouping.groups[g] }))
  return [...groups, { probability: belief.none, members: [] }].sort((p, q) => q.probability - p.probability)
}

const holds = (one, { members }, truth) => members.some((k) => matches(one, one.causes[k], truth))

/** One draw: how the first group, and the first few, stand after the symptoms and after each number of readings. */
export function tryOne(set, truth, odd, laws, roll) {
  const { one, book, inputs, kit } = set
  const world = worldOf({ net: inputs.net, kit, laws, roll, faults: truth, odd })
  let state = begin({ inside: true, live: true })
  for (const test of book.tests) if (test.words !== undefined) state = tried(state, world, test, laws, roll)
  const noticed = state.steps.some(({ test, outcome }) => isComplaint(book, test, outcome))
  const stages = []
  const asked = []
  for (let readings = 0; readings <= Math.max(...laws.readings); readings += 1) {
    if (laws.readings.includes(readings)) {
      const groups = standing(one, state)
      const [first] = groups
      stages.push({
        readings,
        first: holds(one, first, truth),
        among: groups.slice(0, laws.first).some((group) => holds(one, group, truth)),
        size: first.members.length,
        sure: first.probability > laws.confident,
        probability: first.probability,
        leading: first.members.length === 0 ? 'none of these' : causeName(one, first.members, state),
      })
    }
    const best = rankedTests(one, state, beliefIn(one, state))[0]
    if (best === undefined) continue
    const test = book.tests[best.observable]
    asked.push(test.id)
    state = tried(state, world, test, laws, roll)
  }
  return { stages, asked, noticed }
}

function causeName(one, members, state) {
  const { of } = beliefIn(one, state)
  const best = members.reduce((p, q) => (of[q] > of[p] ? q : p))
  const cause = one.causes[best]
  return cause.length === 0 ? 'sound' : cause.map((f) => one.book.faults[f].id).join(' and ')
}

/** Faults that nothing tells from the sound set: they share its group. */
export function unseen({ one }) {
  const tests = allowedTests(one, begin({ inside: true, live: true }))
  const { groups } = one.grouping(tests)
  return new Set(groups.find((members) => members.includes(0)).flatMap((k) => one.causes[k]))
}

/** Draws faults, every one of the book as often as any other, and tries each. */
export function trySingles(set, laws, seed) {
  const roll = dice(seed)
  const still = unseen(set)
  const tried = []
  for (let k = 0; k < laws.singles; k += 1) {
    const index = roll.below(set.book.faults.length)
    const odd = roll.random() < laws.odd.share
    const truth = [set.book.faults[index]]
    tried.push({ truth: truth[0].id, odd, unseen: still.has(index), ...tryOne(set, truth, odd, laws, roll) })
  }
  return tried
}

/** The same with two faults at once, both of which something shows. */
export function tryPairs(set, laws, seed) {
  const roll = dice(seed)
  const still = unseen(set)
  const causes = set.one.causes.filter((cause) => cause.length === 2 && !cause.some((f) => still.has(f)))
  const tried = []
  for (let k = 0; k < laws.pairs; k += 1) {
    const odd = roll.random() < laws.odd.share
    const truth = causes[roll.below(causes.length)].map((f) => set.book.faults[f])
    const names = truth.map(({ id }) => id).join(' and ')
    tried.push({ truth: names, odd, unseen: false, ...tryOne(set, truth, odd, laws, roll) })
  }
  return tried
}
