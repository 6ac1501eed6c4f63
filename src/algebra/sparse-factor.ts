import { eliminateComplex, keepLowerComplex, scatterComplex, sizeComplex } from './sparse-column-complex.ts'
import { eliminateReal, keepLowerReal, scatterReal, sizeReal } from './sparse-column-real.ts'
import { emptyFactors, type Factors, reserve, trim } from './sparse-factors.ts'
import { prune } from './sparse-prune.ts'
import { createReach, type Reach, searchReach } from './sparse-reach.ts'
import { dropRounding } from './sparse-rounding.ts'
import type { Task } from './sparse-task.ts'

/** The pivot that was wished for is taken where it has this share of the largest there is. */
const threshold = 0.1

/** Factors; or the column at which no pivot was left, or at which the work became too much. */
export type Outcome =
  | { readonly state: 'factored'; readonly factors: Factors }
  | { readonly state: 'dependent' | 'given-up'; readonly column: number }

/**
 * Factors a sparse matrix column by column, pivots chosen among the rows that are left: the preferred one where it has
 * a tenth of the largest, else the largest. Time grows with the multiply-adds, not with n².
 *
 * A column is dependent where all that is left of it is the rounding of what was subtracted.
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
  const met = new Float64Array(n)
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
    dropRounding(task, factors, reach, w, met, column, place, diagonal)
    const pivot = choosePivot(task, reach, w, column)
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

/** The row of the pivot, -1 where no candidate is left. */
function choosePivot({ complex, preferred }: Task, reach: Reach, w: Float64Array, column: number): number {
  const { candidates, count } = reach
  const size = complex ? sizeComplex : sizeReal
  const wished = preferred[column]!
  let best = -1
  let most = 0
  let own = 0
  for (let c = 0; c < count; c++) {
    const row = candidates[c]!
    const s = size(w, row)
    if (s > most) {
      most = s
      best = row
    }
    if (row === wished) own = s
  }
  return own > 0 && own >= threshold * most ? wished : best
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
