/** As `sparse-solve-real.ts`, every value interleaved: `w` has 2 n places, and `places` names the even ones. */
import { subtractComplex } from './sparse-subtract.ts'

/** x = Q U⁻¹ L⁻¹ P b for the right side at `start` of `b`. */
export function solveComplex(
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
    const from = start + 2 * rowOf[k]!
    w[2 * k] = b[from]! // w = P b
    w[2 * k + 1] = b[from + 1]!
  }
  for (let k = 0; k < n; k++) {
    const first = (diagonals[k]! + 1) | 0
    const count = (starts[(k + 1) | 0]! - first) | 0
    const from = first << 1
    const re = w[2 * k]!
    const im = w[2 * k + 1]!
    // L w = P b
    if (count > 0) {
      subtractComplex(w, places[first]!, x, from, re, im)
      if (count > 1) {
        subtractComplex(w, places[(first + 1) | 0]!, x, (from + 2) | 0, re, im)
        if (count > 2) {
          subtractComplex(w, places[(first + 2) | 0]!, x, (from + 4) | 0, re, im)
          if (count > 3) {
            subtractComplex(w, places[(first + 3) | 0]!, x, (from + 6) | 0, re, im)
            for (let c = 4; c < count; c = (c + 1) | 0)
              subtractComplex(w, places[(first + c) | 0]!, x, (from + (c << 1)) | 0, re, im)
          }
        }
      }
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const diagonal = diagonals[k]!
    const wr = w[2 * k]!
    const wi = w[2 * k + 1]!
    const qr = x[2 * diagonal]!
    const qi = x[2 * diagonal + 1]!
    const re = wr * qr - wi * qi
    const im = wr * qi + wi * qr
    const to = start + 2 * columnOf[k]!
    b[to] = re
    b[to + 1] = im
    const first = starts[k]!
    const count = (diagonal - first) | 0
    const from = first << 1
    // U x = w
    if (count > 0) {
      subtractComplex(w, places[first]!, x, from, re, im)
      if (count > 1) {
        subtractComplex(w, places[(first + 1) | 0]!, x, (from + 2) | 0, re, im)
        if (count > 2) {
          subtractComplex(w, places[(first + 2) | 0]!, x, (from + 4) | 0, re, im)
          if (count > 3) {
            subtractComplex(w, places[(first + 3) | 0]!, x, (from + 6) | 0, re, im)
            for (let c = 4; c < count; c = (c + 1) | 0)
              subtractComplex(w, places[(first + c) | 0]!, x, (from + (c << 1)) | 0, re, im)
          }
        }
      }
    }
  }
}

/** x = Pᵀ L⁻ᵀ U⁻ᵀ Qᵀ b, transposed and not conjugated, for the right side at `start` of `b`. */
export function solveTransposedComplex(
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
    const from = start + 2 * columnOf[k]!
    let re = b[from]!
    let im = b[from + 1]!
    for (let t = starts[k]!; t < diagonal; t++) {
      const i = places[t]!
      const ur = x[2 * t]!
      const ui = x[2 * t + 1]!
      re -= ur * w[i]! - ui * w[i + 1]! // Uᵀ z = Qᵀ b
      im -= ur * w[i + 1]! + ui * w[i]!
    }
    const qr = x[2 * diagonal]!
    const qi = x[2 * diagonal + 1]!
    w[2 * k] = re * qr - im * qi
    w[2 * k + 1] = re * qi + im * qr
  }
  for (let k = n - 1; k >= 0; k--) {
    let re = w[2 * k]!
    let im = w[2 * k + 1]!
    const end = starts[k + 1]!
    for (let t = diagonals[k]! + 1; t < end; t++) {
      const i = places[t]!
      const lr = x[2 * t]!
      const li = x[2 * t + 1]!
      re -= lr * w[i]! - li * w[i + 1]! // Lᵀ w = z
      im -= lr * w[i + 1]! + li * w[i]!
    }
    w[2 * k] = re
    w[2 * k + 1] = im
    const to = start + 2 * rowOf[k]!
    b[to] = re
    b[to + 1] = im
  }
}
