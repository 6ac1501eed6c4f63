import {
  complexDependencies,
  create,
  type LUDecomposition,
  lusolveDependencies,
  type Complex as MathComplex,
  sluDependencies,
  sparseDependencies,
} from 'mathjs'
import type { Branch } from '../support/branches.ts'
import { type Complex, modulus } from '../support/complex.ts'
import { type Entry, improved, remainder } from './remainder.ts'

/** As mathjs comes it takes anything below 1e-15 for nil and drops it from sparse solutions; here nil is nil. */
const {
  complex: mathComplex,
  lusolve,
  slu,
  sparse,
} = create(
  { ...complexDependencies, ...lusolveDependencies, ...sluDependencies, ...sparseDependencies },
  { absTol: 0, relTol: Number.MIN_VALUE },
)

/** All node voltages and branch currents of a circuit, the voltages against `earth`. */
export interface TableauAnswer {
  readonly voltages: ReadonlyMap<string, Complex>
  readonly currents: ReadonlyMap<string, Complex>
}

/**
 * Solves a circuit by the sparse tableau: unknowns are all node voltages e, all branch voltages v and all
 * branch currents i; equations are KCL (A i = 0), KVL (v - Aᵀ e = 0) and each branch law as it stands. Nothing
 * is eliminated or stamped by hand. mathjs factors it; the solution is refined with remainders taken in twice
 * the working precision, so that it may serve as the reference for nine digits.
 *
 * @source Hachtel, Brayton and Gustavson, The sparse tableau approach to network analysis and design (1971); MEMORY
 */
export function solveTableau(branches: readonly Branch[]): TableauAnswer {
  const nodes = [...new Set(branches.flatMap(({ from, to }) => [from, to]))].filter(
    (node) => node !== 'earth',
  )
  const { entries, right, order } = tableau(branches, nodes)
  const alternating = [...entries.map(({ value }) => value), ...right].some(({ im }) => im !== 0)
  const solution = refined(entries, right, order, alternating)
  const at = (index: number): Complex => solution[index] ?? { re: Number.NaN, im: Number.NaN }
  const first = nodes.length + branches.length
  return {
    voltages: new Map(nodes.map((node, index) => [node, at(index)])),
    currents: new Map(branches.map(({ id }, index) => [id, at(first + index)])),
  }
}

function tableau(branches: readonly Branch[], nodes: readonly string[]) {
  const entries: Entry[] = []
  const nodeAt = new Map(nodes.map((node, index) => [node, index]))
  const [n, b] = [nodes.length, branches.length]
  const order = n + 2 * b
  const right = Array.from({ length: order }, (): Complex => ({ re: 0, im: 0 }))
  const put = (row: number, column: number, value: Complex) => {
    if (value.re !== 0 || value.im !== 0) entries.push({ row, column, value })
  }
  branches.forEach((branch, k) => {
    for (const [node, sign] of [
      [branch.from, 1],
      [branch.to, -1],
    ] as const) {
      const e = nodeAt.get(node)
      if (e === undefined) continue // earth, the reference
      put(e, n + b + k, { re: sign, im: 0 }) // KCL: what leaves by `from` comes back by `to`
      put(n + k, e, { re: -sign, im: 0 }) // KVL
    }
    put(n + k, n + k, { re: 1, im: 0 })
    // The law is scaled by its largest coefficient: an equation may be multiplied by anything but nil.
    const size = Math.max(modulus(branch.volts), ...branch.amps.map(([, value]) => modulus(value)))
    const scaled = ({ re, im }: Complex): Complex => ({ re: re / size, im: im / size })
    put(n + b + k, n + k, scaled(branch.volts))
    for (const [other, value] of branch.amps) put(n + b + k, n + b + other, scaled(value))
    right[n + b + k] = scaled(branch.source)
  })
  return { entries, right, order }
}

/**
 * Solves by mathjs and improves the solution until the remainder is at the rounding of the solution itself. The
 * unknowns are kept as a value and a tail: a current of nanoamperes between nodes at kilovolts is in the tail.
 */
function refined(entries: readonly Entry[], right: readonly Complex[], order: number, alternating: boolean) {
  const matrix = sparse()
  matrix.resize([order, order])
  for (const { row, column, value } of entries) matrix.set([row, column], number(value, alternating))
  const factors = slu(matrix, 1, 1)
  let solution = solved(factors, right, alternating).map((value) => ({ value, tail: { re: 0, im: 0 } }))
  for (let round = 0; round < 5; round++) {
    const correction = solved(factors, remainder(entries, solution, right), alternating)
    solution = solution.map((unknown, at) => improved(unknown, correction[at] ?? { re: 0, im: 0 }))
  }
  return solution.map(({ value, tail }) => ({ re: value.re + tail.re, im: value.im + tail.im }))
}

function solved(factors: LUDecomposition, right: readonly Complex[], alternating: boolean): Complex[] {
  const column = right.map((value) => [number(value, alternating)])
  const rows = lusolve(factors, column as number[][]).valueOf() as unknown as (number | MathComplex)[][]
  return rows.map(([value = Number.NaN]) => {
    return typeof value === 'number' ? { re: value, im: 0 } : { re: value.re, im: value.im }
  })
}

function number(value: Complex, alternating: boolean): number | MathComplex {
  return alternating ? mathComplex(value.re, value.im) : value.re
}
