/** As `sparse-solve-real.ts`, every value interleaved: `w` has 2 n places. */

/** x = Q U⁻¹ L⁻¹ P b for the right side at `start` of `b`. */
export function solveComplex(
  x: Float64Array,
  starts: Int32Array,
  diagonals: Int32Array,
  index: Int32Array,
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
    const re = w[2 * k]!
    const im = w[2 * k + 1]!
    const end = starts[k + 1]!
    for (let t = diagonals[k]! + 1; t < end; t++) {
      const i = 2 * index[t]!
      const lr = x[2 * t]!
      const li = x[2 * t + 1]!
      w[i] = w[i]! - (lr * re - li * im) // L w = P b
      w[i + 1] = w[i + 1]! - (lr * im + li * re)
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
    for (let t = starts[k]!; t < diagonal; t++) {
      const i = 2 * index[t]!
      const ur = x[2 * t]!
      const ui = x[2 * t + 1]!
      w[i] = w[i]! - (ur * re - ui * im) // U x = w
      w[i + 1] = w[i + 1]! - (ur * im + ui * re)
    }
  }
}

/** x = Pᵀ L⁻ᵀ U⁻ᵀ Qᵀ b, transposed and not conjugated, for the right side at `start` of `b`. */
export function solveTransposedComplex(
  x: Float64Array,
  starts: Int32Array,
  diagonals: Int32Array,
  index: Int32Array,
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
      const i = 2 * index[t]!
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
      const i = 2 * index[t]!
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
