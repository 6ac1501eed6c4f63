/** The linear networks that Newton's method solves on its way, one a step, and the help that it is given there. */
import type { Netlist } from '../../netlist/netlist.ts'
import type { Laws, Point } from '../laws.ts'
import { type Linear, makeReady, makeReadyAgain, type Ready, shapeOf, solveReady } from '../linear.ts'
import type { Question } from '../question.ts'

/** What is changed in the laws on the way: siemens beside and ohms within bent parts, a share of the sources. */
export interface Help {
  readonly beside: number
  readonly raised: number
}

/** Puts conductances beside the bent parts and resistances within, and takes the sources down to their share. */
function applyHelp(laws: Laws, { beside, raised }: Help): void {
  if (raised !== 1) {
    const bent = new Set(laws.bent.direct)
    for (let k = 0; k < laws.count; k += 1) if (!bent.has(k)) laws.offset[2 * k]! *= raised
  }
  if (beside === 0) return
  for (const k of laws.bent.direct) {
    const a = laws.a[k]!
    const z = laws.slope[2 * k]! + (a === 0 ? 0 : beside)
    // a·v − z·i = e with i = i′ + g·v in place of i: (a + z·g)·v − z·i′ = e, scaled so that a is 1 again
    const scale = a + z * beside
    laws.a[k] = 1
    laws.slope[2 * k] = z / scale
    laws.offset[2 * k]! /= scale
  }
}

/** Joins, and is ideal: what a bent branch is to the shape of the network. */
const JOINS = 1
const IDEAL = 2

/**
 * The linear networks on one way to a point. From step to step only the bent parts are stated anew, and while none of
 * them begins or ceases to join, the shape of the network and the places of its values stay as well.
 */
export class Way {
  readonly #net: Netlist
  readonly #laws: Laws
  readonly #question: Question
  readonly #help: Help
  readonly #raised: boolean
  #ready: Ready | undefined
  #shape: Uint8Array = new Uint8Array(0)
  #filled = false

  constructor(net: Netlist, laws: Laws, question: Question, help: Help) {
    this.#net = net
    this.#laws = laws
    this.#question = question
    this.#help = help
    this.#raised = help.raised !== 1
  }

  /** States the laws about a point. */
  fill(about: Point): void {
    if (this.#filled && !this.#raised) this.#laws.refill(this.#net, this.#question, about)
    else this.#fillAll(about)
    applyHelp(this.#laws, this.#help)
  }

  #fillAll(about: Point): void {
    this.#laws.fill(this.#net, this.#question, { direct: about })
    this.#filled = true
    this.#ready = undefined
  }

  /** Solves the laws as they stand, about this point, as well as a step needs. */
  solve(about: Point): Linear {
    const laws = this.#laws
    const shape = Uint8Array.from(
      laws.bent.direct,
      (k) => (laws.joins(k) ? JOINS : 0) + (laws.ideal(k) ? IDEAL : 0),
    )
    const kept = this.#ready
    if (kept !== undefined && isSameShape(shape, this.#shape)) {
      this.#ready = makeReadyAgain(this.#net, laws, kept, false)
    } else {
      // the last shape has opened links that close loops
      if (kept !== undefined && kept.topology.closing.length > 0) {
        this.#fillAll(about)
        applyHelp(laws, this.#help)
      }
      this.#ready = makeReady(this.#net, laws, shapeOf(this.#net, laws), false)
    }
    this.#shape = shape
    return solveReady(this.#net, laws, this.#question, this.#ready, { rough: true })
  }

  /** The network that was solved last, about this point, as well as it can be; its laws are left filled. */
  last(about: Point): Linear {
    const laws = this.#laws
    const { closing } = this.#ready!.topology
    const fill = (): void => {
      laws.fill(this.#net, this.#question, { direct: about })
      applyHelp(laws, this.#help)
    }
    fill()
    for (const k of closing) laws.open(k)
    const linear = solveReady(this.#net, laws, this.#question, this.#ready!)
    if (closing.length > 0) fill()
    return linear
  }
}

function isSameShape(p: Uint8Array, q: Uint8Array): boolean {
  return p.length === q.length && p.every((one, k) => one === q[k] && one < IDEAL)
}
