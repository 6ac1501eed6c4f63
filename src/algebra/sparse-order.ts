import type { Columns } from './sparse-columns.ts'
import { minimumDegree } from './sparse-degree.ts'

/**
 * The order of columns in which elimination fills in little, where row `rowOf[j]` is the pivot of column j:
 * minimum degree on the pattern of B + Bᵀ, B being A with those rows on its diagonal.
 */
export function orderColumns({ order: n, starts, rows }: Columns, rowOf: Int32Array): Int32Array {
  const columnOf = new Int32Array(n)
  for (let j = 0; j < n; j++) columnOf[rowOf[j]!] = j
  const counts = new Int32Array(n + 1)
  for (let j = 0; j < n; j++) {
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      const i = columnOf[rows[t]!]!
      if (i === j) continue
      counts[i + 1] = counts[i + 1]! + 1
      counts[j + 1] = counts[j + 1]! + 1
    }
  }
  for (let j = 0; j < n; j++) counts[j + 1] = counts[j + 1]! + counts[j]!
  const next = counts.slice()
  const both = new Int32Array(counts[n]!)
  for (let j = 0; j < n; j++) {
    for (let t = starts[j]!; t < starts[j + 1]!; t++) {
      const i = columnOf[rows[t]!]!
      if (i === j) continue
      both[next[i]!] = j
      next[i] = next[i]! + 1
      both[next[j]!] = i
      next[j] = next[j]! + 1
    }
  }
  return minimumDegree(n, counts, withoutDoubles(n, counts, both))
}

/** Keeps each neighbour once, in place; `starts` moves along. */
function withoutDoubles(n: number, starts: Int32Array, neighbours: Int32Array): Int32Array {
  const seen = new Int32Array(n).fill(-1)
  let to = 0
  let from = 0
  for (let j = 0; j < n; j++) {
    const end = starts[j + 1]!
    for (; from < end; from++) {
      const i = neighbours[from]!
      if (seen[i] === j) continue
      seen[i] = j
      neighbours[to++] = i
    }
    starts[j + 1] = to
  }
  return neighbours.subarray(0, to)
}
