import type { Columns } from './sparse-columns.ts'

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
