import {
  eliminateComplex,
  keepLowerComplex,
  meetComplex,
  scatterComplex,
  sizeComplex,
} from './sparse-column-complex.ts'
import { eliminateReal, keepLowerReal, meetReal, scatterReal, sizeReal } from './sparse-column-real.ts'
import type { Columns } from './sparse-columns.ts'
import { emptyFactors, type Factors, reserve, trim } from './sparse-factors.ts'
import { prune } from './sparse-prune.ts'
import { createReach, type Reach, searchReach } from './sparse-reach.ts'

/** The pivot that was wished for is taken where it has this share of the largest there is. */
const threshold = 0.1
/** A pivot below this share of the largest entry of its column in A is looked at twice: rounding grows with 1 / threshold. */
const doubtful = 1e-11
/** Below this share it is next to nothing, and must stand out more. */
const weak = 1e-14
/** Rounding allowed in one entry for each of its additions, as a share of the magnitudes that met in it. */
const rounding = 8 * Number.EPSILON
/** The same where it is next to nothing. */
const roundingOfWeak = 64 * Number.EPSILON

/** What is factored: A by columns, in which order, and with which rows as pivots by preference. */
export interface Task {
  readonly columns: Columns
  /** Values of A at the places of `columns`, interleaved where complex. */
  readonly a: Float64Array
  readonly complex: boolean
  /** `order[k]` is the column of step k. */
  readonly order: Int32Array
  /** By column: the row wished for, -1 for the largest. */
  readonly preferred: Int32Array
  /** By column: size of the largest entry. */
  readonly maxima: Float64Array
  /** Refuses to go on beyond so many multiply-adds. */
  readonly most: number
}

/** Factors; or the column at which no pivot was left, or at which the work became too much. */
export type Outcome =
  | { readonly state: 'factored'; readonly factors: Factors }
  | { readonly state: 'dependent' | 'given-up'; readonly column: number }

/** Share of the column's largest entry below which a pivot is next to nothing; rounding adds up as √n. */
export function weakBelow(order: number): number {
  return weak * Math.max(1, Math.sqrt(order) / 8)
}

/**
 * Factors a sparse matrix column by column, pivots chosen among the rows that are left: the preferred one where it has
 * a tenth of the largest, else the largest. Time grows with the multiply-adds, not with n².
 *
 * A column is dependent where all that is left of it is next to nothing beside its entries in A *and* lost in the
 * rounding of what was subtracted.
 */
export function factorSparse(task: Task): Outcome {
  const { columns, a, complex, order } = task
  const n = columns.order
  const { starts: aStarts, rows } = columns
  const factors = emptyFactors(n, 4 * rows.length + n + 16, complex)
  const { starts, diagonals, rowOf, columnOf } = factors
  const stepOf = new Int32Array(n).fill(-1)
  const reach = createReach(n)
  const w = new Float64Array(complex ? 2 * n : n)
  let place = 0
  for (let k = 0; k < n; k++) {
    const column = order[k]!
    const from = aStarts[column]!
    const to = aStarts[column + 1]!
    starts[k] = place
    columnOf[k] = column
    searchReach(reach, factors, rows, from, to, k, stepOf)
    factors.operations += operationsThrough(factors, reach)
    if (factors.operations > task.most) return { state: 'given-up', column }
    reserve(factors, place + n - reach.top + reach.count + 1)
    if (complex) scatterComplex(a, rows, from, to, w)
    else scatterReal(a, rows, from, to, w)
    const diagonal = complex
      ? eliminateComplex(factors, reach, w, place)
      : eliminateReal(factors, reach, w, place)
    const pivot = choosePivot(task, factors, reach, w, column, place, diagonal)
    if (pivot < 0) return { state: 'dependent', column }
    place = complex
      ? keepLowerComplex(factors, reach, w, pivot, diagonal)
      : keepLowerReal(factors, reach, w, pivot, diagonal)
    diagonals[k] = diagonal
    starts[k + 1] = place
    rowOf[k] = pivot
    stepOf[pivot] = k
    reach.ends[k] = place
    prune(factors, reach, pivot, stepOf)
  }
  numberBySteps(factors, stepOf)
  trim(factors)
  return { state: 'factored', factors }
}

/** The row of the pivot, -1 where every candidate is lost. U(:,k) is at `from` … `to` - 1. */
function choosePivot(
  task: Task,
  factors: Factors,
  reach: Reach,
  w: Float64Array,
  column: number,
  from: number,
  to: number,
): number {
  const { candidates, count } = reach
  const size = task.complex ? sizeComplex : sizeReal
  const largest = largestSize(task, reach, w)
  const lost =
    largest > doubtful * task.maxima[column]!
      ? undefined
      : lostBelow(task, factors, column, from, to, largest)
  const wished = task.preferred[column]!
  let best = -1
  let most = 0
  let own = 0
  for (let c = 0; c < count; c++) {
    const row = candidates[c]!
    const s = size(w, row)
    if (lost !== undefined && !(s > lost[row]!)) continue
    if (s > most) {
      most = s
      best = row
    }
    if (row === wished) own = s
  }
  return own > 0 && own >= threshold * most ? wished : best
}

function largestSize({ complex }: Task, { candidates, count }: Reach, w: Float64Array): number {
  const size = complex ? sizeComplex : sizeReal
  let largest = 0
  for (let c = 0; c < count; c++) largest = Math.max(largest, size(w, candidates[c]!))
  return largest
}

/** By row: the size that rounding may have left of nothing. */
function lostBelow(
  task: Task,
  factors: Factors,
  column: number,
  from: number,
  to: number,
  largest: number,
): Float64Array {
  const { starts, rows } = task.columns
  const n = factors.order
  const met = new Float64Array(n)
  const size = task.complex ? sizeComplex : sizeReal
  for (let t = starts[column]!; t < starts[column + 1]!; t++) met[rows[t]!] = size(task.a, t)
  if (task.complex) meetComplex(factors, from, to, met)
  else meetReal(factors, from, to, met)
  const additions = 1 + to - from
  const share =
    largest > weakBelow(n) * task.maxima[column]!
      ? rounding * additions
      : roundingOfWeak * Math.min(n, additions + Math.sqrt(n))
  for (let i = 0; i < n; i++) met[i] = met[i]! * share
  return met
}

/** Multiply-adds of the column in hand. */
function operationsThrough({ starts, diagonals }: Factors, { through, top }: Reach): number {
  let count = 0
  for (let t = top; t < through.length; t++) {
    const j = through[t]!
    count += starts[j + 1]! - diagonals[j]! - 1
  }
  return count
}

/** Rows of A give way to the steps at which they are pivots. */
function numberBySteps({ order, starts, diagonals, index }: Factors, stepOf: Int32Array): void {
  for (let k = 0; k < order; k++)
    for (let t = diagonals[k]!; t < starts[k + 1]!; t++) index[t] = stepOf[index[t]!]!
}
