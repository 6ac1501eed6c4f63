/** A solved question with its factors, and how its laws are stated with other values about the same point. */
import type { Netlist } from '../netlist/netlist.ts'
import { fillValues, newWiring } from '../solver/assemble.ts'
import { type About, isBent, Laws, type Point } from '../solver/laws.ts'
import { solveLinear } from '../solver/linear.ts'
import type { Question } from '../solver/question.ts'
import type { Refined } from '../solver/refine.ts'
import { fedPoint } from '../solver/solve.ts'
import type { Kept } from '../solver/variants/columns.ts'
import { keep } from '../solver/variants/keep.ts'
import type { Refit } from './world.ts'

/** What linearising takes. */
export interface KeptQuestion {
  readonly kept: Kept
  readonly refined: Refined
  /** The laws as the parts state them. */
  readonly laws: Laws
  /** The direct point about which they stand. */
  readonly point: Point | undefined
  /** Branches whose law hangs on that point although the point is none of this question's own solution. */
  readonly resting: readonly number[]
  /** The direct question that decides the point. */
  readonly direct: Question | undefined
  /** The laws with other specs, about any direct point. */
  stated(refits: readonly Refit[], point?: Point): Laws
}

/** Solves and factors; undefined where a law hangs on the size of its own alternating voltage. @throws ProblemError as `solve` */
export function keepQuestion(net: Netlist, question: Question): KeptQuestion | undefined {
  if (question.within !== undefined) return undefined
  if (question.small === 'fed') return keepFed(net, question)
  const { kept, refined, laws, about } = keep(net, question)
  if (about.swing !== undefined) return undefined
  const resting = kept.complex && about.direct !== undefined ? laws.bent.direct.slice() : []
  return {
    kept,
    refined,
    laws,
    point: about.direct,
    resting,
    direct: resting.length === 0 ? undefined : directOf(question),
    stated: (refits, direct = about.direct) => filled(net, withRefits(question, refits), { direct }),
  }
}

/** The direct question behind an alternating one; the sheets' sources feed it even where that leaves them out. */
function directOf({ frequency: _, probes: __, series: ___, sources: ____, ...rest }: Question): Question {
  return { ...rest, analysis: 'direct' }
}

/** Refits before what a question says itself, so that they count. */
function withRefits(question: Question, refits: readonly Refit[]): Question {
  return { ...question, instead: [...refits, ...(question.instead ?? [])] }
}

function filled(net: Netlist, question: Question, about: About): Laws {
  const laws = new Laws(net, question)
  laws.fill(net, question, about)
  return laws
}

/** Laws with bent parts as the resistances that the line makes of them, and which branches these are. */
function fedLaws(
  net: Netlist,
  question: Question,
  point: Point | undefined,
): { readonly laws: Laws; readonly chords: readonly number[] } {
  const laws = filled(net, question, {})
  if (point === undefined) return { laws, chords: [] }
  const chords = [...laws.takeChords(net, point).keys()]
  // a resistance in place of a law has lost what was put in series with that
  const series = question.series?.filter(({ branch }) => chords.includes(branch))
  laws.addSeries(series, question.lifted)
  return { laws, chords }
}

function keepFed(net: Netlist, question: Question): KeptQuestion {
  const point = net.parts.some(isBent) ? fedPoint(net, question) : undefined
  const { laws, chords } = fedLaws(net, question, point)
  const complex = question.analysis === 'alternating'
  // the solve opens links that close loops of ideal ones
  const { topology, refined } = solveLinear(net, laws, question)
  const assembled = newWiring(net.nodes.length - 1, laws, topology, complex)
  fillValues(assembled, laws, topology)
  assembled.system.factor()
  const { condition, instead } = question
  const direct = { analysis: 'direct', condition, ...(instead === undefined ? {} : { instead }) } as const
  return {
    kept: { laws, topology, assembled, complex, nodes: net.nodes.length },
    refined,
    laws: fedLaws(net, question, point).laws,
    point,
    resting: chords,
    direct: chords.length === 0 ? undefined : direct,
    stated: (refits, at = point) => fedLaws(net, withRefits(question, refits), at).laws,
  }
}
