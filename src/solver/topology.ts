/** What must be known before stamping: islands, loops of ideal branches, gauges. Union-find throughout. */
import { createUnionFind, findRoot, union } from '../algebra/union-find.ts'
import { branchAt, type Netlist, nodeName } from '../netlist/netlist.ts'
import { pathBetween, pathIds } from '../netlist/paths.ts'
import { refuse } from '../problem.ts'
import type { Laws } from './laws.ts'

/** The shape of a question's network. */
export interface Topology {
  /** Island of each node: the index of its first node. */
  readonly island: Int32Array
  /** For each island without earth, the node that is tied to earth: its first by id. */
  readonly gauges: readonly number[]
  /** Zero-ohm links whose equation became i = 0 because they close a loop of such links. */
  readonly closing: readonly number[]
}

/** Finds islands and gauges, opens the links that close zero-ohm loops, refuses contradictory sources. */
export function topologyOf(net: Netlist, laws: Laws): Topology {
  const closing = openLoops(net, laws)
  const islands = createUnionFind(net.nodes.length)
  for (let k = 0; k < laws.count; k += 1) {
    if (laws.joins(k)) union(islands, laws.from[k]!, laws.to[k]!)
  }
  // a link that was opened closes a loop, so its ends are joined anyway
  const island = Int32Array.from(net.nodes, (_, node) => findRoot(islands, node))
  return { island, gauges: gaugesOf(net, island), closing }
}

function gaugesOf(net: Netlist, island: Int32Array): readonly number[] {
  const first = new Map<number, number>()
  net.nodes.forEach((id, node) => {
    const own = island[node]!
    if (own === island[0]) return
    const known = first.get(own)
    if (known === undefined || id < nodeName(net, known)) first.set(own, node)
  })
  return [...first.values()]
}

const known = new WeakMap<Netlist, readonly number[]>()

/** The netlist's own branches in the order of their ids, made once. */
function orderOf(net: Netlist): readonly number[] {
  const before = known.get(net)
  if (before !== undefined) return before
  const order = net.branches
    .map(({ id, index }) => ({ id, index }))
    .sort((p, q) => (p.id < q.id ? -1 : 1))
    .map(({ index }) => index)
  known.set(net, order)
  return order
}

/** Ideal branches by id, those that a question adds behind them. */
function byId(net: Netlist, laws: Laws): readonly number[] {
  const ideal = orderOf(net).filter((k) => laws.ideal(k))
  for (let k = net.branches.length; k < laws.count; k += 1) if (laws.ideal(k)) ideal.push(k)
  return ideal
}

function openLoops(net: Netlist, laws: Laws): readonly number[] {
  const ideal = byId(net, laws)
  if (ideal.length === 0) return []
  const groups = createUnionFind(net.nodes.length)
  const closing = ideal.filter((k) => laws.short(k) && !union(groups, laws.from[k]!, laws.to[k]!))
  for (const k of ideal) {
    if (!laws.short(k) && !union(groups, laws.from[k]!, laws.to[k]!)) contradiction(net, laws, ideal, k)
  }
  for (const k of closing) laws.open(k)
  return closing
}

function contradiction(net: Netlist, laws: Laws, ideal: readonly number[], source: number): never {
  const others = new Set(ideal.filter((k) => k !== source))
  const from = laws.from[source]!
  const to = laws.to[source]!
  const path = pathBetween(net, (branch) => others.has(branch.index), from, to)
  const trace = path === undefined ? nodeName(net, from) : pathIds(net, path).join(' – ')
  const branch = branchAt(net, source)
  refuse({
    code: 'contradiction',
    found: `${branch.id} closes a loop of ideal sources and links over ${trace}`,
    expected: 'some resistance in every loop that holds an ideal source',
    mend: `give one part of the loop a resistance, or take ${branch.id} out`,
    ...(branch.part.origin === undefined ? {} : { place: branch.part.origin }),
  })
}
