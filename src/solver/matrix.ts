/**
 * One network as a question states it, factored once: whatever is put into it afterwards, currents at nodes and
 * voltages in series with branches, costs a right side only.
 */
import type { Netlist } from '../netlist/netlist.ts'
import { Laws, type Point } from './laws.ts'
import { makeReady, type Ready, type Shape, shapeOf, solveReady } from './linear.ts'
import type { Question } from './question.ts'
import type { Solution } from './solution.ts'
import { type Standing, solutionOf, solve, stateLaws } from './solve.ts'

/** A factored network. */
export class Matrix {
  readonly #net: Netlist
  readonly #laws: Laws
  readonly #shape: Shape
  readonly #complex: boolean
  #ready: Ready | undefined
  readonly #standing: Standing
  /** Sources of the laws before a question puts voltages in series. */
  readonly #offset: Float64Array
  #open: Solution | undefined

  /**
   * The factored network of a question; undefined where its laws hang on the solution itself, so that every question
   * has a network of its own.
   * @param fed the direct point of `small: 'fed'` where it is known already
   */
  static of(net: Netlist, stated: Question, fed?: Point): Matrix | undefined {
    const laws = new Laws(net, stated)
    const standing = stateLaws(net, laws, stated, fed)
    return standing === undefined ? undefined : new Matrix(net, laws, stated, standing)
  }

  private constructor(net: Netlist, laws: Laws, stated: Question, standing: Standing) {
    this.#net = net
    this.#laws = laws
    this.#standing = standing
    this.#complex = stated.analysis === 'alternating'
    this.#shape = shapeOf(net, laws)
    this.#offset = laws.offset.slice()
  }

  /** The factors, made when the first right side comes. */
  #factors(): Ready {
    if (this.#ready !== undefined) return this.#ready
    const made = makeReady(this.#net, this.#laws, this.#shape, this.#complex)
    // the kept system of a wiring is filled anew by the next question of that wiring
    const { assembled } = made
    this.#ready = { ...made, assembled: { ...assembled, system: assembled.system.twin() } }
    return this.#ready
  }

  /**
   * The answer where some probe stands between two islands, so that nothing can flow in it; undefined where none does.
   * Nothing but that, and what it rests on, is read of such an answer.
   */
  openAnswer(question: Question): Solution | undefined {
    const { probes = [] } = question
    const { island } = this.#shape.topology
    if (probes.every(({ into, outOf }) => island[into] === island[outOf])) return undefined
    this.#open ??= {
      question,
      voltages: new Float64Array(2 * this.#net.nodes.length),
      voltageTails: new Float64Array(2 * this.#net.nodes.length),
      currents: new Float64Array(2 * this.#laws.count),
      island,
      shared: [],
      residual: 0,
      probeOpen: true,
      standIns: new Map(this.#laws.standIns),
    }
    return this.#open
  }

  /** The answer to a question that states what this one was made from. @throws ProblemError as `solve` */
  answer(question: Question): Solution {
    const { series = [], lifted } = question
    // a voltage in series with an ideal link makes a source of it, which is another network
    if (series.some(({ branch }) => this.#laws.ideal(branch))) return solve(this.#net, question)
    this.#laws.offset.set(this.#offset)
    this.#laws.addSeries(series, lifted)
    const linear = solveReady(this.#net, this.#laws, question, this.#factors())
    return solutionOf(this.#net, this.#laws, question, linear, this.#standing)
  }
}
