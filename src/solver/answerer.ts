/**
 * Answers many questions about one netlist. Nothing is solved twice: equal questions share an answer, questions that
 * differ in what they put in share the factors. And nothing is solved that does not matter: a set that is lifted out
 * of its socket is solved without the rest, and of the sets into which nobody looks only that counts which they are
 * to the rest through their plugs, where they are linear.
 */
import { type Condition, ON_HOOK, type SetCondition } from '../netlist/condition.ts'
import { sameStates } from '../netlist/line-state.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { conditionWithin, type Group, type Groups, groupsOf, type Portion } from '../netlist/portion.ts'
import { isBent, type Point } from './laws.ts'
import { Matrix } from './matrix.ts'
import { groupsAsked, pointWithin, questionWithin } from './portion.ts'
import { Portions } from './portions.ts'
import type { Question } from './question.ts'
import type { Solution } from './solution.ts'
import { fedPoint, solve } from './solve.ts'

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
  const desk = new Desk(net)
  return (question, reads) => desk.answer(question, reads)
}

/** A question with the network in which it is asked. */
interface Case {
  readonly portion: Portion | undefined
  readonly net: Netlist
  /** In the whole netlist's indices, its condition settled. */
  readonly asked: Question
  /** In the portion's indices. */
  readonly within: Question
  /** What the portion is called among keys. */
  readonly head: string
}

class Desk {
  readonly #net: Netlist
  readonly #groups: Groups | undefined
  readonly #portions: Portions | undefined
  readonly #states: ReturnType<typeof sameStates>
  readonly #answers = new Map<string, Solution>()
  readonly #matrices = new Map<string, Matrix | undefined>()

  constructor(net: Netlist) {
    this.#net = net
    this.#groups = groupsOf(net)
    this.#portions = this.#groups && new Portions(net, this.#groups)
    this.#states = sameStates(net)
  }

  answer(question: Question, reads: Reads | undefined): Solution {
    const one = this.#caseOf(question, reads)
    const what = `${one.head}|${JSON.stringify(one.asked)}`
    const known = this.#answers.get(what) ?? this.#openAnswer(one, what)
    if (known !== undefined) return known
    if (!feeds(one)) return this.#kept(what, one, () => this.#solved(one, one.head))
    // what feeds bent parts hangs on what all the others do
    const all = this.#settled(question.condition)
    const under = `${one.head}|${JSON.stringify(all)}`
    const fed = `${under}|${what}`
    return this.#answers.get(fed) ?? this.#kept(fed, one, () => this.#solved(one, under, all))
  }

  #caseOf(question: Question, reads: Reads | undefined): Case {
    const all = this.#settled(question.condition)
    const portion = this.#portionOf({ ...question, condition: all }, reads)
    if (portion === undefined) {
      const asked = { ...question, condition: all }
      return { portion, net: this.#net, asked, within: asked, head: '' }
    }
    const asked = { ...question, condition: conditionWithin(all, portion.kept) }
    const within = this.#portions?.seenIn(portion, asked, questionWithin(portion, asked)) ?? asked
    const head = `${[...portion.kept].join()} ${[...portion.ports.keys()].join()}`
    return { portion, net: portion.net, asked, within, head }
  }

  /** The portion that matters; undefined for the whole. */
  #portionOf(question: Question, reads: Reads | undefined): Portion | undefined {
    if (this.#groups === undefined || this.#portions === undefined || reads === undefined) return undefined
    const { kept, into } = groupsAsked(this.#groups, question, reads)
    return this.#portions.of(kept, into, question.condition)
  }

  /** Bent parts join the same whatever feeds them, so that what is open is open without asking what does. */
  #openAnswer(one: Case, what: string): Solution | undefined {
    if (!feeds(one) || one.within.probes === undefined) return undefined
    const atRest = { ...one.within, small: true as const }
    const matrix = this.#matrix(`${one.head}|rest`, { ...one, within: atRest })
    const open = matrix?.openAnswer(atRest)
    return open && this.#kept(what, one, () => open)
  }

  #solved(one: Case, key: string, feeding?: Condition): Solution {
    const matrix = this.#matrix(key, one, feeding)
    return matrix?.answer(one.within) ?? solve(one.net, one.within)
  }

  /** The factored network of a case. */
  #matrix(head: string, one: Case, feeding?: Condition): Matrix | undefined {
    const { probes: _, series: __, ...named } = one.asked
    const key = `${head}|${JSON.stringify(named)}`
    if (this.#matrices.has(key)) return this.#matrices.get(key)
    const { probes: ___, series: ____, ...stated } = one.within
    const made = Matrix.of(one.net, stated, feeding && this.#feeding(one, feeding))
    const [oldest] = this.#matrices.keys()
    if (this.#matrices.size >= KEPT && oldest !== undefined) this.#matrices.delete(oldest)
    this.#matrices.set(key, made)
    return made
  }

  /** Where the line puts the bent parts of a portion that is asked without the line. */
  #feeding({ portion, asked: { instead } }: Case, condition: Condition): Point | undefined {
    if (portion === undefined || this.#groups === undefined || this.#portions === undefined) return undefined
    const changed = instead === undefined ? {} : { instead }
    const own = new Set<Group>(
      this.#groups.places.flatMap((place, k) =>
        portion.kept.has(place) && !portion.ports.has(k + 1) ? [k + 1] : [],
      ),
    )
    const all = new Set<Group>(this.#groups.plugs.map((_, group) => group))
    const wide = this.#portions.of(all, own, condition)
    if (wide === undefined) {
      const point = fedPoint(this.#net, { analysis: 'direct', condition, ...changed })
      return point && pointWithin(portion, point, (k) => k)
    }
    const asked: Question = {
      analysis: 'direct',
      condition: conditionWithin(condition, wide.kept),
      ...changed,
    }
    const within = this.#portions.seenIn(wide, asked, questionWithin(wide, asked))
    const point = fedPoint(wide.net, within)
    return point && pointWithin(portion, point, (k) => wide.toBranch[k]!)
  }

  #kept(key: string, { portion, asked }: Case, make: () => Solution): Solution {
    const own = { ...make(), question: asked }
    const answer =
      portion === undefined ? own : { ...own, portion, standIns: this.#standIns(portion, asked, own) }
    this.#answers.set(key, answer)
    return answer
  }

  /** Stand-ins by their branches in the whole, those of sets that are there by their contacts only at their plugs. */
  #standIns(portion: Portion, asked: Question, { standIns }: Solution): Solution['standIns'] {
    const all = new Map<string, readonly number[]>()
    for (const [reason, branches] of standIns)
      all.set(
        reason,
        branches.map((k) => portion.branches[k] ?? -1).filter((k) => k !== -1),
      )
    for (const [reason, plugs] of this.#portions?.reasons(portion, asked) ?? [])
      all.set(reason, [...(all.get(reason) ?? []), ...plugs])
    return all
  }

  /** A condition without what goes without saying, its sets in the order of their names. */
  #settled({ line, sets }: Condition): Condition {
    const said = Object.entries(sets).filter(([, one]) => !isAtRest(one))
    return { line: this.#states[line], sets: Object.fromEntries(said.sort(([p], [q]) => (p < q ? -1 : 1))) }
  }
}

/** Whether a portion without the line is asked for its bent parts as the line finds them. */
function feeds({ portion, net, asked }: Case): boolean {
  return asked.small === 'fed' && portion !== undefined && net.parts.some(isBent)
}

function isAtRest({ hook, dial, key }: SetCondition): boolean {
  return hook === ON_HOOK.hook && dial === ON_HOOK.dial && key === ON_HOOK.key
}
