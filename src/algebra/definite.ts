/** Larger matrices have no place here: a coil with more windings is a slip. */
const mostOrder = 16
/** Each sweep at least squares the smallness of what is left; six are usual. */
const mostSweeps = 40

/**
 * The least eigenvalue of a symmetric matrix, by Jacobi rotations on a copy. Positive means definite.
 * Absolute error about n ε times the largest eigenvalue in size.
 *
 * @param symmetric n·n values by rows; the lower triangle is not read
 * @param n 1 … 16
 * @throws RangeError for another n, a wrong length, or a value that is not finite
 * @source cyclic Jacobi method: Golub and Van Loan, Matrix Computations, section 8.5 (from memory)
 */
export function leastEigenvalue(symmetric: Float64Array, n: number): number {
  if (!Number.isInteger(n) || n < 1 || n > mostOrder)
    throw new RangeError(`order ${n}: 1 to ${mostOrder} is possible`)
  if (symmetric.length !== n * n)
    throw new RangeError(`${symmetric.length} values are no matrix of order ${n}`)
  if (!symmetric.every(Number.isFinite)) throw new RangeError('the matrix holds a value that is not finite')
  const a = symmetric.slice()
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) a[i * n + j] = a[j * n + i]!
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let rotated = false
    for (let p = 0; p < n - 1; p++) for (let q = p + 1; q < n; q++) rotated = rotate(a, n, p, q) || rotated
    if (!rotated) break
  }
  let least = a[0]!
  for (let i = 1; i < n; i++) least = Math.min(least, a[i * n + i]!)
  return least
}

/** A = Jᵀ A J with the plane rotation that makes A(p,q) zero; `false` where it is zero beside the diagonal already. */
function rotate(a: Float64Array, n: number, p: number, q: number): boolean {
  const apq = a[p * n + q]!
  const app = a[p * n + p]!
  const aqq = a[q * n + q]!
  if (Math.abs(app) + Math.abs(apq) === Math.abs(app) && Math.abs(aqq) + Math.abs(apq) === Math.abs(aqq))
    return false
  const theta = (aqq - app) / (2 * apq) // cot 2φ
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(1, theta)) // tan φ, the smaller root
  const c = 1 / Math.hypot(1, t)
  const s = t * c
  for (let k = 0; k < n; k++) {
    if (k === p || k === q) continue
    const akp = a[k * n + p]!
    const akq = a[k * n + q]!
    a[k * n + p] = c * akp - s * akq // columns p and q turn into each other, and so do the rows
    a[k * n + q] = s * akp + c * akq
    a[p * n + k] = a[k * n + p]!
    a[q * n + k] = a[k * n + q]!
  }
  a[p * n + p] = app - t * apq // so that 1 ± k comes out without rounding in c and s
  a[q * n + q] = aqq + t * apq
  a[p * n + q] = 0
  a[q * n + p] = 0
  return true
}
