import fc from 'fast-check'
import { createDense } from 'ringproof/algebra/dense'
import { createSparse } from 'ringproof/algebra/sparse'
import { chooseAndFactor } from 'ringproof/algebra/sparse-choice'
import { columnsOf } from 'ringproof/algebra/sparse-columns'
import type { LinearSystem } from 'ringproof/algebra/system'
import { describe, expect, it } from 'vitest'
import { norm } from '../../contracts/_residual.ts'
import { entriesOf, fill, largestApart, made, type System, sizeOf } from '../../contracts/_systems.ts'
import { SEED } from '../../support/seed.ts'

type Entry = [row: number, column: number, re: number, im: number]

const kinds = [false, true] as const
/** Rounding allowed in a residual, in units of n ε ‖A‖ ‖x‖. */
const healthy = 10

/** A branch between two nodes, -1 being earth; its admittance is 10^decade, turned. */
interface Branch {
  readonly from: number
  readonly to: number
  readonly decade: number
  readonly turn: number
}

/** Node equations: a spanning tree to earth, more branches, controlled currents, and sources without a diagonal. */
interface Circuit {
  readonly nodes: number
  readonly branches: readonly Branch[]
  readonly sources: readonly number[]
  readonly controlled: readonly (readonly [number, number, number])[]
}

/** Circuits whose admittances span decades from -reach to +reach. */
function circuits(most: number, reach: number): fc.Arbitrary<Circuit> {
  const decade = fc.double({ min: -reach, max: reach, noNaN: true })
  // from capacitive to inductive, with some loss
  const turn = fc.double({ min: -1.5, max: 1.5, noNaN: true })
  return fc.integer({ min: 1, max: most }).chain((nodes) => {
    const node = fc.nat(nodes - 1)
    return fc
      .record({
        tree: fc.array(fc.tuple(fc.nat(), decade, turn), { minLength: nodes, maxLength: nodes }),
        more: fc.array(fc.tuple(node, node, decade, turn), { maxLength: nodes }),
        sources: fc.uniqueArray(node, { maxLength: Math.floor(nodes / 3) }),
        controlled: fc.array(fc.tuple(node, node, decade), { maxLength: 1 + Math.floor(nodes / 10) }),
      })
      .map(({ tree, more, sources, controlled }) => ({
        nodes,
        branches: [
          ...tree.map(([parent, size, turned], k) => ({
            from: k,
            to: (parent % (k + 1)) - 1,
            decade: size,
            turn: turned,
          })),
          ...more.map(([from, to, size, turned]) => ({ from, to, decade: size, turn: turned })),
        ],
        sources,
        controlled,
      }))
  })
}

function systemOf({ nodes, branches, sources, controlled }: Circuit): System {
  const entries: Entry[] = []
  for (const { from, to, decade, turn } of branches) {
    if (from === to) continue
    const re = 10 ** decade * Math.cos(turn)
    const im = 10 ** decade * Math.sin(turn)
    entries.push([from, from, re, im])
    if (to >= 0) entries.push([to, to, re, im], [from, to, -re, -im], [to, from, -re, -im])
  }
  for (const [from, by, decade] of controlled) if (from !== by) entries.push([from, by, 10 ** decade, 0])
  sources.forEach((node, k) => {
    const c = nodes + k
    entries.push([node, c, 1, 0], [c, node, 1, 0])
  })
  return entriesOf(nodes + sources.length, entries)
}

function ready(
  create: typeof createSparse,
  system: System,
  complex: boolean,
): { engine: LinearSystem; ok: boolean } {
  const engine = create(system, complex)
  fill(engine, system)
  return { engine, ok: engine.factor().ok }
}

function solution(
  engine: LinearSystem,
  b: Float64Array,
  way: 'solve' | 'solveTransposed' = 'solve',
): Float64Array {
  const x = b.slice()
  engine[way](x, 1)
  return x
}

/** ‖A‖∞ ‖A⁻¹‖∞ by solving for every unit vector: both norms of interleaved vectors, hence up to 2 too small. */
function conditionOf(engine: LinearSystem, system: System, complex: boolean): number {
  const n = system.order
  const rows = new Float64Array(n)
  const inverse = new Float64Array(n)
  for (let k = 0; k < system.rows.length; k++)
    rows[system.rows[k]!]! += Math.hypot(system.re[k]!, complex ? system.im[k]! : 0)
  for (let k = 0; k < n; k++) {
    const e = made(
      complex,
      [...Array(n).keys()].map((j) => (j === k ? 1 : 0)),
    )
    engine.solve(e, 1)
    for (let i = 0; i < n; i++)
      inverse[i]! += complex ? Math.hypot(e[2 * i]!, e[2 * i + 1]!) : Math.abs(e[i]!)
  }
  return norm(rows) * norm(inverse)
}

const rightSide = (system: System, complex: boolean): Float64Array =>
  Float64Array.from({ length: sizeOf(system, complex) }, (_, k) => Math.cos(1 + 3 * k))

/** Both engines at one system: small residuals, and solutions as near as its condition lets them be. */
function expectAgreement(sparse: LinearSystem, dense: LinearSystem, system: System): void {
  const { complex } = sparse
  const b = rightSide(system, complex)
  const x = solution(sparse, b)
  expect(sparse.residual(x, b)).toBeLessThan(healthy)
  const condition = conditionOf(dense, system, complex)
  const y = solution(dense, b)
  const bound = 4 * healthy * system.order * Number.EPSILON * condition
  expect(largestApart(x, y)).toBeLessThanOrEqual(bound * norm(y))
}

describe.each(kinds)('the sparse engine at circuits (complex: %s)', (complex) => {
  it.each([
    ['of one scale', 1],
    ['from 1 µS to 1 MS', 6],
    ['from 1 pS to 1 TS', 12],
  ])('%s agrees with the dense one', (_what, reach) => {
    let compared = 0
    fc.assert(
      fc.property(circuits(24, reach), (circuit) => {
        const system = systemOf(circuit)
        const dense = ready(createDense, system, complex)
        if (!dense.ok) return
        if (!(conditionOf(dense.engine, system, complex) < 1e13)) return
        compared++
        const sparse = ready(createSparse, system, complex)
        expect(sparse.ok).toBe(true)
        expectAgreement(sparse.engine, dense.engine, system)
        const b = rightSide(system, complex)
        const turned = ready(
          createDense,
          { ...system, rows: system.columns, columns: system.rows },
          complex,
        ).engine
        expect(turned.residual(solution(sparse.engine, b, 'solveTransposed'), b)).toBeLessThan(healthy)
      }),
      { seed: SEED, numRuns: 200 },
    )
    expect(compared).toBeGreaterThan(20)
  })

  it('refactors other values of any size as it factors them', () => {
    const pair = circuits(24, 2).chain((circuit) =>
      fc.tuple(
        fc.constant(circuit),
        fc.array(fc.double({ min: -8, max: 8, noNaN: true }), {
          minLength: circuit.branches.length,
          maxLength: circuit.branches.length,
        }),
      ),
    )
    let compared = 0
    fc.assert(
      fc.property(pair, ([circuit, decades]) => {
        const { engine, ok } = ready(createSparse, systemOf(circuit), complex)
        if (!ok) return
        const changed = systemOf({
          ...circuit,
          branches: circuit.branches.map((branch, k) => ({ ...branch, decade: decades[k] ?? 0 })),
        })
        const dense = ready(createDense, changed, complex)
        if (!dense.ok || !(conditionOf(dense.engine, changed, complex) < 1e13)) return
        compared++
        fill(engine, changed)
        expect(engine.refactor().ok).toBe(true)
        expectAgreement(engine, dense.engine, changed)
      }),
      { seed: SEED, numRuns: 200 },
    )
    expect(compared).toBeGreaterThan(50)
  })

  it('refactors to the same bits as a fresh engine factors, where the pivots are the same', () => {
    fc.assert(
      fc.property(circuits(24, 1), (circuit) => {
        const system = systemOf(circuit)
        const one = ready(createSparse, system, complex)
        if (!one.ok) return
        fill(one.engine, system)
        expect(one.engine.refactor().ok).toBe(true)
        const b = rightSide(system, complex)
        expect(solution(one.engine, b)).toEqual(solution(ready(createSparse, system, complex).engine, b))
      }),
      { seed: SEED },
    )
  })

  it('factors alike whatever was factored before', () => {
    fc.assert(
      fc.property(circuits(20, 1), fc.integer({ min: 0, max: 100 }), (circuit, by) => {
        const system = systemOf(circuit)
        const before = { ...system, re: system.re.map((value, k) => value * 10 ** (((k * by) % 7) - 3)) }
        const { engine } = ready(createSparse, before, complex)
        fill(engine, system)
        const fresh = ready(createSparse, system, complex)
        expect(engine.factor().ok).toBe(fresh.ok)
        if (!fresh.ok) return
        const b = rightSide(system, complex)
        expect(solution(engine, b)).toEqual(solution(fresh.engine, b))
      }),
      { seed: SEED },
    )
  })

  it('needs no diagonal at all', () => {
    // sources at every node, each beside its neighbours: 0 B; Bᵀ 0
    const n = 12
    const entries: Entry[] = []
    for (let k = 0; k < n; k++) {
      for (let j = Math.max(0, k - 2); j <= k; j++) {
        const value = j === k ? 1 : 0.25 * (1 + ((k + j) % 3))
        entries.push([k, n + j, value, 0.5], [n + j, k, value, -0.5])
      }
    }
    const system = entriesOf(2 * n, entries)
    const sparse = ready(createSparse, system, complex)
    expect(sparse.ok).toBe(true)
    expectAgreement(sparse.engine, ready(createDense, system, complex).engine, system)
  })
})

describe('a building of 2,000 unknowns', () => {
  /** Cables of 40 nodes each, side by side, with a source at their far ends; all meet in a backbone. */
  function cables(): System {
    const entries: Entry[] = []
    const join = (a: number, b: number, g: number, s: number): void => {
      entries.push([a, a, g, s], [b, b, g, s], [a, b, -g, -s], [b, a, -g, -s])
    }
    const count = 48
    const backbone = 41 * count
    for (let k = 0; k < count; k++) {
      const start = 41 * k
      for (let i = 1; i < 40; i++) {
        join(start + i, start + i - 1, 10 ** (-3 + ((i * 7) % 5) / 2), ((i % 3) - 1) * 1e-3)
        if (i > 5) join(start + i, start + i - 5, 1e-4, 1e-5 * i)
      }
      entries.push([start + 39, start + 40, 1, 0], [start + 40, start + 39, 1, 0])
      join(start, backbone + (k % 32), 0.1, 0)
    }
    for (let h = 1; h < 32; h++) join(backbone + h, backbone + Math.floor((h - 1) / 2), 1, 0.1)
    entries.push([backbone, backbone, 1, 0])
    return entriesOf(backbone + 32, entries)
  }

  it.each(kinds)('is solved with little fill-in (complex: %s)', (complex) => {
    const system = cables()
    expect(system.order).toBe(2000)
    const { engine, ok } = ready(createSparse, system, complex)
    expect(ok).toBe(true)
    const b = rightSide(system, complex)
    expect(engine.residual(solution(engine, b), b)).toBeLessThan(healthy)
    fill(engine, { ...system, im: system.im.map((value) => 1.5 * value) })
    expect(engine.refactor().ok).toBe(true)
    expect(engine.residual(solution(engine, b), b)).toBeLessThan(healthy)

    const columns = columnsOf(system)
    const values = new Float64Array(columns.rows.length)
    columns.slots.forEach((slot, k) => {
      values[slot]! += system.re[k]!
    })
    const chosen = chooseAndFactor(columns, values, false, undefined)
    expect(chosen.ok).toBe(true)
    if (!chosen.ok) return
    // 20 entries a column, a hundredth of n; a full matrix would have n
    expect(chosen.factors.values.length).toBeLessThan(20 * system.order)
    expect(chosen.factors.operations).toBeLessThan(60 * system.order)
  })
})
