import type { Columns } from './sparse-columns.ts'
import { factorSparse } from './sparse-factor.ts'
import type { Factors } from './sparse-factors.ts'
import { largestByColumn, matchRows } from './sparse-matching.ts'
import { orderColumns } from './sparse-order.ts'

/** Multiply-adds that the search for the first dependent column may take: all that 500 unknowns can need. */
const mostForName = 5e7

/** An order of elimination, kept while the same rows are wished for. */
export interface Choice {
  readonly preferred: Int32Array
  readonly order: Int32Array
}

/** Factors with the choice that led to them, or a dependent column. */
export type Chosen =
  | { readonly ok: true; readonly choice: Choice; readonly factors: Factors }
  | { readonly ok: false; readonly column: number }

/**
 * Matches rows, orders columns and factors. The outcome is a function of pattern and values alone: `kept` saves work
 * where the matching came out the same, and changes nothing.
 */
export function chooseAndFactor(
  columns: Columns,
  a: Float64Array,
  complex: boolean,
  kept: Choice | undefined,
): Chosen {
  const sizes = sizesOf(a, columns.rows.length, complex)
  const maxima = largestByColumn(columns, sizes)
  const preferred = matchRows(columns, sizes)
  const unmatched = preferred.indexOf(-1)
  const first = (found: number): number => firstDependent(columns, a, complex, maxima) ?? found
  if (unmatched !== -1) return { ok: false, column: first(unmatched) }
  const order =
    kept !== undefined && same(kept.preferred, preferred) ? kept.order : orderColumns(columns, preferred)
  const most = Number.POSITIVE_INFINITY
  const outcome = factorSparse({ columns, a, complex, order, preferred, maxima, most })
  return outcome.state === 'factored'
    ? { ok: true, choice: { preferred, order }, factors: outcome.factors }
    : { ok: false, column: first(outcome.column) }
}

/**
 * The first column that depends on those before it: columns in their own order, the largest entry as pivot.
 * Nothing where that order takes too long, or where its other rounding hides the dependence.
 */
function firstDependent(
  columns: Columns,
  a: Float64Array,
  complex: boolean,
  maxima: Float64Array,
): number | undefined {
  const order = Int32Array.from({ length: columns.order }, (_, k) => k)
  const preferred = new Int32Array(columns.order).fill(-1)
  const outcome = factorSparse({ columns, a, complex, order, preferred, maxima, most: mostForName })
  return outcome.state === 'dependent' ? outcome.column : undefined
}

/** |a|, or |re| + |im|. */
function sizesOf(a: Float64Array, count: number, complex: boolean): Float64Array {
  const sizes = new Float64Array(count)
  for (let t = 0; t < count; t++)
    sizes[t] = complex ? Math.abs(a[2 * t]!) + Math.abs(a[2 * t + 1]!) : Math.abs(a[t]!)
  return sizes
}

function same(p: Int32Array, q: Int32Array): boolean {
  for (let k = 0; k < p.length; k++) if (p[k] !== q[k]) return false
  return true
}
