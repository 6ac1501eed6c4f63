/** Solves a question once and keeps its factors for the variants to come. */
import { createDense } from '../../algebra/dense.ts'
import type { Netlist } from '../../netlist/netlist.ts'
import { fillValues, newWiring } from '../assemble.ts'
import { type About, Laws } from '../laws.ts'
import { solveLinear } from '../linear.ts'
import { newton } from '../points/newton.ts'
import { operatingPoint } from '../points/operating-point.ts'
import { settleSwing } from '../points/swing.ts'
import type { Question } from '../question.ts'
import type { Refined } from '../refine.ts'
import type { Solution } from '../solution.ts'
import { solve } from '../solve.ts'
import type { Kept } from './columns.ts'

/** A solved question with its factors. */
export interface KeptSolution {
  readonly kept: Kept
  readonly refined: Refined
  /** The laws as the parts state them, no link opened that closes a loop of ideal links. */
  readonly laws: Laws
  /** About which point the laws stand, and whether any law hangs on it. */
  readonly about: About
  readonly bent: boolean
  /** The direct current that bent parts rest on, for an alternating question. */
  readonly direct?: Solution
}

/** Solves and factors; the factors belong to nobody else. @throws ProblemError as `solve` */
export function keep(net: Netlist, question: Question): KeptSolution {
  const laws = new Laws(net, question)
  const about = pointFor(net, laws, question)
  laws.fill(net, question, about)
  const bent = laws.bent.direct.length > 0 || laws.bent.swing.length > 0
  const linear = solveLinear(net, laws, question)
  const complex = question.analysis === 'alternating'
  const { topology } = linear
  const wiring = newWiring(net.nodes.length - 1, laws, topology, complex)
  fillValues(wiring, laws, topology)
  let assembled = wiring
  if (!wiring.system.factor().ok) {
    assembled = { ...wiring, system: createDense(wiring.pattern, complex) }
    fillValues(assembled, laws, topology)
    assembled.system.factor()
  }
  const kept: Kept = { laws, topology, assembled, complex, nodes: net.nodes.length }
  const stated = new Laws(net, question)
  stated.fill(net, question, about)
  const direct = complex && bent ? solve(net, directOf(question)) : undefined
  return {
    kept,
    refined: linear.refined,
    laws: stated,
    about,
    bent,
    ...(direct === undefined ? {} : { direct }),
  }
}

function pointFor(net: Netlist, laws: Laws, question: Question): About {
  if (question.analysis === 'alternating') {
    const direct = operatingPoint(net, question)
    laws.fill(net, question, { direct })
    if (laws.bent.swing.length === 0) return { direct }
    return { direct, swing: settleSwing(net, laws, question, direct).swing }
  }
  laws.fill(net, question)
  if (laws.bent.direct.length === 0) return {}
  return { direct: newton(net, laws, question).point }
}

/** The direct question behind an alternating one. */
function directOf({ frequency: _, probes: __, series: ___, sources: ____, ...rest }: Question): Question {
  return { ...rest, analysis: 'direct' }
}
