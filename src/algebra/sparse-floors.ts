import type { Factors } from './sparse-factors.ts'
import { weakBelow } from './sparse-rounding.ts'

/** A kept pivot below this share of its column in U is lost. */
const lost = 1e-12
/** A fresh pivot that was smaller may become smaller still by this factor. */
const slack = 16

/**
 * By step: the share of its column in U that a kept pivot must have, learnt from fresh pivots into `floors` (n).
 * Where a small conductance stands alone in a column of ones, it may stay; nowhere may rounding pass for a pivot.
 */
export function learnFloors(factors: Factors, complex: boolean, floors: Float64Array): void {
  const { order, starts, diagonals, values } = factors
  const size = complex
    ? (t: number) => Math.abs(values[2 * t]!) + Math.abs(values[2 * t + 1]!)
    : (t: number) => Math.abs(values[t]!)
  const least = weakBelow(order)
  for (let k = 0; k < order; k++) {
    const pivot = 1 / size(diagonals[k]!)
    let most = pivot
    for (let t = starts[k]!; t < diagonals[k]!; t++) most = Math.max(most, size(t))
    floors[k] = Math.max(least, Math.min(lost, pivot / most / slack))
  }
}
