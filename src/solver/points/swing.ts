/**
 * Alternating current through parts whose law hangs on the size of the voltage across them (describing functions):
 * the network is solved with the sizes of the last step until these stay.
 */
import type { Netlist } from '../../netlist/netlist.ts'
import { branchAt } from '../../netlist/netlist.ts'
import { refuse } from '../../problem.ts'
import type { Laws, Point } from '../laws.ts'
import { branchesOf, type Linear, solveLinear } from '../linear.ts'
import type { Question } from '../question.ts'

/** Steps of one search, and when it has come to rest. */
const STEPS = 300
const RELATIVE = 1e-10
const ABSOLUTE = 1e-12
/** The smallest share of a step that is tried. */
const LEAST_SHARE = 1 / 256

/** The solved network and the sizes of voltage in which its laws are stated. */
export interface Swung {
  readonly linear: Linear
  readonly swing: Float64Array
}

/** Finds the sizes at which all agree. @throws ProblemError `no-convergence` naming the part that does not settle. */
export function settleSwing(net: Netlist, laws: Laws, question: Question, direct: Point | undefined): Swung {
  const swing = new Float64Array(laws.count)
  let share = 1
  let last = Number.POSITIVE_INFINITY
  let worst = -1
  for (let step = 0; step < STEPS; step += 1) {
    laws.fill(net, question, { direct, swing })
    const linear = solveLinear(net, laws, question)
    const { falls } = branchesOf(laws, linear, true)
    let change = 0
    for (const k of laws.bent.swing) {
      const size = Math.hypot(falls[2 * k]!, falls[2 * k + 1]!)
      const apart = Math.abs(size - swing[k]!) / (RELATIVE * size + ABSOLUTE)
      if (apart > change) {
        change = apart
        worst = k
      }
    }
    if (change <= 1) return { linear, swing }
    // swinging to and fro rather than settling: go less far each time
    if (change > 0.9 * last) share = Math.max(LEAST_SHARE, share / 2)
    last = change
    for (const k of laws.bent.swing)
      swing[k]! += share * (Math.hypot(falls[2 * k]!, falls[2 * k + 1]!) - swing[k]!)
  }
  const branch = branchAt(net, worst)
  refuse({
    code: 'no-convergence',
    found: `${branch.id}, whose alternating voltage does not settle`,
    expected: `a size of that voltage that agrees with its law, within ${STEPS} steps`,
    mend: 'look at the values of that part and of what feeds it',
    ...(branch.part.origin === undefined ? {} : { place: branch.part.origin }),
  })
}
