import type { Factors } from './sparse-factors.ts'

/** Workspaces of the search, n places each. */
export interface Reach {
  /** Columns of L to be subtracted from the column in hand, in order, from `top` to n - 1. */
  readonly through: Int32Array
  top: number
  /** Rows not yet pivots that have an entry in the column in hand, `count` of them. */
  readonly candidates: Int32Array
  count: number
  /** By row: the last column in which it was met, -1 at first. */
  readonly met: Int32Array
  readonly stack: Int32Array
  readonly next: Int32Array
  /** By column of L: where its entries end that need be searched (see `prune`). */
  readonly ends: Int32Array
}

export function createReach(n: number): Reach {
  return {
    through: new Int32Array(n),
    top: n,
    candidates: new Int32Array(n),
    count: 0,
    met: new Int32Array(n).fill(-1),
    stack: new Int32Array(n),
    next: new Int32Array(n),
    ends: new Int32Array(n),
  }
}

/**
 * Where L⁻¹ A(:,column) has entries: depth first through the graph of the columns of L, which hold rows of A here.
 *
 * @param rows of the column of A: `rows[from]` … `rows[to - 1]`
 * @param step the number of finished columns
 * @param stepOf step at which a row was the pivot, -1 before
 * @source Gilbert and Peierls, SIAM J. Sci. Stat. Comput. 9 (1988), from memory
 */
export function searchReach(
  reach: Reach,
  factors: Factors,
  rows: Int32Array,
  from: number,
  to: number,
  step: number,
  stepOf: Int32Array,
): void {
  const { through, candidates, met, stack, next, ends } = reach
  const { index, diagonals } = factors
  let top = factors.order
  let count = 0
  for (let t = from; t < to; t++) {
    const row = rows[t]!
    if (met[row] === step) continue
    met[row] = step
    const start = stepOf[row]!
    if (start < 0) {
      candidates[count++] = row
      continue
    }
    let depth = 0
    stack[0] = start
    next[start] = diagonals[start]! + 1
    while (depth >= 0) {
      const j = stack[depth]!
      const end = ends[j]!
      let place = next[j]!
      let deeper = -1
      while (place < end) {
        const i = index[place++]!
        if (met[i] === step) continue
        met[i] = step
        deeper = stepOf[i]!
        if (deeper >= 0) break
        candidates[count++] = i
      }
      next[j] = place
      if (deeper >= 0) {
        stack[++depth] = deeper
        next[deeper] = diagonals[deeper]! + 1
      } else {
        through[--top] = j
        depth--
      }
    }
  }
  reach.top = top
  reach.count = count
}
