import type { Columns } from './sparse-columns.ts'
import type { Factors } from './sparse-factors.ts'

/** Where each place of A goes in the values of the factors; doubled for complex ones. */
export function destinationsOf(columns: Columns, factors: Factors, complex: boolean): Int32Array {
  const { order, starts, index, rowOf, columnOf } = factors
  const width = complex ? 2 : 1
  const stepOf = new Int32Array(order)
  for (let k = 0; k < order; k++) stepOf[rowOf[k]!] = k
  const placeOf = new Int32Array(order)
  const to = new Int32Array(columns.rows.length)
  for (let k = 0; k < order; k++) {
    for (let t = starts[k]!; t < starts[k + 1]!; t++) placeOf[index[t]!] = width * t
    const column = columnOf[k]!
    for (let t = columns.starts[column]!; t < columns.starts[column + 1]!; t++)
      to[t] = placeOf[stepOf[columns.rows[t]!]!]!
  }
  return to
}

/**
 * The multiply-adds of a factorisation as a list, for kernels that neither search nor scatter. For each column k: the
 * number of entries in U(:,k); for each of them, at row j, where L(:,j) starts and how long it is, and as many places
 * from which L(:,j) U(j,k) is to be subtracted; then the length of L(:,k). Places are doubled for complex values.
 */
export function operationsOf(factors: Factors, complex: boolean): Int32Array {
  const { order, starts, diagonals, index, operations } = factors
  const width = complex ? 2 : 1
  let upper = 0
  for (let k = 0; k < order; k++) upper += diagonals[k]! - starts[k]!
  const list = new Int32Array(2 * order + 2 * upper + operations)
  const placeOf = new Int32Array(order)
  let end = 0
  for (let k = 0; k < order; k++) {
    const diagonal = diagonals[k]!
    for (let t = starts[k]!; t < starts[k + 1]!; t++) placeOf[index[t]!] = width * t
    list[end++] = diagonal - starts[k]!
    for (let t = starts[k]!; t < diagonal; t++) {
      const j = index[t]!
      const from = diagonals[j]! + 1
      const to = starts[j + 1]!
      list[end++] = width * from
      list[end++] = to - from
      for (let s = from; s < to; s++) list[end++] = placeOf[index[s]!]!
    }
    list[end++] = starts[k + 1]! - diagonal - 1
  }
  return list
}
