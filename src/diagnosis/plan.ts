/** One call first: which three of the things that an ordinary call shows are worth asking for before all else. */
import type { Hypotheses } from '../inference/hypotheses.ts'
import { expectedInformation, worthOf } from '../inference/information.ts'
import { type Branch, branchesOf } from '../inference/look-ahead.ts'
import type { Case } from './case.ts'
import type { State } from './state.ts'
import { allowedTests, beliefIn, expectedIn, groupingIn } from './weigh.ts'

/**
 * What a call shows by itself, in the order in which it does; ids of tests. What is heard of the far end is not among
 * them: it comes by the way of the dial tone, and tells little beside that.
 */
const A_CALL: readonly string[] = ['rings', 'stops-ringing', 'tone', 'heard']
/** So many are asked for. */
const PLANNED = 3
/** What is expected to tell less than this beside the others is left out, bits. */
const WORTH_PLANNING = 0.05

const known = new WeakMap<Case, Map<string, readonly number[]>>()

/**
 * Tests of the plan by their index. They are chosen together before any of them is answered, each for what it is
 * expected to tell beside those before it, and asked in the order in which a call shows them: one confirms another, so
 * that no single slip of the ear sends somebody after the wrong fault with a meter. What was said before the first
 * question decides the plan; answers do not change it.
 */
export function planOf(one: Case, state: State): readonly number[] {
  const said: State = { ...state, steps: state.steps.filter(({ given }) => given === true) }
  const plans = known.get(one) ?? new Map<string, readonly number[]>()
  known.set(one, plans)
  const key = JSON.stringify(said)
  const plan = plans.get(key) ?? planned(one, said)
  plans.set(key, plan)
  return plan
}

function planned(one: Case, said: State): readonly number[] {
  const answered = new Set(said.steps.map(({ test }) => test))
  const allowed = new Set(allowedTests(one, said))
  const symptoms = A_CALL.filter((id) => !answered.has(id))
    .map((id) => one.book.tests.findIndex((test) => test.id === id))
    .filter((t) => allowed.has(t))
  const plan: number[] = []
  const belief = beliefIn(one, said)
  const among = expectedIn(one, belief)
  const worth = worthOf(belief, groupingIn(one, said).of)
  let branches: readonly Branch[] = [{ share: 1, worth }]
  while (plan.length < PLANNED) {
    const best = symptoms
      .filter((t) => !plan.includes(t))
      .map((t) => ({ t, bits: bitsIn(among, branches, t) }))
      .filter(({ bits }) => bits >= WORTH_PLANNING)
      .sort((a, b) => b.bits - a.bits)[0]
    if (best === undefined) break
    plan.push(best.t)
    branches = branches.flatMap((branch) => branchesOf(among, branch, best.t))
  }
  return symptoms.filter((t) => plan.includes(t))
}

/** What a question is expected to tell after whatever was answered before. */
function bitsIn(among: Hypotheses, branches: readonly Branch[], test: number): number {
  return branches.reduce((sum, { share, worth }) => sum + share * expectedInformation(among, worth, test), 0)
}
