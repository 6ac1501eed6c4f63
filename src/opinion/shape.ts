/** Islands, and links of no resistance that close loops, found in graphs of their own. */
import { MultiUndirectedGraph, UndirectedGraph } from 'graphology'
import { connectedComponents } from 'graphology-components'
import { bidirectional } from 'graphology-shortest-path/unweighted.js'
import { EARTH, type Netlist } from '../netlist/netlist.ts'
import { isShort, joins } from './branch-law.ts'
import type { Wire } from './wires.ts'

/** A loop of links without resistance: the wires round it, each with the sense in which it is passed. */
export type Loop = ReadonlyMap<number, 1 | -1>

/** The shape of a question's network. */
export interface Shape {
  /** The island of each node, by a number of its own. */
  readonly island: ReadonlyMap<string, number>
  /** The first node by id of every island without earth. */
  readonly gauges: readonly string[]
  /** By the wire that closes it. */
  readonly loops: ReadonlyMap<number, Loop>
}

/** Finds islands, gauges and loops. */
export function shapeOf(net: Netlist, wires: readonly Wire[]): Shape {
  const joined = new MultiUndirectedGraph()
  net.graph.forEachNode((id) => joined.addNode(id))
  for (const { from, to, law } of wires) if (joins(law)) joined.addEdge(from, to)
  const island = new Map<string, number>()
  const gauges: string[] = []
  connectedComponents(joined).forEach((nodes, at) => {
    for (const node of nodes) island.set(node, at)
    if (!nodes.includes(EARTH)) gauges.push([...nodes].sort()[0] ?? '')
  })
  return { island, gauges, loops: loopsOf(net, wires) }
}

/** In the order of their ids, links without resistance grow trees; one whose ends are joined already closes a loop. */
function loopsOf(net: Netlist, wires: readonly Wire[]): ReadonlyMap<number, Loop> {
  const order = [...wires.keys()]
    .filter((k) => wires[k] !== undefined && isShort(wires[k].law))
    .sort((p, q) => ((wires[p]?.id ?? '') < (wires[q]?.id ?? '') ? -1 : 1))
  const loops = new Map<number, Loop>()
  if (order.length === 0) return loops
  const forest = new UndirectedGraph<Record<string, never>, { wire: number }>()
  net.graph.forEachNode((id) => forest.addNode(id))
  for (const k of order) {
    const wire = wires[k]
    if (wire === undefined) continue
    const path = bidirectional(forest, wire.from, wire.to)
    if (path === null) {
      forest.addEdge(wire.from, wire.to, { wire: k })
      continue
    }
    const loop = new Map<number, 1 | -1>([[k, 1]])
    path.slice(1).forEach((node, at) => {
      const before = path[at] ?? ''
      const passed = forest.getEdgeAttribute(before, node, 'wire')
      // the closing wire runs from its start to its end, and the tree leads back
      loop.set(passed, wires[passed]?.from === before ? -1 : 1)
    })
    loops.set(k, loop)
  }
  return loops
}
