/**
 * Complex kernels of the dense engine: as `dense-real.ts`, every value interleaved (re at 2k, im at 2k + 1).
 * Sizes of entries are |re| + |im| where only their order matters.
 */

const weak = 1e-14
const rounding = 64 * Number.EPSILON

/** Largest entry of each column into `maxima` (n); returns the largest of all, NaN or Infinity where A is not finite. */
export function columnMaximaComplex(a: Float64Array, n: number, maxima: Float64Array): number {
  let largest = 0
  maxima.fill(0)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const size = Math.abs(a[2 * (i * n + j)]!) + Math.abs(a[2 * (i * n + j) + 1]!)
      if (size > maxima[j]!) maxima[j] = size
      if (size > largest) largest = size
      if (Number.isNaN(size)) return size
    }
  }
  return largest
}

/**
 * L U = P A in `lu` (2·n·n). With `choose` the rows are ordered anew into `p` (n), else the kept `p` is used.
 * `inverse` (2·n) receives 1 / U(k,k). Returns the largest |U|, or -1 - k where column k depends on those before it
 * (without `choose`: where its kept pivot is lost in rounding).
 */
export function factorComplex(
  a: Float64Array,
  n: number,
  lu: Float64Array,
  p: Int32Array,
  inverse: Float64Array,
  maxima: Float64Array,
  choose: boolean,
): number {
  const width = 2 * n
  if (choose) for (let i = 0; i < n; i++) p[i] = i
  for (let i = 0; i < n; i++) {
    const from = p[i]! * width
    for (let j = 0; j < width; j++) lu[i * width + j] = a[from + j]!
  }
  let largest = 0
  for (let k = 0; k < n; k++) {
    let row = k
    if (choose) for (let i = k + 1; i < n; i++) if (size(lu, i * n + k) > size(lu, row * n + k)) row = i
    if (!(size(lu, row * n + k) > weak * maxima[k]!)) {
      row = soundestComplex(a, n, lu, p, k, choose ? n : k + 1)
      if (row < 0) return -1 - k
    }
    if (row !== k) swapComplex(lu, n, p, k, row)
    invert(lu, k * n + k, inverse, k)
    const qr = inverse[2 * k]!
    const qi = inverse[2 * k + 1]!
    const top = k * width
    for (let j = k; j < n; j++) if (size(lu, k * n + j) > largest) largest = size(lu, k * n + j)
    for (let i = k + 1; i < n; i++) {
      const line = i * width
      const ar = lu[line + 2 * k]!
      const ai = lu[line + 2 * k + 1]!
      if (ar === 0 && ai === 0) continue
      const lr = ar * qr - ai * qi // L(i,k) = A(i,k) / U(k,k)
      const li = ar * qi + ai * qr
      lu[line + 2 * k] = lr
      lu[line + 2 * k + 1] = li
      for (let j = 2 * k + 2; j < width; j += 2) {
        const ur = lu[top + j]!
        const ui = lu[top + j + 1]!
        lu[line + j] = lu[line + j]! - (lr * ur - li * ui) // A(i,:) -= L(i,k) U(k,:)
        lu[line + j + 1] = lu[line + j + 1]! - (lr * ui + li * ur)
      }
    }
  }
  return largest
}

function size(values: Float64Array, k: number): number {
  return Math.abs(values[2 * k]!) + Math.abs(values[2 * k + 1]!)
}

/** q(to) = 1 / v(from), by the smaller over the larger part, so that no square overflows. */
function invert(v: Float64Array, from: number, q: Float64Array, to: number): void {
  const re = v[2 * from]!
  const im = v[2 * from + 1]!
  if (Math.abs(re) >= Math.abs(im)) {
    const share = im / re
    const whole = re + im * share
    q[2 * to] = 1 / whole
    q[2 * to + 1] = -share / whole
  } else {
    const share = re / im
    const whole = re * share + im
    q[2 * to] = share / whole
    q[2 * to + 1] = -1 / whole
  }
}

/** Among rows k … end - 1 the one whose entry in column k stands out most from its own rounding; -1 where none does. */
function soundestComplex(
  a: Float64Array,
  n: number,
  lu: Float64Array,
  p: Int32Array,
  k: number,
  end: number,
): number {
  let best = -1
  let most = rounding * n
  for (let i = k; i < end; i++) {
    let met = size(a, p[i]! * n + k)
    for (let j = 0; j < k; j++) met += size(lu, i * n + j) * size(lu, j * n + k) // |A(i,k)| + |L(i,:)| |U(:,k)|
    const share = size(lu, i * n + k) / met // 0/0 is no share
    if (share > most) {
      most = share
      best = i
    }
  }
  return best
}

function swapComplex(lu: Float64Array, n: number, p: Int32Array, k: number, row: number): void {
  const place = p[k]!
  p[k] = p[row]!
  p[row] = place
  for (let j = 0; j < 2 * n; j++) {
    const value = lu[2 * k * n + j]!
    lu[2 * k * n + j] = lu[2 * row * n + j]!
    lu[2 * row * n + j] = value
  }
}

/** x = U⁻¹ L⁻¹ P b for the right side at `start` of `b`; `w` (2·n) is overwritten. */
export function solveComplex(
  lu: Float64Array,
  n: number,
  p: Int32Array,
  inverse: Float64Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  const width = 2 * n
  for (let i = 0; i < width; i += 2) {
    const from = start + 2 * p[i >> 1]!
    let re = b[from]!
    let im = b[from + 1]!
    const line = i * n
    for (let j = 0; j < i; j += 2) {
      re -= lu[line + j]! * w[j]! - lu[line + j + 1]! * w[j + 1]! // L w = P b
      im -= lu[line + j]! * w[j + 1]! + lu[line + j + 1]! * w[j]!
    }
    w[i] = re
    w[i + 1] = im
  }
  for (let i = width - 2; i >= 0; i -= 2) {
    let re = w[i]!
    let im = w[i + 1]!
    const line = i * n
    for (let j = i + 2; j < width; j += 2) {
      re -= lu[line + j]! * w[j]! - lu[line + j + 1]! * w[j + 1]! // U x = w
      im -= lu[line + j]! * w[j + 1]! + lu[line + j + 1]! * w[j]!
    }
    w[i] = re * inverse[i]! - im * inverse[i + 1]!
    w[i + 1] = re * inverse[i + 1]! + im * inverse[i]!
  }
  for (let i = 0; i < width; i++) b[start + i] = w[i]!
}

/** x = Pᵀ L⁻ᵀ U⁻ᵀ b, transposed and not conjugated; `w` (2·n) is overwritten. */
export function solveTransposedComplex(
  lu: Float64Array,
  n: number,
  p: Int32Array,
  inverse: Float64Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  const width = 2 * n
  for (let i = 0; i < width; i++) w[i] = b[start + i]!
  for (let k = 0; k < width; k += 2) {
    const re = w[k]! * inverse[k]! - w[k + 1]! * inverse[k + 1]!
    const im = w[k]! * inverse[k + 1]! + w[k + 1]! * inverse[k]!
    w[k] = re
    w[k + 1] = im
    subtractRow(lu, k * n, k + 2, width, w, re, im) // Uᵀ z = b
  }
  for (let k = width - 2; k > 0; k -= 2) subtractRow(lu, k * n, 0, k, w, w[k]!, w[k + 1]!) // Lᵀ w = z
  for (let i = 0; i < width; i += 2) {
    const to = start + 2 * p[i >> 1]! // x = Pᵀ w
    b[to] = w[i]!
    b[to + 1] = w[i + 1]!
  }
}

/** w(from:to) -= LU(line, from:to) z */
function subtractRow(
  lu: Float64Array,
  line: number,
  from: number,
  to: number,
  w: Float64Array,
  re: number,
  im: number,
): void {
  for (let j = from; j < to; j += 2) {
    const ur = lu[line + j]!
    const ui = lu[line + j + 1]!
    w[j] = w[j]! - (ur * re - ui * im)
    w[j + 1] = w[j + 1]! - (ur * im + ui * re)
  }
}

/** ‖A x − b‖∞ / (‖A‖∞ ‖x‖∞ n ε + tiny) */
export function residualComplex(
  a: Float64Array,
  n: number,
  x: Float64Array,
  b: Float64Array,
  tiny: number,
): number {
  let worst = 0
  let sizeOfA = 0
  let sizeOfX = 0
  for (let i = 0; i < n; i++) {
    let re = -b[2 * i]!
    let im = -b[2 * i + 1]!
    let row = 0
    for (let j = 0; j < n; j++) {
      const ar = a[2 * (i * n + j)]!
      const ai = a[2 * (i * n + j) + 1]!
      re += ar * x[2 * j]! - ai * x[2 * j + 1]!
      im += ar * x[2 * j + 1]! + ai * x[2 * j]!
      row += Math.hypot(ar, ai)
    }
    const rest = Math.hypot(re, im)
    worst = Math.max(worst, rest) // keeps NaN
    if (row > sizeOfA) sizeOfA = row
    const own = Math.hypot(x[2 * i]!, x[2 * i + 1]!)
    if (own > sizeOfX) sizeOfX = own
  }
  const value = worst / (sizeOfA * sizeOfX * n * Number.EPSILON + tiny)
  return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value
}
