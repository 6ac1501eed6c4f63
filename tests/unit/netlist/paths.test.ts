import * as fc from 'fast-check'
import { NetlistBuilder } from 'ringproof/netlist/builder'
import type { Netlist } from 'ringproof/netlist/netlist'
import { bridgesOf, fullPathIds, islandsOf, joinedTo, pathBetween, pathIds } from 'ringproof/netlist/paths'
import { strap } from 'ringproof/parts/strap'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../support/seed.ts'

const all = (): boolean => true

/** Straps between nodes `n0`, `n1`, …; the branch k is called `net/sk`. */
function straps(size: number, edges: readonly (readonly [number, number])[]): Netlist {
  const builder = new NetlistBuilder()
  for (let k = 0; k < size; k += 1) builder.node(`n${k}`)
  edges.forEach(([p, q], k) => {
    const spec = { kind: 'strap' as const, from: `n${p}`, to: `n${q}` }
    builder.add(strap as never, spec, { place: 'net', name: `s${k}`, sort: 'strap', node: (end) => end })
  })
  return builder.close('net')
}
const at = (net: Netlist, id: string): number => net.nodeIndex.get(id) ?? -1
const named = (net: Netlist, nodes: Iterable<number>): readonly (string | undefined)[] =>
  [...nodes].map((node) => net.nodes[node])

// two triangles n0 n1 n2 and n3 n4 n5, joined by s6; n6 alone; n7 hangs on n5 by two straps
const TWO = straps(8, [
  [0, 1],
  [1, 2],
  [2, 0],
  [3, 4],
  [4, 5],
  [5, 3],
  [2, 3],
  [5, 7],
  [7, 5],
])

describe('islands', () => {
  test('are what the chosen branches join, in the order of their nodes', () => {
    expect(islandsOf(TWO, all).map((island) => named(TWO, island))).toEqual([
      ['earth'],
      ['n0', 'n1', 'n2', 'n3', 'n4', 'n5', 'n7'],
      ['n6'],
    ])
    const cut = islandsOf(TWO, ({ id }) => id !== 'net/s6')
    expect(cut.map((island) => named(TWO, island))).toEqual([
      ['earth'],
      ['n0', 'n1', 'n2'],
      ['n3', 'n4', 'n5', 'n7'],
      ['n6'],
    ])
  })

  test('hold what is joined to a node, itself included', () => {
    expect(named(TWO, joinedTo(TWO, all, at(TWO, 'n6')))).toEqual(['n6'])
    expect(
      named(
        TWO,
        joinedTo(TWO, ({ id }) => id !== 'net/s6', at(TWO, 'n4')),
      ),
    ).toEqual(['n3', 'n4', 'n5', 'n7'])
  })
})

describe('a path', () => {
  test('is a shortest one, with its nodes and branches in order', () => {
    const path = pathBetween(TWO, all, at(TWO, 'n0'), at(TWO, 'n4'))
    if (path === undefined) throw new Error('no path')
    expect(pathIds(TWO, path)).toEqual(['n0', 'n2', 'n3', 'n4'])
    expect(fullPathIds(TWO, path)).toEqual(['n0', 'net/s2', 'n2', 'net/s6', 'n3', 'net/s3', 'n4'])
  })

  test('takes the first of several branches side by side', () => {
    expect(pathBetween(TWO, all, at(TWO, 'n7'), at(TWO, 'n5'))?.branches).toEqual([7])
    expect(pathBetween(TWO, ({ index }) => index !== 7, at(TWO, 'n7'), at(TWO, 'n5'))?.branches).toEqual([8])
  })

  test('does not exist between islands, and is one node long at home', () => {
    expect(pathBetween(TWO, all, at(TWO, 'n0'), at(TWO, 'n6'))).toBeUndefined()
    expect(pathBetween(TWO, all, 0, at(TWO, 'n0'))).toBeUndefined()
    expect(pathBetween(TWO, all, at(TWO, 'n6'), at(TWO, 'n6'))).toEqual({
      nodes: [at(TWO, 'n6')],
      branches: [],
    })
  })
})

describe('bridges', () => {
  test('are the branches on no closed path: not a triangle, not two straps side by side', () => {
    expect([...bridgesOf(TWO, all)]).toEqual([6])
    expect([...bridgesOf(TWO, ({ index }) => index !== 8)].sort()).toEqual([6, 7])
    expect([...bridgesOf(TWO, ({ index }) => index !== 0)].sort()).toEqual([1, 2, 6])
  })

  test('are never a strap from a node to itself', () => {
    expect([
      ...bridgesOf(
        straps(2, [
          [0, 0],
          [0, 1],
        ]),
        all,
      ),
    ]).toEqual([1])
  })

  test('are what leaves its two ends apart when it is taken away, on any graph', () => {
    const graphs = fc
      .integer({ min: 1, max: 9 })
      .chain((size) =>
        fc.tuple(
          fc.constant(size),
          fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 16 }),
        ),
      )
    fc.assert(
      fc.property(graphs, ([size, edges]) => {
        const naive = edges.flatMap(([p, q], k) =>
          reaches(
            edges.filter((_, l) => l !== k),
            p,
            q,
          )
            ? []
            : [k],
        )
        expect([...bridgesOf(straps(size, edges), all)].sort((p, q) => p - q)).toEqual(naive)
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  test('of a long chain are all its links, without a deep stack', () => {
    const chain = straps(
      20_000,
      Array.from({ length: 19_999 }, (_, k) => [k, k + 1] as const),
    )
    expect(bridgesOf(chain, all).size).toBe(19_999)
  })
})

/** Whether edges lead from p to q: grows the set of reached nodes until it grows no more. */
function reaches(edges: readonly (readonly [number, number])[], p: number, q: number): boolean {
  const reached = new Set([p])
  for (let size = 0; size !== reached.size; ) {
    size = reached.size
    for (const [a, b] of edges) {
      if (reached.has(a)) reached.add(b)
      if (reached.has(b)) reached.add(a)
    }
  }
  return reached.has(q)
}
