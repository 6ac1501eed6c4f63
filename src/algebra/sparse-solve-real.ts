/**
 * Real triangular solves. `x`, `starts`, `diagonals` are those of the factors; `places` says where in `w` the row of each
 * of their places is; `w` (n) is overwritten.
 */
import { subtractReal } from './sparse-subtract.ts'

/** x = Q U⁻¹ L⁻¹ P b for the right side at `start` of `b`. */
export function solveReal(
  x: Float64Array,
  starts: Int32Array,
  diagonals: Int32Array,
  places: Int32Array,
  rowOf: Int32Array,
  columnOf: Int32Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  const n = diagonals.length
  for (let k = 0; k < n; k++) w[k] = b[start + rowOf[k]!]! // w = P b
  for (let k = 0; k < n; k++) {
    const value = w[k]!
    const first = (diagonals[k]! + 1) | 0
    const count = (starts[(k + 1) | 0]! - first) | 0
    // L w = P b
    if (count > 0) {
      subtractReal(w, places[first]!, x, first, value)
      if (count > 1) {
        subtractReal(w, places[(first + 1) | 0]!, x, (first + 1) | 0, value)
        if (count > 2) {
          subtractReal(w, places[(first + 2) | 0]!, x, (first + 2) | 0, value)
          if (count > 3) {
            subtractReal(w, places[(first + 3) | 0]!, x, (first + 3) | 0, value)
            for (let c = 4; c < count; c = (c + 1) | 0)
              subtractReal(w, places[(first + c) | 0]!, x, (first + c) | 0, value)
          }
        }
      }
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const diagonal = diagonals[k]!
    const value = w[k]! * x[diagonal]!
    b[start + columnOf[k]!] = value
    const first = starts[k]!
    const count = (diagonal - first) | 0
    // U x = w
    if (count > 0) {
      subtractReal(w, places[first]!, x, first, value)
      if (count > 1) {
        subtractReal(w, places[(first + 1) | 0]!, x, (first + 1) | 0, value)
        if (count > 2) {
          subtractReal(w, places[(first + 2) | 0]!, x, (first + 2) | 0, value)
          if (count > 3) {
            subtractReal(w, places[(first + 3) | 0]!, x, (first + 3) | 0, value)
            for (let c = 4; c < count; c = (c + 1) | 0)
              subtractReal(w, places[(first + c) | 0]!, x, (first + c) | 0, value)
          }
        }
      }
    }
  }
}

/** x = Pᵀ L⁻ᵀ U⁻ᵀ Qᵀ b for the right side at `start` of `b`. */
export function solveTransposedReal(
  x: Float64Array,
  starts: Int32Array,
  diagonals: Int32Array,
  places: Int32Array,
  rowOf: Int32Array,
  columnOf: Int32Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  const n = diagonals.length
  for (let k = 0; k < n; k++) {
    const diagonal = diagonals[k]!
    let sum = b[start + columnOf[k]!]!
    for (let t = starts[k]!; t < diagonal; t++) sum -= x[t]! * w[places[t]!]! // Uᵀ z = Qᵀ b
    w[k] = sum * x[diagonal]!
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = w[k]!
    const end = starts[k + 1]!
    for (let t = diagonals[k]! + 1; t < end; t++) sum -= x[t]! * w[places[t]!]! // Lᵀ w = z
    w[k] = sum
    b[start + rowOf[k]!] = sum
  }
}
