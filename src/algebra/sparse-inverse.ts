/** Squares between these neither overflow nor lose digits. */
const smallest = 1e-280
const largest = 1e280

/** v(to) = 1 / (re + j im), interleaved. */
export function invertAt(v: Float64Array, to: number, re: number, im: number): void {
  const square = re * re + im * im
  if (square > smallest && square < largest) {
    const inverse = 1 / square
    v[to] = re * inverse
    v[to + 1] = -im * inverse
  } else if (Math.abs(re) >= Math.abs(im)) {
    const share = im / re // by the smaller over the larger part, so that nothing is squared
    const whole = 1 / (re + im * share)
    v[to] = whole
    v[to + 1] = -share * whole
  } else {
    const share = re / im
    const whole = 1 / (re * share + im)
    v[to] = share * whole
    v[to + 1] = -whole
  }
}
