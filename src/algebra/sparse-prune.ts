import type { Factors } from './sparse-factors.ts'
import type { Reach } from './sparse-reach.ts'

/**
 * After step k: a column j of L that holds the new pivot row, and whose U(j,k) is there, need be searched through its
 * finished rows only, for what lies below is in L(:,k) too. Moves these rows to the front of the column.
 * @source symmetric pruning: Eisenstat and Liu, SIAM J. Matrix Anal. Appl. 13 (1992), from memory
 */
export function prune(factors: Factors, reach: Reach, pivot: number, stepOf: Int32Array): void {
  const { index, values, starts, diagonals } = factors
  const { through, top, ends } = reach
  const parts = values.length / index.length
  for (let t = top; t < through.length; t++) {
    const j = through[t]!
    const end = starts[j + 1]!
    if (ends[j] !== end) continue // pruned already
    const start = diagonals[j]! + 1
    let place = start
    while (place < end && index[place] !== pivot) place++
    if (place === end) continue
    let border = start
    for (let s = start; s < end; s++) {
      if (stepOf[index[s]!]! < 0) continue
      swap(index, values, parts, border, s)
      border++
    }
    ends[j] = border
  }
}

function swap(index: Int32Array, values: Float64Array, parts: number, s: number, t: number): void {
  if (s === t) return
  const row = index[s]!
  index[s] = index[t]!
  index[t] = row
  for (let part = 0; part < parts; part++) {
    const value = values[parts * s + part]!
    values[parts * s + part] = values[parts * t + part]!
    values[parts * t + part] = value
  }
}
