/** Graph questions about a netlist: what is joined to what, by which path, what floats, what is a bridge. */
import { MultiUndirectedGraph } from 'graphology'
import { connectedComponents } from 'graphology-components'
import { bidirectional } from 'graphology-shortest-path/unweighted.js'
import type { Choice } from './conduct.ts'
import { branchAt, type Netlist, nodeName } from './netlist.ts'

type Chosen = MultiUndirectedGraph<Record<string, never>, { branch: number }>

/** The netlist's graph with the chosen branches only: of all nodes, or of those that are given. */
function chosen(net: Netlist, choice: Choice, among?: ReadonlySet<number>): Chosen {
  const graph: Chosen = new MultiUndirectedGraph()
  net.nodes.forEach((id, node) => {
    if (among === undefined || among.has(node)) graph.addNode(id)
  })
  for (const branch of net.branches) {
    if ((among !== undefined && !among.has(branch.from)) || !choice(branch)) continue
    graph.addEdgeWithKey(branch.id, nodeName(net, branch.from), nodeName(net, branch.to), {
      branch: branch.index,
    })
  }
  return graph
}

/** All branches that end at each node, by index; made once for a netlist. */
function around(net: Netlist): readonly (readonly number[])[] {
  const before = known.get(net)
  if (before !== undefined) return before
  const all: number[][] = net.nodes.map(() => [])
  for (const { index, from, to } of net.branches) {
    all[from]?.push(index)
    if (to !== from) all[to]?.push(index)
  }
  known.set(net, all)
  return all
}

const known = new WeakMap<Netlist, readonly (readonly number[])[]>()

/** Islands by the chosen branches: node indices, each island and the list in the order of their nodes. */
export function islandsOf(net: Netlist, choice: Choice): readonly (readonly number[])[] {
  const index = (id: string): number => net.nodeIndex.get(id) ?? 0
  return connectedComponents(chosen(net, choice))
    .map((island) => island.map(index).sort((p, q) => p - q))
    .sort((p, q) => (p[0] ?? 0) - (q[0] ?? 0))
}

/** All nodes that the chosen branches join to a node, itself included. */
export function joinedTo(net: Netlist, choice: Choice, node: number): ReadonlySet<number> {
  const ends = around(net)
  const reached = new Set([node])
  for (const one of reached) {
    for (const k of ends[one] ?? []) {
      const branch = branchAt(net, k)
      const other = branch.from === one ? branch.to : branch.from
      // a set goes on to what is added to it on the way
      if (!reached.has(other) && choice(branch)) reached.add(other)
    }
  }
  return new Set([...reached].sort((p, q) => p - q))
}

/** A path: n nodes and the n − 1 branches between them, by index. */
export interface Path {
  readonly nodes: readonly number[]
  readonly branches: readonly number[]
}

/** A shortest path over the chosen branches, by number of branches; undefined when there is none. */
export function pathBetween(net: Netlist, choice: Choice, from: number, to: number): Path | undefined {
  const reached = joinedTo(net, choice, from)
  if (!reached.has(to)) return undefined
  const graph = chosen(net, choice, reached)
  const names = bidirectional(graph, nodeName(net, from), nodeName(net, to))
  if (names === null) return undefined
  const branches = names.slice(1).map((name, k) => {
    const edges = graph.edges(names[k], name).map((edge) => graph.getEdgeAttribute(edge, 'branch'))
    return Math.min(...edges)
  })
  return { nodes: names.map((name) => net.nodeIndex.get(name) ?? 0), branches }
}

/** Ids along a path, branches of one piece of wire left out: the nodes, as a person would trace them. */
export function pathIds(net: Netlist, path: Path): readonly string[] {
  return path.nodes.map((node) => nodeName(net, node))
}

/** Ids along a path with every branch between its nodes. */
export function fullPathIds(net: Netlist, path: Path): readonly string[] {
  return path.nodes.flatMap((node, k) => {
    const branch = path.branches[k]
    return branch === undefined ? [nodeName(net, node)] : [nodeName(net, node), branchAt(net, branch).id]
  })
}

/**
 * Bridges among the chosen branches: those that lie on no closed path, so that no current can return.
 * Depth-first search with low points, without recursion. @source Tarjan 1974, from memory.
 */
export function bridgesOf(net: Netlist, choice: Choice): ReadonlySet<number> {
  const size = net.nodes.length
  const ends = around(net)
  const seen = new Int32Array(size).fill(-1)
  const low = new Int32Array(size)
  const bridges = new Set<number>()
  let clock = 0
  for (let root = 0; root < size; root += 1) {
    if (seen[root] !== -1) continue
    const stack = [{ node: root, by: -1, next: 0 }]
    seen[root] = low[root] = clock++
    for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
      const k = ends[top.node]?.[top.next]
      if (k === undefined) {
        stack.pop()
        const parent = stack.at(-1)
        if (parent === undefined) continue
        low[parent.node] = Math.min(low[parent.node] ?? 0, low[top.node] ?? 0)
        if ((low[top.node] ?? 0) > (seen[parent.node] ?? 0)) bridges.add(top.by)
        continue
      }
      top.next += 1
      const branch = branchAt(net, k)
      if (k === top.by || branch.from === branch.to || !choice(branch)) continue
      const other = branch.from === top.node ? branch.to : branch.from
      const met = seen[other] ?? -1
      if (met !== -1) {
        low[top.node] = Math.min(low[top.node] ?? 0, met)
      } else {
        seen[other] = low[other] = clock++
        stack.push({ node: other, by: k, next: 0 })
      }
    }
  }
  return bridges
}
