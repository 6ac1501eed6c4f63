/** One question about a netlist, answered: laws, topology, system, solution. */
import { branchAt, type Netlist, nodeName } from '../netlist/netlist.ts'
import { bridgesOf } from '../netlist/paths.ts'
import { ProblemError, refuse } from '../problem.ts'
import { type Assembled, assemble, rightSide } from './assemble.ts'
import { Laws } from './laws.ts'
import type { Question } from './question.ts'
import { currentFrom, type Refined, refine, voltageOf } from './refine.ts'
import { shareLoops } from './shared.ts'
import type { Solution } from './solution.ts'
import { type Topology, topologyOf } from './topology.ts'

/** Share of the largest branch current that a gauge may carry before the sources contradict each other. */
const GAUGE_LIMIT = 1e-9

/**
 * Solves a question by modified nodal analysis on the dense engine.
 * @throws ProblemError `contradiction` for loops of ideal sources and for current sources with no way back,
 * `no-unique-solution` with the terminal or part concerned.
 */
export function solve(net: Netlist, question: Question): Solution {
  const laws = new Laws(net, question.added ?? [])
  laws.fill(net, question)
  const shorts = shortsOf(laws)
  const topology = topologyOf(net, laws)
  const { injected, probeOpen } = injections(net, question, topology)
  const complex = question.analysis === 'alternating'
  const assembled = assemble(net, laws, topology, complex)
  factor(net, laws, assembled)
  const b = rightSide(laws, assembled, injected, complex)
  const x = Float64Array.from(b)
  assembled.system.solve(x, 1)
  const refined = refine(laws, topology, assembled, x, injected, complex)
  const residual = assembled.system.residual(x, b)
  const voltages = voltagesOf(net, refined.value, complex)
  const voltageTails = voltagesOf(net, refined.tail, complex)
  const currents = currentsOf(laws, assembled, refined, complex)
  refuseGauge(net, topology, voltages, currents)
  const moved = topology.closing.length === 0 ? [] : shareLoops(laws, shorts, topology.closing, currents)
  const shared = inLoops(net, shorts, moved)
  return {
    question,
    voltages,
    voltageTails,
    currents,
    island: topology.island,
    shared,
    residual,
    probeOpen,
    standIns: laws.standIns,
  }
}

function shortsOf(laws: Laws): readonly number[] {
  return Array.from({ length: laws.count }, (_, k) => k).filter((k) => laws.ideal(k) && laws.short(k))
}

/** Those of the links whose current was shared that lie in a loop; what only leads to one has a current of its own. */
function inLoops(net: Netlist, shorts: readonly number[], moved: readonly number[]): readonly number[] {
  if (moved.length === 0) return moved
  const among = new Set(shorts)
  const bridges = bridgesOf(net, (branch) => among.has(branch.index))
  return moved.filter((k) => !bridges.has(k))
}

function injections(
  net: Netlist,
  question: Question,
  topology: Topology,
): { injected: Float64Array; probeOpen: boolean } {
  const injected = new Float64Array(2 * net.nodes.length)
  let probeOpen = false
  for (const { into, outOf, re, im = 0 } of question.probes ?? []) {
    if (topology.island[into] !== topology.island[outOf]) {
      probeOpen = true
      continue
    }
    injected[2 * into]! += re
    injected[2 * into + 1]! += im
    injected[2 * outOf]! -= re
    injected[2 * outOf + 1]! -= im
  }
  return { injected, probeOpen }
}

function factor(net: Netlist, laws: Laws, { system, unknown }: Assembled): void {
  const factored = system.factor()
  if (factored.ok) return
  const nodes = net.nodes.length - 1
  const branch = unknown.indexOf(factored.column)
  const what =
    factored.column < nodes
      ? `the voltage of ${nodeName(net, factored.column + 1)}`
      : `the current of ${branch < net.branches.length ? branchAt(net, branch).id : 'an added strap'}`
  const origin = branch >= 0 && branch < laws.count ? net.branches[branch]?.part.origin : undefined
  throw new ProblemError([
    {
      code: 'no-unique-solution',
      severity: 'error',
      found: `${what} is not determined by the network`,
      expected: 'a network whose parts decide every voltage and current',
      mend: 'look for parts that cancel each other, such as a lossless resonance at this very frequency',
      ...(origin === undefined ? {} : { place: origin }),
    },
  ])
}

function voltagesOf(net: Netlist, x: Float64Array, complex: boolean): Float64Array {
  const voltages = new Float64Array(2 * net.nodes.length)
  for (let node = 1; node < net.nodes.length; node += 1) {
    voltages[2 * node] = complex ? x[2 * (node - 1)]! : x[node - 1]!
    if (complex) voltages[2 * node + 1] = x[2 * (node - 1) + 1]!
  }
  return voltages
}

function currentsOf(laws: Laws, { unknown }: Assembled, x: Refined, complex: boolean): Float64Array {
  const width = complex ? 2 : 1
  const currents = new Float64Array(2 * laws.count)
  const fall = { value: new Float64Array(2), tail: new Float64Array(2) }
  const current = { value: new Float64Array(2), tail: new Float64Array(2) }
  for (let k = 0; k < laws.count; k += 1) {
    voltageOf(laws, x, k, width, fall)
    currentFrom(laws, x, k, unknown[k]!, width, fall, current)
    for (let part = 0; part < width; part += 1) currents[2 * k + part] = current.value[part]!
  }
  return currents
}

function refuseGauge(net: Netlist, topology: Topology, voltages: Float64Array, currents: Float64Array): void {
  let largest = 0
  for (let k = 0; k < currents.length; k += 2)
    largest = Math.max(largest, Math.hypot(currents[k]!, currents[k + 1]!))
  for (const node of topology.gauges) {
    // 1 S: the gauge's current is its node's voltage
    const through = Math.hypot(voltages[2 * node]!, voltages[2 * node + 1]!)
    if (through <= GAUGE_LIMIT * largest) continue
    const island = topology.island[node]
    const names = net.branches
      .filter((branch) => branch.part.role === 'source')
      .filter(
        (branch) => (topology.island[branch.from] === island) !== (topology.island[branch.to] === island),
      )
      .map((branch) => branch.id)
    refuse({
      code: 'contradiction',
      found: `${names.join(', ')} driving a current into ${nodeName(net, node)} with no way back`,
      expected: 'a closed way for the current of every current source',
      mend: `join ${nodeName(net, node)} to the rest of the network`,
    })
  }
}
