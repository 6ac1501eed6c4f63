import fc from 'fast-check'
import { minimumDegree } from 'ringproof/algebra/sparse-degree'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

type Edges = readonly (readonly [number, number])[]

/** Neighbours of every node, in both directions, each once. */
function neighboursOf(n: number, edges: Edges): Set<number>[] {
  const lists = Array.from({ length: n }, () => new Set<number>())
  for (const [a, b] of edges) {
    if (a === b) continue
    lists[a]?.add(b)
    lists[b]?.add(a)
  }
  return lists
}

function orderOf(n: number, edges: Edges): number[] {
  const lists = neighboursOf(n, edges)
  const starts = new Int32Array(n + 1)
  lists.forEach((list, i) => {
    starts[i + 1] = (starts[i] ?? 0) + list.size
  })
  return [...minimumDegree(n, starts, Int32Array.from(lists.flatMap((list) => [...list])))]
}

/** Entries below the diagonal of the factor, by eliminating node after node: cliques of what is left. */
function entriesOfFactor(n: number, edges: Edges, order: readonly number[]): number {
  const lists = neighboursOf(n, edges)
  let count = 0
  for (const node of order) {
    const left = [...(lists[node] ?? [])]
    count += left.length
    for (const a of left) {
      lists[a]?.delete(node)
      for (const b of left) if (a !== b) lists[a]?.add(b)
    }
  }
  return count
}

/** The same by taking a node of exactly least degree each time, the first of several. */
function entriesByExactDegree(n: number, edges: Edges): number {
  const lists = neighboursOf(n, edges)
  const left = new Set(lists.keys())
  const order: number[] = []
  while (left.size > 0) {
    const size = (node: number): number => lists[node]?.size ?? 0
    const node = [...left].reduce((best, one) => (size(one) < size(best) ? one : best))
    order.push(node)
    left.delete(node)
    const around = [...(lists[node] ?? [])]
    for (const a of around) {
      lists[a]?.delete(node)
      for (const b of around) if (a !== b) lists[a]?.add(b)
    }
  }
  return entriesOfFactor(n, edges, order)
}

const graphs = fc
  .integer({ min: 1, max: 40 })
  .chain((n) =>
    fc.tuple(fc.constant(n), fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 3 * n })),
  )

/** A grid of side · side nodes. */
function grid(side: number): Edges {
  const edges: [number, number][] = []
  for (let i = 0; i < side * side; i++) {
    if (i % side > 0) edges.push([i, i - 1])
    if (i >= side) edges.push([i, i - side])
  }
  return edges
}

describe('the order of least degree', () => {
  it('names every node once', () => {
    fc.assert(
      fc.property(graphs, ([n, edges]) => {
        expect(orderOf(n, edges).toSorted((a, b) => a - b)).toEqual([...Array(n).keys()])
      }),
      { seed: SEED },
    )
    expect(orderOf(0, [])).toEqual([])
    expect(orderOf(3, [])).toHaveLength(3)
  })

  it('fills in about as little as exact least degrees do', () => {
    let ours = 0
    let exact = 0
    fc.assert(
      fc.property(graphs, ([n, edges]) => {
        const entries = entriesOfFactor(n, edges, orderOf(n, edges))
        const best = entriesByExactDegree(n, edges)
        ours += entries
        exact += best
        expect(entries).toBeLessThanOrEqual(1.25 * best + 4)
      }),
      { seed: SEED, numRuns: 300 },
    )
    expect(ours).toBeLessThanOrEqual(1.02 * exact)
  })

  it('leaves a tree without fill-in', () => {
    const tree = fc
      .array(fc.nat(), { minLength: 1, maxLength: 60 })
      .map((parents) => parents.map((parent, k) => [k + 1, parent % (k + 1)] as const))
    fc.assert(
      fc.property(tree, (edges) => {
        expect(entriesOfFactor(edges.length + 1, edges, orderOf(edges.length + 1, edges))).toBe(edges.length)
      }),
      { seed: SEED },
    )
  })

  it('leaves the hub of a star among the last two', () => {
    const edges = [...Array(50).keys()].filter((k) => k !== 7).map((k) => [7, k] as const)
    expect(orderOf(50, edges).indexOf(7)).toBeGreaterThanOrEqual(48)
  })

  it('treats a clique as one', () => {
    const edges = [...Array(144).keys()].map((k) => [k % 12, Math.floor(k / 12)] as const)
    expect(entriesOfFactor(12, edges, orderOf(12, edges))).toBe(66)
  })

  it('keeps the fill-in of a square grid near the least order of growth', () => {
    // n log n entries at best: A. George, SIAM J. Numer. Anal. 10 (1973), from memory; elimination row by row has n^1.5
    const entries = [16, 32].map((side) => {
      const edges = grid(side)
      return entriesOfFactor(side * side, edges, orderOf(side * side, edges)) / side ** 2
    })
    expect(entries[1]).toBeLessThan(12)
    expect((entries[1] ?? 0) / (entries[0] ?? 1)).toBeLessThan(1.6)
  })

  it('counts on where its marks begin anew', () => {
    const n = 50_000
    const edges = [...Array(n - 1).keys()].map((k) => [k, k + 1] as const)
    const order = orderOf(n, edges)
    expect(new Set(order).size).toBe(n)
    expect(entriesOfFactor(n, edges, order)).toBe(n - 1)
  })
})
