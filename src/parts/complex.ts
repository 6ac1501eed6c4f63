/** Complex numbers, for the few laws that need more than a reactance. */

/** re + j·im. */
export interface Complex {
  readonly re: number
  readonly im: number
}

/** p·q. */
export function multiply(p: Complex, q: Complex): Complex {
  return { re: p.re * q.re - p.im * q.im, im: p.re * q.im + p.im * q.re }
}

/** p/q, scaled so that the square of a large q does not overflow; not finite when q is 0. */
export function divide(p: Complex, q: Complex): Complex {
  const scale = Math.max(Math.abs(q.re), Math.abs(q.im))
  const re = q.re / scale
  const im = q.im / scale
  const size = (re * re + im * im) * scale
  return { re: (p.re * re + p.im * im) / size, im: (p.im * re - p.re * im) / size }
}

/** The square root with a real part at or above 0. */
export function rootOf({ re, im }: Complex): Complex {
  const size = Math.hypot(re, im)
  if (size === 0) return { re: 0, im: 0 }
  // the half with the sum is computed first, the other from the product: no cancellation on either axis
  const large = Math.sqrt((size + Math.abs(re)) / 2)
  const small = Math.abs(im) / (2 * large)
  const [x, y] = re >= 0 ? [large, small] : [small, large]
  return { re: x, im: im < 0 ? -y : y }
}
