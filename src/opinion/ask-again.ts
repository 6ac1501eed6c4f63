/** Remembers what an answer asks of the solver, and has every question answered once more. */
import type { SecondOpinion } from '../answer/second-opinion.ts'
import type { Supply } from '../answer/supply.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { Question } from '../solver/question.ts'
import type { Solution } from '../solver/solution.ts'
import { AGREED, type Compared, compare, refuseDifference } from './compare.ts'
import { loadAdviser, type Opinion } from './opinion.ts'
import type { OpinionOptions } from './options.ts'

/** A question's two answers. */
export interface Twice {
  readonly net: Netlist
  readonly ours: Solution
  readonly opinion: Opinion
}

/** An answer, the second opinion of it, and a supplier that answers by the second opinion. */
export interface Asked<T> {
  readonly answer: T
  readonly opinion: SecondOpinion
  readonly pairs: readonly Twice[]
  readonly again: Supply
}

type Outcome = { readonly solution: Solution } | { readonly error: unknown }

/**
 * Gets an answer, asks all its questions again and compares.
 * @throws ProblemError `ours` naming the worst place, where the two disagree
 */
export async function askAgain<T>(
  get: (supply: Supply) => T,
  supply: Supply,
  { digits, progress }: Pick<OpinionOptions, 'digits' | 'progress'>,
): Promise<Asked<T>> {
  const asked = new Map<string, { net: Netlist; outcome: Outcome }>()
  const keyOf = keys()
  const answer = get((net) => recording(net, supply, asked, (question) => keyOf(net, question)))
  progress?.('loading mathjs')
  const advise = await loadAdviser(digits)
  const pairs = new Map<string, Twice>()
  const compared: Compared[] = []
  for (const [key, { net, outcome }] of asked) {
    if ('error' in outcome) continue
    progress?.(`second opinion of question ${pairs.size + 1} of ${asked.size}`)
    const opinion = advise(net, outcome.solution)
    pairs.set(key, { net, ours: outcome.solution, opinion })
    compared.push(compare(net, outcome.solution, opinion))
  }
  const opinion = summary([...pairs.values()], compared, digits)
  const { largest } = opinion
  if (largest !== null && largest.relative > AGREED) refuseDifference(largest)
  const again: Supply = (net) => (question) => {
    const key = keyOf(net, question)
    const outcome = asked.get(key)?.outcome
    if (outcome !== undefined && 'error' in outcome) throw outcome.error
    const known = pairs.get(key)?.opinion
    return (known ?? advise(net, supply(net)(question))).solution
  }
  return { answer, opinion, pairs: [...pairs.values()], again }
}

/** Keys of questions about one of several networks; those that are compiled alike are one network. */
function keys(): (net: Netlist, question: Question) => string {
  const known = new Map<string, number>()
  const numbers = new WeakMap<Netlist, number>()
  const numberOf = (net: Netlist): number => {
    const alike = JSON.stringify([net.nodes, net.parts.map(({ id, spec }) => [id, spec])])
    const number = known.get(alike) ?? known.size
    known.set(alike, number)
    numbers.set(net, number)
    return number
  }
  return (net, question) => `${numbers.get(net) ?? numberOf(net)} ${JSON.stringify(question)}`
}

function recording(
  net: Netlist,
  supply: Supply,
  asked: Map<string, { net: Netlist; outcome: Outcome }>,
  keyOf: (question: Question) => string,
): ReturnType<Supply> {
  const supplier = supply(net)
  return (question) => {
    const key = keyOf(question)
    const known = asked.get(key)?.outcome
    const outcome = known ?? outcomeOf(() => supplier(question))
    if (known === undefined) asked.set(key, { net, outcome })
    if ('error' in outcome) throw outcome.error
    return outcome.solution
  }
}

function outcomeOf(solve: () => Solution): Outcome {
  try {
    return { solution: solve() }
  } catch (error) {
    return { error }
  }
}

function summary(
  pairs: readonly Twice[],
  compared: readonly Compared[],
  digits: number | undefined,
): SecondOpinion {
  const among = (of: (opinion: Opinion) => readonly string[]): readonly string[] => [
    ...new Set(pairs.flatMap(({ opinion }) => of(opinion))),
  ]
  const largest = compared.reduce<SecondOpinion['largest']>(
    (most, { largest: one }) =>
      one !== undefined && (most === null || one.relative > most.relative) ? one : most,
    null,
  )
  const by =
    digits === undefined
      ? 'factored by mathjs in doubles, the solution improved by remainders summed in 40 digits'
      : `eliminated in ${digits} decimal digits, arithmetic by mathjs`
  return {
    method: `sparse tableau read off the graph, a voltage for each node and a current for each branch; ${by}`,
    digits: digits ?? null,
    questions: pairs.length,
    unknowns: Math.max(0, ...pairs.map(({ opinion }) => opinion.unknowns)),
    compared: compared.reduce((sum, { count }) => sum + count, 0),
    largest,
    'as doubles': among(({ rounded }) => rounded),
    'about our point': among(({ bent }) => bent),
  }
}
