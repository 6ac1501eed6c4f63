/**
 * The innermost step of factors and solutions. Kernels call it for the first entries of a column one after the other and only then in a loop: most columns are
 * short, and in a straight line V8 looks up an array once, in a loop at every turn. Places are summed as 32 bits
 * (`| 0`), which saves its checks for overflow. Together a fifth of a factorisation; a loop around the whole in a
 * function of its own would be too long for V8 to put in its place, and lose it again.
 */

/** to(i) -= from(j) · u */
export function subtractReal(to: Float64Array, i: number, from: Float64Array, j: number, u: number): void {
  to[i] = to[i]! - from[j]! * u
}

/** to(i) -= from(j) · (re + j im), interleaved. */
export function subtractComplex(
  to: Float64Array,
  i: number,
  from: Float64Array,
  j: number,
  re: number,
  im: number,
): void {
  const next = (i + 1) | 0
  const fr = from[j]!
  const fi = from[(j + 1) | 0]!
  const tr = to[i]!
  const ti = to[next]!
  to[i] = tr - (fr * re - fi * im)
  to[next] = ti - (fr * im + fi * re)
}
