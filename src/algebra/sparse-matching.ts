import type { Columns } from './sparse-columns.ts'

/**
 * Shares of its column's largest entry that an entry must reach to be matched, tried one after the other:
 * first what threshold pivoting would take, then what is not lost, then whatever is not zero.
 */
const shares = [0.1, 1e-6, 0] as const

/**
 * One row for each column, each row once, so that the entries there can be pivots: large ones and those on the
 * diagonal by preference. Returns the row of each column, −1 where there is none: the system is singular then.
 *
 * @param sizes size of the value at each place of `columns`; zero is no entry
 * @source maximum transversal by depth-first search with look-ahead: Duff, ACM Trans. Math. Softw. 7 (1981), from memory
 */
export function matchRows(columns: Columns, sizes: Float64Array): Int32Array {
  const n = columns.order
  const rowOf = new Int32Array(n).fill(-1)
  const columnOf = new Int32Array(n).fill(-1)
  const largest = largestByColumn(columns, sizes)
  const search = new Int32Array(4 * n)
  for (const share of shares) {
    const least = largest.map((size) => (size === 0 ? Number.POSITIVE_INFINITY : share * size))
    takeDiagonal(columns, sizes, least, rowOf, columnOf)
    takeLargest(columns, sizes, least, rowOf, columnOf)
    if (augmentAll(columns, sizes, least, rowOf, columnOf, search)) break
  }
  return rowOf
}

/** Size of the largest entry of each column (n). */
export function largestByColumn({ order, starts }: Columns, sizes: Float64Array): Float64Array {
  const largest = new Float64Array(order)
  for (let j = 0; j < order; j++) {
    for (let t = starts[j]!; t < starts[j + 1]!; t++) if (sizes[t]! > largest[j]!) largest[j] = sizes[t]!
  }
  return largest
}

function takeDiagonal(
  { order, starts, rows }: Columns,
  sizes: Float64Array,
  least: Float64Array,
  rowOf: Int32Array,
  columnOf: Int32Array,
): void {
  for (let j = 0; j < order; j++) {
    if (rowOf[j] !== -1 || columnOf[j] !== -1) continue
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      if (rows[t] !== j || !(sizes[t]! > 0) || sizes[t]! < least[j]!) continue
      rowOf[j] = j
      columnOf[j] = j
    }
  }
}

/** Gives columns without a row the largest of their entries whose row is free. */
function takeLargest(
  { order, starts, rows }: Columns,
  sizes: Float64Array,
  least: Float64Array,
  rowOf: Int32Array,
  columnOf: Int32Array,
): void {
  for (let j = 0; j < order; j++) {
    if (rowOf[j] !== -1) continue
    let best = -1
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      if (columnOf[rows[t]!] !== -1 || !(sizes[t]! > 0) || sizes[t]! < least[j]!) continue
      if (best === -1 || sizes[t]! > sizes[best]!) best = t
    }
    if (best === -1) continue
    rowOf[j] = rows[best]!
    columnOf[rows[best]!] = j
  }
}

/** Frees rows along alternating paths; `true` where every column has a row at last. `search` has 4 n places. */
function augmentAll(
  { order: n, starts, rows }: Columns,
  sizes: Float64Array,
  least: Float64Array,
  rowOf: Int32Array,
  columnOf: Int32Array,
  search: Int32Array,
): boolean {
  const stack = search.subarray(0, n) // columns of the path
  const next = search.subarray(n, 2 * n) // entry that the path goes on with, by column
  const met = search.subarray(2 * n, 3 * n).fill(-1) // by column: the start of the last search that came there
  const ahead = search.subarray(3 * n, 4 * n) // entries before this one have no free row
  for (let j = 0; j < n; j++) ahead[j] = starts[j]!
  let complete = true
  for (let start = 0; start < n; start++) {
    if (rowOf[start] !== -1) continue
    let depth = 0
    let free = -1
    stack[0] = start
    met[start] = start
    next[start] = starts[start]!
    while (depth >= 0) {
      const j = stack[depth]!
      const end = starts[j + 1]!
      for (let t = ahead[j]!; t < end && free === -1; t++) {
        ahead[j] = t + 1
        if (columnOf[rows[t]!] === -1 && sizes[t]! > 0 && sizes[t]! >= least[j]!) free = rows[t]!
      }
      if (free !== -1) break
      let t = next[j]!
      let deeper = -1
      for (; t < end && deeper === -1; t++) {
        if (!(sizes[t]! > 0) || sizes[t]! < least[j]!) continue
        const other = columnOf[rows[t]!]!
        if (met[other] !== start) deeper = other
      }
      next[j] = t
      if (deeper === -1) {
        depth--
        continue
      }
      met[deeper] = start
      next[deeper] = starts[deeper]!
      stack[++depth] = deeper
    }
    if (free === -1) complete = false
    for (; free !== -1 && depth >= 0; depth--) {
      const j = stack[depth]! // takes the free row, and frees its own for the column before it
      const left = rowOf[j]!
      rowOf[j] = free
      columnOf[free] = j
      free = left
    }
  }
  return complete
}
