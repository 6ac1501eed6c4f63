/**
 * Gauss's elimination of sparse rows in many digits. Pivots are those that fill least, among coefficients that are
 * not too small in their row.
 *
 * @source H. Markowitz, The elimination form of the inverse (1957): the product of the other entries of row and column; MEMORY
 */
import type { Big } from './big.ts'
import type { Digits } from './digits.ts'
import { roundingOf } from './rounding.ts'

/** One real equation: the sum of its terms, by unknown, is `right`. */
export interface RealRow {
  readonly terms: ReadonlyMap<number, Big>
  readonly right: Big
}

/** A pivot may be this many powers of ten smaller than the largest coefficient of its row. */
const SMALLER = 3

/** One step: the pivot's row as it stood, and what was taken of it from other rows. */
interface Step {
  readonly row: number
  readonly column: number
  readonly pivot: Big
  readonly terms: ReadonlyMap<number, Big>
  readonly taken: readonly (readonly [row: number, factor: Big])[]
}

/** The solution, and the largest correction that a second pass asks for, as a share of what it corrects. */
export interface Eliminated {
  readonly x: readonly Big[]
  readonly doubt: number
  /** What rounding every coefficient to a double could make of each unknown. */
  readonly rounding: readonly number[]
}

/** Solves the rows, then once more for what the solution leaves of the right sides; undefined where they are singular. */
export function eliminate(rows: readonly RealRow[], digits: Digits): Eliminated | undefined {
  const steps = stepsOf(rows)
  if (steps === undefined) return undefined
  const right = rows.map((row) => row.right)
  const x = substituted(steps, right)
  const rest = rows.map(({ terms }, k) => {
    let sum = right[k] ?? digits.of(0)
    for (const [column, value] of terms) {
      const unknown = x[column]
      if (unknown !== undefined) sum = sum.minus(value.times(unknown))
    }
    return sum
  })
  const step = substituted(steps, rest)
  return {
    x: x.map((value, k) => plusOf(value, step[k])),
    doubt: doubtOf(x, step, digits),
    rounding: substituted(steps, noiseOf(rows, x, digits)).map((value) => Math.abs(value.toNumber())),
  }
}

function noiseOf(rows: readonly RealRow[], x: readonly Big[], digits: Digits): Big[] {
  return rows.map(({ terms, right }, row) => {
    let sizes = Math.abs(right.toNumber())
    for (const [column, value] of terms) sizes += Math.abs(value.toNumber() * (x[column]?.toNumber() ?? 0))
    return digits.of(roundingOf(row, sizes))
  })
}

function plusOf(p: Big, q: Big | undefined): Big {
  return q === undefined ? p : p.plus(q)
}

/** What is this small beside the largest unknown, in digits of the arithmetic, is nil and cannot be doubted. */
const NIL = 12

function doubtOf(x: readonly Big[], step: readonly Big[], { kept }: Digits): number {
  const largest = x.reduce((most, value) => (value.isZero() ? most : Math.max(most, value.e)), -Infinity)
  return x.reduce((worst, value, k) => {
    const change = step[k]
    if (change === undefined || change.isZero()) return worst
    const size = value.isZero() ? change.e : value.e
    if (size < largest - kept + NIL) return worst
    return Math.max(worst, 10 ** (change.e + 1 - size))
  }, 0)
}

function stepsOf(rows: readonly RealRow[]): Step[] | undefined {
  const active = new Map(rows.map(({ terms }, k) => [k, new Map(terms)]))
  const columns = new Map<number, Set<number>>()
  for (const [row, terms] of active) {
    for (const [column, value] of terms) {
      if (value.isZero()) terms.delete(column)
      else columns.set(column, (columns.get(column) ?? new Set()).add(row))
    }
  }
  const steps: Step[] = []
  while (active.size > 0) {
    const step = nextStep(active, columns)
    if (step === undefined) return undefined
    steps.push(step)
  }
  return steps
}

/** Takes the best pivot's row out of play and its column out of all others. */
function nextStep(
  active: Map<number, Map<number, Big>>,
  columns: Map<number, Set<number>>,
): Step | undefined {
  const { row, column } = bestPivot(active, columns)
  const terms = active.get(row)
  const pivot = terms?.get(column)
  if (terms === undefined || pivot === undefined) return undefined
  active.delete(row)
  for (const other of terms.keys()) columns.get(other)?.delete(row)
  terms.delete(column)
  const taken: [number, Big][] = []
  for (const target of columns.get(column) ?? []) {
    const own = active.get(target)
    const head = own?.get(column)
    if (own === undefined || head === undefined) continue
    const factor = head.div(pivot)
    own.delete(column)
    for (const [at, value] of terms) {
      const before = own.get(at)
      const now = before === undefined ? value.times(factor).neg() : before.minus(value.times(factor))
      if (now.isZero()) {
        own.delete(at)
        columns.get(at)?.delete(target)
      } else {
        own.set(at, now)
        columns.get(at)?.add(target)
      }
    }
    taken.push([target, factor])
  }
  columns.delete(column)
  return { row, column, pivot, terms, taken }
}

function bestPivot(
  active: ReadonlyMap<number, ReadonlyMap<number, Big>>,
  columns: ReadonlyMap<number, ReadonlySet<number>>,
): { row: number; column: number } {
  let best = { row: -1, column: -1, cost: Number.POSITIVE_INFINITY, size: 0 }
  for (const [row, terms] of active) {
    let largest = -Infinity
    for (const value of terms.values()) largest = Math.max(largest, value.e)
    for (const [column, value] of terms) {
      if (value.e < largest - SMALLER) continue
      const cost = (terms.size - 1) * ((columns.get(column)?.size ?? 1) - 1)
      const nearer = value.e - largest
      if (cost < best.cost || (cost === best.cost && nearer > best.size))
        best = { row, column, cost, size: nearer }
    }
  }
  return best
}

/** Applies the steps to a right side, then reads the unknowns off them from last to first. */
function substituted(steps: readonly Step[], right: readonly Big[]): Big[] {
  const b = [...right]
  for (const { row, taken } of steps) {
    const own = b[row]
    if (own === undefined || own.isZero()) continue
    for (const [target, factor] of taken) {
      const before = b[target]
      if (before !== undefined) b[target] = before.minus(own.times(factor))
    }
  }
  const x: Big[] = []
  for (const { row, column, pivot, terms } of steps.toReversed()) {
    let sum = b[row]
    if (sum === undefined) throw new RangeError('a right side is missing')
    for (const [at, value] of terms) {
      const unknown = x[at]
      if (unknown !== undefined) sum = sum.minus(value.times(unknown))
    }
    x[column] = sum.div(pivot)
  }
  return x
}
