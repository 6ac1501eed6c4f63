/**
 * Real kernels of the dense engine: L U = P A by rows, everything in flat row-major arrays.
 * `p[i]` is the row of A that stands in row i of LU. L has a unit diagonal that is not kept.
 */

/** A pivot below this share of the largest entry of its column in A is looked at twice. */
const weak = 1e-14
/** Rounding allowed in one entry after n steps, as a multiple of n ε of the magnitudes that met in it. */
const rounding = 64 * Number.EPSILON

/** Largest entry of each column into `maxima` (n); returns the largest of all, NaN or Infinity where A is not finite. */
export function columnMaximaReal(a: Float64Array, n: number, maxima: Float64Array): number {
  let largest = 0
  maxima.fill(0)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const size = Math.abs(a[i * n + j]!)
      if (size > maxima[j]!) maxima[j] = size
      if (size > largest) largest = size
      if (Number.isNaN(size)) return size
    }
  }
  return largest
}

/**
 * L U = P A in `lu` (n·n). With `choose` the rows are ordered anew into `p` (n), else the kept `p` is used.
 * Returns the largest |U|, or -1 - k where column k depends on those before it
 * (without `choose`: where its kept pivot is lost in rounding).
 */
export function factorReal(
  a: Float64Array,
  n: number,
  lu: Float64Array,
  p: Int32Array,
  maxima: Float64Array,
  choose: boolean,
): number {
  if (choose) for (let i = 0; i < n; i++) p[i] = i
  for (let i = 0; i < n; i++) {
    const from = p[i]! * n
    for (let j = 0; j < n; j++) lu[i * n + j] = a[from + j]!
  }
  let largest = 0
  for (let k = 0; k < n; k++) {
    let row = k
    if (choose)
      for (let i = k + 1; i < n; i++) if (Math.abs(lu[i * n + k]!) > Math.abs(lu[row * n + k]!)) row = i
    if (!(Math.abs(lu[row * n + k]!) > weak * maxima[k]!)) {
      row = soundestReal(a, n, lu, p, k, choose ? n : k + 1)
      if (row < 0) return -1 - k
    }
    if (row !== k) swapReal(lu, n, p, k, row)
    const pivot = lu[k * n + k]!
    for (let j = k; j < n; j++) if (Math.abs(lu[k * n + j]!) > largest) largest = Math.abs(lu[k * n + j]!)
    for (let i = k + 1; i < n; i++) {
      if (lu[i * n + k] === 0) continue
      const l = lu[i * n + k]! / pivot
      lu[i * n + k] = l // L(i,k) = A(i,k) / U(k,k)
      for (let j = k + 1; j < n; j++) lu[i * n + j] = lu[i * n + j]! - l * lu[k * n + j]! // A(i,:) -= L(i,k) U(k,:)
    }
  }
  return largest
}

/** Among rows k … end - 1 the one whose entry in column k stands out most from its own rounding; -1 where none does. */
function soundestReal(
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
    let met = Math.abs(a[p[i]! * n + k]!)
    for (let j = 0; j < k; j++) met += Math.abs(lu[i * n + j]! * lu[j * n + k]!) // |A(i,k)| + |L(i,:)| |U(:,k)|
    const share = Math.abs(lu[i * n + k]!) / met // 0/0 is no share
    if (share > most) {
      most = share
      best = i
    }
  }
  return best
}

function swapReal(lu: Float64Array, n: number, p: Int32Array, k: number, row: number): void {
  const place = p[k]!
  p[k] = p[row]!
  p[row] = place
  for (let j = 0; j < n; j++) {
    const value = lu[k * n + j]!
    lu[k * n + j] = lu[row * n + j]!
    lu[row * n + j] = value
  }
}

/** x = U⁻¹ L⁻¹ P b for the right side at `start` of `b`; `w` (n) is overwritten. */
export function solveReal(
  lu: Float64Array,
  n: number,
  p: Int32Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  for (let i = 0; i < n; i++) {
    let sum = b[start + p[i]!]!
    for (let j = 0; j < i; j++) sum -= lu[i * n + j]! * w[j]! // L w = P b
    w[i] = sum
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = w[i]!
    for (let j = i + 1; j < n; j++) sum -= lu[i * n + j]! * w[j]! // U x = w
    w[i] = sum / lu[i * n + i]!
  }
  for (let i = 0; i < n; i++) b[start + i] = w[i]!
}

/** x = Pᵀ L⁻ᵀ U⁻ᵀ b for the right side at `start` of `b`; `w` (n) is overwritten. */
export function solveTransposedReal(
  lu: Float64Array,
  n: number,
  p: Int32Array,
  b: Float64Array,
  start: number,
  w: Float64Array,
): void {
  for (let i = 0; i < n; i++) w[i] = b[start + i]!
  for (let k = 0; k < n; k++) {
    const z = w[k]! / lu[k * n + k]!
    w[k] = z
    for (let j = k + 1; j < n; j++) w[j] = w[j]! - lu[k * n + j]! * z // Uᵀ z = b
  }
  for (let k = n - 1; k > 0; k--) {
    const z = w[k]!
    for (let j = 0; j < k; j++) w[j] = w[j]! - lu[k * n + j]! * z // Lᵀ w = z
  }
  for (let i = 0; i < n; i++) b[start + p[i]!] = w[i]! // x = Pᵀ w
}

/** ‖A x − b‖∞ / (‖A‖∞ ‖x‖∞ n ε + tiny) */
export function residualReal(
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
    let rest = -b[i]!
    let row = 0
    for (let j = 0; j < n; j++) {
      rest += a[i * n + j]! * x[j]!
      row += Math.abs(a[i * n + j]!)
    }
    worst = Math.max(worst, Math.abs(rest)) // keeps NaN
    if (row > sizeOfA) sizeOfA = row
    if (Math.abs(x[i]!) > sizeOfX) sizeOfX = Math.abs(x[i]!)
  }
  const value = worst / (sizeOfA * sizeOfX * n * Number.EPSILON + tiny)
  return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value
}
