/** The unchanged network of many variants: its laws about their point, its factors, and one solution for every source. */
import type { Netlist } from '../../../netlist/netlist.ts'
import { fillValues, newWiring } from '../../assemble.ts'
import { type About, isBent, Laws, type Point } from '../../laws.ts'
import { type Ready, shapeOf, solveReady } from '../../linear.ts'
import { operatingPoint, settledDirect } from '../../points/operating-point.ts'
import { settleSwing } from '../../points/swing.ts'
import type { Question } from '../../question.ts'
import { fedPoint } from '../../solve.ts'
import { Columns, placed } from './columns-of.ts'
import type { Stating } from './part-alone.ts'
import type { Placed, SeriesOf } from './placed.ts'
import { Ties } from './ties.ts'

/** One right side: what a question puts into the network. */
export interface Source {
  readonly question: Question
  /** The solution of the unchanged network. */
  readonly x: Placed
  /** What stands in series with the branches, by branch, interleaved; absent where nothing does. */
  readonly series: SeriesOf
}

/** A network that is solved and factored. */
export interface Base {
  readonly net: Netlist
  /** Without probes and voltages in series. */
  readonly stated: Question
  readonly laws: Laws
  readonly about: About
  /** About what parts whose law bends state it; `rest` where none does. */
  readonly stating: Stating
  /** Whether the solution itself decides at which point that is. */
  readonly settles: boolean
  readonly columns: Columns
  readonly ties: Ties
  readonly gauges: readonly number[]
  readonly sources: readonly Source[]
}

/** Whether the laws of a question hang on its solution, so that every source has a network of its own. */
export function hangsOnSource(net: Netlist, { analysis, small }: Question): boolean {
  if (small !== undefined) return false
  const bend = analysis === 'direct' ? 'direct' : 'swing'
  return net.parts.some(({ law, spec }) => law.bends?.(spec).includes(bend) === true)
}

/** A question without what it puts into the network. */
export function statedOf({ probes: _, series: __, ...stated }: Question): Question {
  return stated
}

/**
 * Solves and factors; undefined where tables of updates do not hold: loops of ideal links, contradictory sources.
 * @throws ProblemError what the unchanged questions throw
 */
export function makeBase(net: Netlist, stated: Question, questions: readonly Question[]): Base | undefined {
  const laws = new Laws(net, stated)
  const { about, stating, settles } = stateAbout(net, laws, questions[0] ?? stated)
  if (questions.some(({ series = [] }) => series.some(({ branch }) => laws.ideal(branch)))) return undefined
  const complex = stated.analysis === 'alternating'
  const shape = shapeOf(net, laws)
  const { topology } = shape
  if (topology.closing.length > 0) return undefined
  const assembled = newWiring(net.nodes.length - 1, laws, topology, complex)
  fillValues(assembled, laws, topology)
  if (!assembled.system.factor().ok) return undefined
  const ready: Ready = { ...shape, assembled }
  const columns = new Columns({ laws, topology, assembled, complex, nodes: net.nodes.length })
  const ties = new Ties(net.nodes.length, laws, topology)
  if (ties.contradicts) return undefined
  const sources = questions.map((question) => sourceOf(net, laws, question, ready))
  return { net, stated, laws, about, stating, settles, columns, ties, gauges: topology.gauges, sources }
}

function sourceOf(net: Netlist, laws: Laws, question: Question, ready: Ready): Source {
  const plain = laws.offset.slice()
  laws.addSeries(question.series, question.lifted)
  // through gauges a probe between two islands has a way; where a variant joins them, its gauge goes with them
  const topology = { ...ready.topology, island: new Int32Array(net.nodes.length) }
  const { refined } = solveReady(net, laws, question, { ...ready, topology })
  laws.offset.set(plain)
  const series = question.series === undefined ? undefined : new Float64Array(2 * laws.count)
  for (const { branch, re, im = 0 } of question.series ?? []) {
    if (series === undefined) continue
    series[2 * branch]! += re
    series[2 * branch + 1]! += im
  }
  return { question, x: placed(refined, question.analysis === 'alternating'), series }
}

interface Stated {
  readonly about: About
  readonly stating: Stating
  readonly settles: boolean
}

/** Fills laws about their point, without what the question puts in series. */
function stateAbout(net: Netlist, laws: Laws, question: Question): Stated {
  const stated = statedOf(question)
  if (stated.small === 'fed' && net.parts.some(isBent)) {
    const direct = fedPoint(net, stated)
    laws.fill(net, stated)
    if (direct !== undefined) laws.takeChords(net, direct)
    return { about: { direct }, stating: 'chords', settles: false }
  }
  laws.fill(net, stated)
  if (stated.analysis === 'direct') {
    if (laws.bent.direct.length === 0) return { about: {}, stating: 'rest', settles: false }
    const { point: direct } = settledDirect(net, new Laws(net, question), question)
    laws.fill(net, stated, { direct })
    return { about: { direct }, stating: 'about', settles: true }
  }
  const direct: Point | undefined = operatingPoint(net, stated)
  laws.fill(net, stated, { direct })
  if (laws.bent.swing.length === 0)
    return { about: { direct }, stating: direct === undefined ? 'rest' : 'about', settles: false }
  const { swing } = settleSwing(net, new Laws(net, question), question, direct)
  laws.fill(net, stated, { direct, swing })
  return { about: { direct, swing }, stating: 'swing', settles: true }
}
