/** One linear solve: laws as they are filled, topology, system, refined solution. */
import { createDense } from '../algebra/dense.ts'
import { isSparse } from '../algebra/sparse.ts'
import { branchAt, type Netlist, nodeName } from '../netlist/netlist.ts'
import { ProblemError } from '../problem.ts'
import { type Assembled, assemble, fillValues, rightSide } from './assemble.ts'
import type { Laws, LawTable } from './laws.ts'
import type { Question } from './question.ts'
import { currentFrom, type Refined, refine, voltageOf } from './refine.ts'
import { type Topology, topologyOf } from './topology.ts'

/** A solved linear system with all that its figures are read from. */
export interface Linear {
  readonly topology: Topology
  /** Ideal links, those that close loops included. */
  readonly shorts: readonly number[]
  readonly unknown: Int32Array
  readonly refined: Refined
  readonly residual: number
  readonly probeOpen: boolean
}

/** Growth of the elements beyond which kept pivots are not to be trusted. */
const GROWN = 1e8

/** How a linear solve may be told to leave something out, for measuring what it is worth. */
export interface Manner {
  /** Without refinement; figures are then as good as plain factors make them. */
  readonly plain?: true
  /** Refined only as far as a step on the way to something else needs. */
  readonly rough?: true
  /** On the dense engine, the oracle of the sparse one. */
  readonly dense?: true
}

/** The shape of laws that are filled. */
export interface Shape {
  readonly topology: Topology
  readonly shorts: readonly number[]
}

/** Laws that are filled, with their factors, ready for right sides. */
export interface Ready extends Shape {
  readonly assembled: Assembled
}

/**
 * What is joined to what; opens the links that close zero-ohm loops.
 * @throws ProblemError `contradiction` for loops of ideal sources
 */
export function shapeOf(net: Netlist, laws: Laws): Shape {
  const shorts = laws.idealLinks()
  return { topology: topologyOf(net, laws), shorts }
}

/**
 * Makes the factors of the laws as they are filled.
 * @throws ProblemError `no-unique-solution` with the terminal concerned
 */
export function makeReady(
  net: Netlist,
  laws: Laws,
  shape: Shape,
  complex: boolean,
  manner: Manner = {},
): Ready {
  return { ...shape, assembled: factored(net, laws, shape.topology, complex, manner) }
}

/** The factors of the same shape after its laws have changed their values; the old ones are gone. */
export function makeReadyAgain(net: Netlist, laws: Laws, before: Ready, complex: boolean): Ready {
  const { topology, shorts, assembled } = before
  // the dense engine was the last resort of other values
  if (!isSparse(assembled.system)) return makeReady(net, laws, before, complex)
  fillValues(assembled, laws, topology)
  return { topology, shorts, assembled: refactored(net, laws, topology, assembled, complex) }
}

/** Solves for the sources of the laws and the probes of a question. */
export function solveReady(
  net: Netlist,
  laws: Laws,
  question: Question,
  { topology, shorts, assembled }: Ready,
  manner: Manner = {},
): Linear {
  const complex = question.analysis === 'alternating'
  const { injected, probeOpen } = injections(net, question, topology)
  const b = rightSide(laws, assembled, injected, complex)
  const { refined, x } = refinedBy(net, laws, topology, { assembled, b, injected, complex }, manner)
  // of a probe in which nothing can flow nothing is read
  const residual = probeOpen || manner.rough === true ? 0 : assembled.system.residual(x, b)
  return { topology, shorts, unknown: assembled.unknown, refined, residual, probeOpen }
}

/** All at once. @throws ProblemError as `shapeOf` and `makeReady` */
export function solveLinear(net: Netlist, laws: Laws, question: Question, manner: Manner = {}): Linear {
  const ready = makeReady(net, laws, shapeOf(net, laws), question.analysis === 'alternating', manner)
  return solveReady(net, laws, question, ready, manner)
}

/** Solves and refines; factors with kept pivots that a refinement cannot settle on are made anew. */
function refinedBy(
  net: Netlist,
  laws: Laws,
  topology: Topology,
  {
    assembled,
    b,
    injected,
    complex,
  }: { assembled: Assembled; b: Float64Array; injected: Float64Array; complex: boolean },
  manner: Manner,
): { readonly refined: Refined; readonly x: Float64Array } {
  const x = Float64Array.from(b)
  assembled.system.solve(x, 1)
  if (manner.plain === true) return { refined: { value: x, tail: new Float64Array(x.length) }, x }
  const first = refine(laws, topology, assembled, x, injected, complex, manner.rough === true)
  if (first.confirmed) return { refined: first, x }
  fillValues(assembled, laws, topology)
  const fresh = assembled.system.factor()
  if (!fresh.ok) refuseSingular(net, laws, assembled.unknown, fresh.column)
  const again = Float64Array.from(b)
  assembled.system.solve(again, 1)
  return { refined: refine(laws, topology, assembled, again, injected, complex), x: again }
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

/** The sparse engine with kept pivots, with fresh ones where these have grown stale, else the dense one, which names the cause. */
function factored(net: Netlist, laws: Laws, topology: Topology, complex: boolean, manner: Manner): Assembled {
  const assembled = assemble(net, laws, topology, complex)
  if (manner.dense === true) return onDense(net, laws, topology, assembled, complex)
  return refactored(net, laws, topology, assembled, complex)
}

function refactored(
  net: Netlist,
  laws: Laws,
  topology: Topology,
  assembled: Assembled,
  complex: boolean,
): Assembled {
  const kept = assembled.system.refactor()
  if (kept.ok && kept.growth < GROWN) return assembled
  const fresh = assembled.system.factor()
  if (fresh.ok) return assembled
  return onDense(net, laws, topology, assembled, complex)
}

function onDense(
  net: Netlist,
  laws: Laws,
  topology: Topology,
  assembled: Assembled,
  complex: boolean,
): Assembled {
  const dense = { ...assembled, system: createDense(assembled.pattern, complex) }
  fillValues(dense, laws, topology)
  const factored = dense.system.factor()
  if (factored.ok) return dense
  return refuseSingular(net, laws, assembled.unknown, factored.column)
}

function refuseSingular(net: Netlist, laws: Laws, unknown: Int32Array, column: number): never {
  const nodes = net.nodes.length - 1
  const branch = unknown.indexOf(column)
  const what =
    column < nodes
      ? `the voltage of ${nodeName(net, column + 1)}`
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

/** Node voltages, interleaved re, im, from the unknowns. */
export function voltagesOf(net: Netlist, x: Float64Array, complex: boolean): Float64Array {
  const voltages = new Float64Array(2 * net.nodes.length)
  for (let node = 1; node < net.nodes.length; node += 1) {
    voltages[2 * node] = complex ? x[2 * (node - 1)]! : x[node - 1]!
    if (complex) voltages[2 * node + 1] = x[2 * (node - 1) + 1]!
  }
  return voltages
}

const fall = { value: new Float64Array(2), tail: new Float64Array(2) }
const current = { value: new Float64Array(2), tail: new Float64Array(2) }

/** Voltages across and currents through all branches, interleaved re, im. */
export function branchesOf(
  laws: LawTable,
  { unknown, refined }: Pick<Linear, 'unknown' | 'refined'>,
  complex: boolean,
): { readonly falls: Float64Array; readonly currents: Float64Array } {
  const width = complex ? 2 : 1
  const falls = new Float64Array(2 * laws.count)
  const currents = new Float64Array(2 * laws.count)
  for (let k = 0; k < laws.count; k += 1) {
    voltageOf(laws, refined, k, width, fall)
    currentFrom(laws, refined, k, unknown[k]!, width, fall, current)
    for (let part = 0; part < width; part += 1) {
      falls[2 * k + part] = fall.value[part]!
      currents[2 * k + part] = current.value[part]!
    }
  }
  return { falls, currents }
}
