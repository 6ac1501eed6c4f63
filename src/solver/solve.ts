/** One question about a netlist, answered: laws about their point, topology, system, solution. */
import { type Branch, type Netlist, nodeName } from '../netlist/netlist.ts'
import { bridgesOf } from '../netlist/paths.ts'
import { ProblemError, refuse } from '../problem.ts'
import { isBent, Laws, type Point } from './laws.ts'
import { branchesOf, type Linear, type Manner, solveLinear, voltagesOf } from './linear.ts'
import { noteFarSwings } from './points/far-swing.ts'
import { operatingPoint, settledDirect } from './points/operating-point.ts'
import { settleSwing } from './points/swing.ts'
import type { Question } from './question.ts'
import { shareLoops } from './shared.ts'
import type { Solution } from './solution.ts'
import type { Topology } from './topology.ts'

/** Share of the largest branch current that a gauge may carry before the sources contradict each other. */
const GAUGE_LIMIT = 1e-9
/** Tangents taken as level are off by up to this much, A; so little in a gauge contradicts nothing. */
const GAUGE_FLOOR = 1e-12

/** About what laws were stated. */
export interface Standing {
  readonly point?: Point | undefined
  readonly swing?: Float64Array
  readonly chords?: ReadonlyMap<number, number>
}

/**
 * Solves a question by modified nodal analysis on the sparse engine; Newton's method where laws bend.
 * @throws ProblemError `contradiction` for loops of ideal sources and for current sources with no way back,
 * `no-unique-solution` with the terminal or part concerned, `no-convergence` with the part that does not settle.
 */
export function solve(net: Netlist, question: Question, manner: Manner = {}): Solution {
  const laws = new Laws(net, question)
  const stated = stateLaws(net, laws, question)
  if (stated !== undefined)
    return solutionOf(net, laws, question, solveLinear(net, laws, question, manner), stated)
  const { linear, ...standing } = settle(net, laws, question)
  return solutionOf(net, laws, question, linear, standing)
}

/**
 * Fills laws about the right point where no solution is needed to state them; undefined where the solution itself
 * decides: bent parts in direct current, and parts that hang on the size of the alternating voltage.
 * @param fed the direct point of `small: 'fed'` where it is known already
 */
export function stateLaws(net: Netlist, laws: Laws, question: Question, fed?: Point): Standing | undefined {
  if (question.small === 'fed') {
    laws.fill(net, question)
    const point = net.parts.some(isBent) ? (fed ?? fedPoint(net, question)) : undefined
    if (point === undefined) return {}
    const chords = laws.takeChords(net, point)
    // a resistance in place of a law has lost what was put in series with that
    laws.addSeries(
      question.series?.filter(({ branch }) => chords.has(branch)),
      question.lifted,
    )
    return { chords }
  }
  if (question.analysis === 'alternating') {
    const point = operatingPoint(net, question)
    laws.fill(net, question, { direct: point })
    return laws.bent.swing.length > 0 ? undefined : { point }
  }
  laws.fill(net, question)
  return laws.bent.direct.length > 0 ? undefined : {}
}

/** Finds the solution that its laws are stated about. */
function settle(net: Netlist, laws: Laws, question: Question): Standing & { readonly linear: Linear } {
  if (question.analysis === 'direct') return settledDirect(net, laws, question)
  const point = operatingPoint(net, question)
  return { point, ...settleSwing(net, laws, question, point) }
}

/** All that is read off a solved network. */
export function solutionOf(
  net: Netlist,
  laws: Laws,
  question: Question,
  linear: Linear,
  { point, swing, chords }: Standing,
): Solution {
  const { topology, refined } = linear
  const complex = question.analysis === 'alternating'
  const standIns = new Map<string, readonly number[]>(laws.standIns)
  if (complex) noteFarSwings(net, laws, question, linear, point, standIns)
  const voltages = voltagesOf(net, refined.value, complex)
  const voltageTails = voltagesOf(net, refined.tail, complex)
  const { currents } = branchesOf(laws, linear, complex)
  refuseGauge(net, laws, topology, voltages, currents)
  const moved =
    topology.closing.length === 0 ? [] : shareLoops(laws, linear.shorts, topology.closing, currents)
  return {
    question,
    voltages,
    voltageTails,
    currents,
    island: topology.island,
    shared: inLoops(net, linear.shorts, moved),
    residual: linear.residual,
    probeOpen: linear.probeOpen,
    standIns,
    ...(point === undefined ? {} : { point }),
    ...(swing === undefined ? {} : { swing }),
    ...(chords === undefined ? {} : { chords }),
  }
}

/** Where the line puts the bent parts in this condition; none where it finds no point for them. */
export function fedPoint(net: Netlist, { condition, instead }: Question): Point | undefined {
  try {
    return operatingPoint(net, {
      analysis: 'direct',
      condition,
      ...(instead === undefined ? {} : { instead }),
    })
  } catch (error) {
    if (error instanceof ProblemError) return undefined
    throw error
  }
}

/** Those of the links whose current was shared that lie in a loop; what only leads to one has a current of its own. */
function inLoops(net: Netlist, shorts: readonly number[], moved: readonly number[]): readonly number[] {
  if (moved.length === 0) return moved
  const among = new Set(shorts)
  const bridges = bridgesOf(net, (branch) => among.has(branch.index))
  return moved.filter((k) => !bridges.has(k))
}

/** Refuses sources that drive a fixed current into an island without a way back; where none does, a gauge carries rounding. */
function refuseGauge(
  net: Netlist,
  laws: Laws,
  topology: Topology,
  voltages: Float64Array,
  currents: Float64Array,
): void {
  let largest = 0
  for (let k = 0; k < currents.length; k += 2)
    largest = Math.max(largest, Math.hypot(currents[k]!, currents[k + 1]!))
  for (const node of topology.gauges) {
    // 1 S: the gauge's current is its node's voltage
    const through = Math.hypot(voltages[2 * node]!, voltages[2 * node + 1]!)
    if (through <= GAUGE_LIMIT * largest) continue
    const island = topology.island[node]
    const crossing = net.branches.filter(
      ({ index, from, to }) =>
        laws.drives(index) && (topology.island[from] === island) !== (topology.island[to] === island),
    )
    const sources = crossing.filter(({ index }) => !laws.bent.direct.includes(index)).map(({ id }) => id)
    if (sources.length > 0) refuseDriven(net, sources, node)
    const [bent] = crossing
    if (bent !== undefined && through > GAUGE_FLOOR) refuseParted(bent)
  }
}

function refuseDriven(net: Netlist, sources: readonly string[], node: number): never {
  refuse({
    code: 'contradiction',
    found: `${sources.join(', ')} driving a current into ${nodeName(net, node)} with no way back`,
    expected: 'a closed way for the current of every current source',
    mend: `join ${nodeName(net, node)} to the rest of the network`,
  })
}

function refuseParted({ id, part }: Branch): never {
  refuse({
    code: 'no-convergence',
    found: `${id}, whose current has no way back at the point that was found`,
    expected: 'a direct-current point in which every part agrees with its law',
    mend: 'look at the values of that part and of those that it is in series with',
    ...(part.origin === undefined ? {} : { place: part.origin }),
  })
}
