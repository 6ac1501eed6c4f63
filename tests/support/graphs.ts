import type { Graph } from './spanning-trees.ts'

/** A graph from the neighbours that each node names; every edge is named once, from its lower end. */
function fromRule(nodes: number, joined: (a: number, b: number) => boolean): Graph {
  const edges: [number, number][] = []
  for (let a = 0; a < nodes; a++) for (let b = a + 1; b < nodes; b++) if (joined(a, b)) edges.push([a, b])
  return { nodes, edges }
}

export function complete(nodes: number): Graph {
  return fromRule(nodes, () => true)
}

/** Complete with `parts` classes of `size` nodes each: (2, 3) is K3,3 and (3, 2) the octahedron. */
export function completeMultipartite(parts: number, size: number): Graph {
  return fromRule(parts * size, (a, b) => a % parts !== b % parts)
}

/** The cube of a dimension: nodes are bit patterns, edges change one bit. */
export function hypercube(dimension: number): Graph {
  return fromRule(2 ** dimension, (a, b) => Number.isInteger(Math.log2(a ^ b)))
}

/** Two rings of five and two poles; each node of a ring meets two of the other ring. */
export const icosahedron: Graph = fromRule(12, (a, b) => {
  if (a === 0) return b <= 5
  if (b === 11) return a >= 6
  if (a <= 5 && b <= 5) return ringStep(a - 1, b - 1) === 1
  if (a >= 6) return ringStep(a - 6, b - 6) === 1
  const turn = (b - 6 - (a - 1) + 5) % 5
  return turn === 0 || turn === 4
})

/** Rings of 5, 10 and 5 nodes: the outer rings hang on every second node of the middle one. */
export const dodecahedron: Graph = {
  nodes: 20,
  edges: Array.from({ length: 5 }, (_, k): [number, number][] => [
    [k, (k + 1) % 5],
    [k, 5 + 2 * k],
    [5 + 2 * k, 6 + 2 * k],
    [6 + 2 * k, 5 + ((2 * k + 2) % 10)],
    [6 + 2 * k, 15 + k],
    [15 + k, 15 + ((k + 1) % 5)],
  ]).flat(),
}

/** A ring of five, a star of five and five spokes between them. */
export const petersen: Graph = fromRule(10, (a, b) => {
  if (b < 5) return ringStep(a, b) === 1
  return a < 5 ? b - a === 5 : ringStep(a - 5, b - 5) === 2
})

/** A square grid of `side` by `side` nodes, rows one after the other. */
export function grid(side: number): Graph {
  return fromRule(side * side, (a, b) => b - a === side || (b - a === 1 && b % side !== 0))
}

/** A ladder of `sections`, series and shunt alike; node 0 is the common wire, node 1 the near end. */
export function ladder(sections: number): Graph {
  const section = (k: number): [number, number][] => [
    [k + 1, k + 2],
    [k + 2, 0],
  ]
  return { nodes: sections + 2, edges: Array.from({ length: sections }, (_, k) => section(k)).flat() }
}

/** How many edges the shortest way from a node to every node has. */
export function distancesFrom(graph: Graph, start: number): number[] {
  const distances = Array.from({ length: graph.nodes }, (_, node) =>
    node === start ? 0 : Number.POSITIVE_INFINITY,
  )
  for (let round = 1; round < graph.nodes; round++) {
    for (const [a, b] of graph.edges) {
      distances[a] = Math.min(distances[a] ?? 0, (distances[b] ?? 0) + 1)
      distances[b] = Math.min(distances[b] ?? 0, (distances[a] ?? 0) + 1)
    }
  }
  return distances
}

function ringStep(a: number, b: number): number {
  const step = Math.abs(a - b) % 5
  return Math.min(step, 5 - step)
}
