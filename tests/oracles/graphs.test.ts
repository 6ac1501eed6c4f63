import * as fc from 'fast-check'
import { solveCircuit } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { complex } from '../support/complex.ts'
import {
  complete,
  completeMultipartite,
  distancesFrom,
  dodecahedron,
  grid,
  hypercube,
  icosahedron,
  ladder,
  petersen,
} from '../support/graphs.ts'
import { figureValue } from '../support/oracle-check.ts'
import { SEED } from '../support/seed.ts'
import {
  determinant,
  exactResistance,
  fractionValue,
  type Graph,
  sameFraction,
  spanningTrees,
} from '../support/spanning-trees.ts'

/** n·eps·cond: at most 20 nodes, and no Laplacian here has a condition above 200. */
const EXACT = { relative: 1e-12 }

/** The resistance between two nodes by the solver: every edge 1 Ω, 1 A in at one node, out at the other. */
function solvedResistance({ edges }: Graph, a: number, b: number): number {
  const node = (at: number) => (at === b ? 'earth' : `n${at}`)
  const resistors = edges.map(([from, to], at) => {
    return `  r${at}: {kind: resistor, from: ${node(from)}, to: ${node(to)}, resistance: 1 Ω}`
  })
  const drive = `  j: {kind: current-source, from: earth, to: ${node(a)}, direct: 1 A}`
  const head = ['ringproof: 1', 'sheet: circuit', 'name: graph', 'parts:']
  const answer = solveCircuit([...head, drive, ...resistors, ''].join('\n'))
  return complex(answer.voltages[`graph/${node(a)}`] ?? Number.NaN).re
}

/** Resistance by distance 1, 2, … from any node, and the number of spanning trees: derived exactly, grade DERIVED. */
const published: readonly [string, Graph, readonly string[], bigint | null][] = [
  ['tetrahedron', complete(4), ['1/2'], 16n],
  ['octahedron', completeMultipartite(3, 2), ['5/12', '1/2'], 384n],
  ['cube', hypercube(3), ['7/12', '3/4', '5/6'], 384n],
  ['icosahedron', icosahedron, ['11/30', '7/15', '1/2'], 5_184_000n],
  ['dodecahedron', dodecahedron, ['19/30', '9/10', '16/15', '17/15', '7/6'], 5_184_000n],
  ['Petersen graph', petersen, ['3/5', '4/5'], 2000n],
  ['complete graph on 5 nodes', complete(5), ['2/5'], 125n],
  ['complete graph on 9 nodes', complete(9), ['2/9'], null],
  ['complete bipartite graph K3,3', completeMultipartite(2, 3), ['5/9', '2/3'], 81n],
  ['cube of four dimensions', hypercube(4), ['15/32', '7/12', '61/96', '2/3'], 42_467_328n],
]

describe.each(published)('%s of unit resistors', (_name, graph, resistances, trees) => {
  const distances = distancesFrom(graph, 0)
  const others = distances.map((distance, node) => ({ distance, node })).slice(1)

  test('the resistance to every other node is the fraction that belongs to its distance', () => {
    expect(Math.max(...distances)).toBe(resistances.length)
    for (const { distance, node } of others) {
      const expected = figureValue(resistances[distance - 1] ?? '')
      assertClose(solvedResistance(graph, 0, node), expected, EXACT, `resistance from 0 to ${node}`)
    }
  })

  test('the same fraction follows from counting trees in whole numbers', () => {
    for (const { distance, node } of others) {
      const [top = '', bottom = ''] = resistances[distance - 1]?.split('/') ?? []
      const expected = { top: BigInt(top), bottom: BigInt(bottom) }
      expect(sameFraction(exactResistance(graph, 0, node), expected), `0 to ${node}`).toBe(true)
    }
  })

  test('the number of its spanning trees is as published', () => {
    // Cayley's formula for the complete graph that has no published count.
    expect(spanningTrees(graph)).toBe(trees ?? BigInt(graph.nodes) ** BigInt(graph.nodes - 2))
  })

  test('the share of trees that use an edge is the resistance along it', () => {
    const all = spanningTrees(graph)
    const [from, to] = graph.edges[0] ?? [0, 0]
    const using = all - spanningTrees({ ...graph, edges: graph.edges.slice(1) })
    assertClose(
      solvedResistance(graph, from, to),
      Number(using) / Number(all),
      EXACT,
      'resistance of the first edge',
    )
  })

  test('the resistances along all edges add up to one less than the number of nodes', () => {
    // R. M. Foster, The average impedance of an electrical network (1949); MEMORY.
    const sum = graph.edges.reduce((total, [a, b]) => total + solvedResistance(graph, a, b), 0)
    assertClose(sum, graph.nodes - 1, EXACT, 'sum over the edges')
  })
})

test('224 of the 384 trees of a cube use a given edge', () => {
  const cube = hypercube(3)
  expect(spanningTrees(cube) - spanningTrees({ ...cube, edges: cube.edges.slice(1) })).toBe(224n)
})

describe('square grids and ladders of unit resistors', () => {
  // Derived exactly from the Laplacian, grade DERIVED.
  test.each([
    [2, '1/1', 4n],
    [3, '3/2', 192n],
    [4, '13/7', 100_352n],
  ])(
    'a grid of %i nodes a side has the published resistance from corner to corner and number of trees',
    (side, resistance, trees) => {
      const graph = grid(side)
      assertClose(
        solvedResistance(graph, 0, side * side - 1),
        figureValue(resistance),
        EXACT,
        'corner to corner',
      )
      expect(spanningTrees(graph)).toBe(trees)
    },
  )

  test('a ladder of n sections measures the quotient of Fibonacci numbers F(2n+1)/F(2n)', () => {
    let [before, now] = [1, 1] // F(1), F(2)
    for (let sections = 1; sections <= 18; sections++) {
      const next = before + now // F(2n+1)
      assertClose(solvedResistance(ladder(sections), 1, 0), next / now, EXACT, `${sections} sections`)
      before = next
      now += next // F(2n+2)
    }
  })

  test('a long ladder measures the golden ratio', () => {
    assertClose(solvedResistance(ladder(40), 1, 0), (1 + Math.sqrt(5)) / 2, EXACT, '40 sections')
  })
})

describe('random graphs of unit resistors', () => {
  /** Connected: every node hangs on an earlier one, and further edges stand anywhere, even twice. */
  const graphs = fc
    .tuple(
      fc.array(fc.nat(99), { minLength: 2, maxLength: 13 }),
      fc.array(fc.tuple(fc.nat(99), fc.nat(99)), { maxLength: 16 }),
    )
    .map(([up, extra]): Graph => {
      const nodes = up.length + 1
      const tree = up.map((parent, at): [number, number] => [parent % (at + 1), at + 1])
      const more = extra.map(([a, step]): [number, number] => [
        a % nodes,
        (a + 1 + (step % (nodes - 1))) % nodes,
      ])
      return { nodes, edges: [...tree, ...more] }
    })

  test('the resistance between two nodes is the quotient of two determinants of whole numbers', () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        const last = graph.nodes - 1
        const expected = fractionValue(exactResistance(graph, 0, last))
        assertClose(solvedResistance(graph, 0, last), expected, EXACT, `0 to ${last}`)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('the resistances along all edges add up to one less than the number of nodes', () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        const sum = graph.edges.reduce((total, [a, b]) => total + solvedResistance(graph, a, b), 0)
        assertClose(sum, graph.nodes - 1, EXACT, 'sum over the edges')
      }),
      { seed: SEED + 1, numRuns: 15 },
    )
  })
})

describe('determinants of whole numbers', () => {
  test.each<[bigint, bigint[][]]>([
    [1n, []],
    [7n, [[7n]]],
    [
      -2n,
      [
        [1n, 2n],
        [3n, 4n],
      ],
    ],
    [
      -1n,
      [
        [0n, 1n],
        [1n, 0n],
      ],
    ],
    [
      0n,
      [
        [1n, 2n, 3n],
        [4n, 5n, 6n],
        [7n, 8n, 9n],
      ],
    ],
    [
      24n,
      [
        [0n, 2n, 0n],
        [0n, 0n, 3n],
        [4n, 0n, 0n],
      ],
    ],
    [
      10n ** 30n,
      [
        [10n ** 20n, 1n],
        [0n, 10n ** 10n],
      ],
    ],
  ])('%s comes out exactly', (expected, matrix) => {
    expect(determinant(matrix)).toBe(expected)
  })
})
