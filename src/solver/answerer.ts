/**
 * Answers many questions about one netlist. Nothing is solved twice: equal questions share an answer, questions that
 * differ in what they put in share the factors, and a set that is lifted out of its socket is solved without the rest.
 */
import { type Condition, ON_HOOK, type SetCondition } from '../netlist/condition.ts'
import { sameStates } from '../netlist/line-state.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { conditionWithin, groupsOf, makePortion, type Portion } from '../netlist/portion.ts'
import type { Point } from './laws.ts'
import { Matrix } from './matrix.ts'
import { groupsAsked, pointWithin, questionWithin } from './portion.ts'
import type { Question } from './question.ts'
import type { Solution } from './solution.ts'
import { fedPoint, solve } from './solve.ts'
import { widen } from './widen.ts'

/** What of an answer is read; what stands apart from it may be left at rest. */
export interface Reads {
  readonly nodes: readonly number[]
  readonly branches: readonly number[]
}

/** An answer to a question, of which all, or at least `reads`, can be read. */
export type Answerer = (question: Question, reads?: Reads) => Solution

/** Factored networks that are kept at the same time. */
const KEPT = 48

/** An answerer for one netlist. @throws ProblemError as `solve`, whenever a question is asked that has no answer */
export function answererOf(net: Netlist): Answerer {
  const answers = new Map<string, Solution>()
  const matrices = new Map<string, Matrix | undefined>()
  const portions = new Map<string, Portion>()
  const groups = groupsOf(net)
  const states = sameStates(net)

  /** A condition without what goes without saying, its sets in the order of their names. */
  const settled = ({ line, sets }: Condition): Condition => {
    const said = Object.entries(sets).filter(([, one]) => !isAtRest(one))
    return { line: states[line], sets: Object.fromEntries(said.sort(([p], [q]) => (p < q ? -1 : 1))) }
  }

  const portionOf = (question: Question, reads: Reads | undefined): Portion | undefined => {
    const asked = groups && reads && groupsAsked(groups, question, reads)
    if (groups === undefined || asked === undefined) return undefined
    const key = [...asked].sort((p, q) => p - q).join()
    const known = portions.get(key) ?? makePortion(net, groups, asked)
    portions.set(key, known)
    return known
  }

  const keep = (key: string, made: Matrix | undefined): Matrix | undefined => {
    const [oldest] = matrices.keys()
    if (matrices.size >= KEPT && oldest !== undefined) matrices.delete(oldest)
    matrices.set(key, made)
    return made
  }

  /** The factored network of a question in its own indices. */
  const matrixOf = (key: string, here: Netlist, asked: Question, fed?: Point): Matrix | undefined => {
    if (matrices.has(key)) return matrices.get(key)
    const { probes: _, series: __, ...stated } = asked
    return keep(key, Matrix.of(here, stated, fed))
  }

  return (question, reads) => {
    const portion = portionOf(question, reads)
    const all = settled(question.condition)
    const asked = { ...question, condition: portion === undefined ? all : conditionWithin(all, portion.kept) }
    const here = portion?.net ?? net
    const within = portion === undefined ? asked : questionWithin(portion, asked)
    const { probes: _, series: __, ...stated } = asked
    const head = portion === undefined ? '' : [...portion.kept].join()
    const wide = (own: Solution): Solution =>
      portion === undefined ? { ...own, question } : widen(portion, question, own)
    const once = (key: string, make: () => Solution | undefined): Solution | undefined => {
      const known = answers.get(key)
      if (known !== undefined) return known
      const made = make()
      if (made !== undefined) answers.set(key, made)
      return made
    }
    const what = JSON.stringify(asked)
    const where = JSON.stringify(stated)
    if (question.small === 'fed' && portion !== undefined && bends(here)) {
      // bent parts join the same whatever feeds them, so that what is open is open without asking
      const open = once(`${head}|open|${what}`, () => {
        const atRest = { ...within, small: true as const }
        const matrix = matrixOf(`${head}|rest|${where}`, here, atRest)
        return matrix?.isOpen(atRest) === true ? wide(matrix.answer(atRest)) : undefined
      })
      if (open !== undefined) return open
      // what feeds them hangs on what all the others do
      const feeding = JSON.stringify(all)
      const made = once(`${head}|${feeding}|${what}`, () => {
        const key = `${head}|${feeding}|${where}`
        const point = matrices.has(key) ? undefined : fedPoint(net, { ...asked, condition: all })
        const matrix = matrixOf(key, here, within, point && pointWithin(portion, point))
        return wide(matrix?.answer(within) ?? solve(here, within))
      })
      if (made !== undefined) return made
    }
    const made = once(`${head}|${what}`, () => {
      const matrix = matrixOf(`${head}|${where}`, here, within)
      return wide(matrix?.answer(within) ?? solve(here, within))
    })
    if (made === undefined) throw new RangeError('a question without an answer')
    return made
  }
}

function bends(net: Netlist): boolean {
  return net.parts.some(({ law, spec }) => law.bends?.(spec).includes('direct') === true)
}

function isAtRest({ hook, dial, key }: SetCondition): boolean {
  return hook === ON_HOOK.hook && dial === ON_HOOK.dial && key === ON_HOOK.key
}
