/**
 * Solves one drawn set after the other on the same netlist: wiring, patterns and pivots stay, only values are filled
 * anew. For a set or two that beats a netlist of its own for each draw; where many sets stand, portions of it do.
 */
import type { Supplier } from '../figures/read.ts'
import { ON_HOOK, type SetCondition } from '../netlist/condition.ts'
import { sameStates } from '../netlist/line-state.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { Matrix } from '../solver/matrix.ts'
import type { Question } from '../solver/question.ts'
import type { Solution } from '../solver/solution.ts'
import { solve } from '../solver/solve.ts'
import type { Refit } from './world.ts'

/** Sets up to which the whole is solved at once. */
const FEW = 2

/** Whether draws of this netlist are best solved whole. */
export function isSmall({ places }: Netlist): boolean {
  return places.length <= FEW
}

/** Answers questions about a netlist whose parts have other values; equal questions share an answer, like ones the factors. */
export function drawnSupplier(net: Netlist, refits: readonly Refit[]): Supplier {
  const answers = new Map<string, Solution>()
  const matrices = new Map<string, Matrix | undefined>()
  const states = sameStates(net)
  const settled = (question: Question): Question => {
    const { line, sets } = question.condition
    const busy = Object.entries(sets).filter(([, one]) => !isAtRest(one))
    return { ...question, condition: { line: states[line], sets: Object.fromEntries(busy) } }
  }
  const matrixOf = (question: Question): Matrix | undefined => {
    const { probes: _, series: __, ...stated } = question
    const key = JSON.stringify(stated)
    if (matrices.has(key)) return matrices.get(key)
    const made = Matrix.of(net, withRefits(stated, refits))
    matrices.set(key, made)
    return made
  }
  return (question) => {
    const asked = settled(question)
    const key = JSON.stringify(asked)
    const before = answers.get(key)
    if (before !== undefined) return before
    const matrix = matrixOf(asked)
    const full = withRefits(asked, refits)
    const answer = matrix?.openAnswer(full) ?? matrix?.answer(full) ?? solve(net, full)
    answers.set(key, answer)
    return answer
  }
}

function withRefits(question: Question, refits: readonly Refit[]): Question {
  return { ...question, instead: [...(question.instead ?? []), ...refits] }
}

function isAtRest({ hook, dial, key }: SetCondition): boolean {
  return hook === ON_HOOK.hook && dial === ON_HOOK.dial && key === ON_HOOK.key
}
