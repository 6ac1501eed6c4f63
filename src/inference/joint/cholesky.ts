/** Small symmetric matrices, by rows. */

/**
 * The lower triangle L of A = L Lᵀ, over A itself. A is the identity plus something that is not negative.
 * @source Golub and Van Loan, Matrix Computations, section 4.2; from memory
 */
export function choleskyInPlace(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j] ?? 0
      for (let k = 0; k < j; k++) sum -= (a[i * n + k] ?? 0) * (a[j * n + k] ?? 0)
      a[i * n + j] = i === j ? Math.sqrt(Math.max(Number.MIN_VALUE, sum)) : sum / (a[j * n + j] ?? 1)
    }
  }
}

/** L⁻¹ b, over `out`; b is the n numbers of `from` at `at`. */
export function solveLower(
  l: Float64Array,
  n: number,
  from: Float64Array,
  at: number,
  out: Float64Array,
): void {
  for (let i = 0; i < n; i++) {
    let sum = from[at + i] ?? 0
    for (let k = 0; k < i; k++) sum -= (l[i * n + k] ?? 0) * (out[k] ?? 0)
    out[i] = sum / (l[i * n + i] ?? 1)
  }
}

/** L⁻ᵀ b, over b. */
export function solveUpperInPlace(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] ?? 0
    for (let k = i + 1; k < n; k++) sum -= (l[k * n + i] ?? 0) * (b[k] ?? 0)
    b[i] = sum / (l[i * n + i] ?? 1)
  }
}
