import fc from 'fast-check'
import { countGroups, createUnionFind, findRoot, resetUnionFind, union } from 'ringproof/algebra/union-find'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

const graphs = fc.integer({ min: 1, max: 30 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    edges: fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 40 }),
  }),
)

/** Smallest node reachable from each, by spreading labels until nothing changes: slow and plain. */
function smallestReachable(n: number, edges: readonly (readonly [number, number])[]): number[] {
  const labels = [...Array(n).keys()]
  for (let round = 0; round < n; round++) {
    for (const [a, b] of edges) {
      const least = Math.min(labels[a] ?? 0, labels[b] ?? 0)
      labels[a] = least
      labels[b] = least
    }
  }
  return labels
}

describe('groups', () => {
  it('are named by their smallest member, whatever the order of joining', () => {
    fc.assert(
      fc.property(graphs, ({ n, edges }) => {
        for (const order of [edges, [...edges].reverse(), edges.map(([a, b]) => [b, a] as const)]) {
          const groups = createUnionFind(n)
          for (const [a, b] of order) union(groups, a, b)
          const roots = Array.from({ length: n }, (_, k) => findRoot(groups, k))
          expect(roots).toEqual(smallestReachable(n, edges))
          expect(countGroups(groups)).toBe(new Set(roots).size)
        }
      }),
      { seed: SEED },
    )
  })

  it('lose one of their number with every joining that closes no loop', () => {
    fc.assert(
      fc.property(graphs, ({ n, edges }) => {
        const groups = createUnionFind(n)
        let count = n
        for (const [a, b] of edges) {
          const apart = findRoot(groups, a) !== findRoot(groups, b)
          expect(union(groups, a, b)).toBe(apart)
          if (apart) count--
        }
        expect(countGroups(groups)).toBe(count)
      }),
      { seed: SEED },
    )
  })

  it('are single again after a reset', () => {
    const groups = createUnionFind(4)
    union(groups, 3, 1)
    union(groups, 1, 2)
    expect(findRoot(groups, 3)).toBe(1)
    resetUnionFind(groups)
    expect([0, 1, 2, 3].map((k) => findRoot(groups, k))).toEqual([0, 1, 2, 3])
  })

  it('have short paths after they were asked for', () => {
    const n = 1000
    const groups = createUnionFind(n)
    for (let k = n - 1; k > 0; k--) groups.parent[k] = k - 1
    for (let round = 0; round < 12; round++) expect(findRoot(groups, n - 1)).toBe(0)
    // halved twelve times
    expect(groups.parent[n - 1]).toBe(0)
  })
})
