/**
 * The two functions of a uniform line, of w = θ² where θ = γl. Both are even in θ, so that no choice of a
 * root enters; both are whole at 0, so that one code does 0 Hz, 0 km and no losses.
 */
import { type Complex, divide, multiply, rootOf } from './complex.ts'

/** Below this |w| the power series is used: ten terms leave less than 1e-20 there. */
const SERIES_BELOW = 1
const TERMS = 10

/**
 * sinh(θ)/θ.
 * @param w θ²; Re θ at most 700, above which it overflows
 */
export function sinhc(w: Complex): Complex {
  if (Math.hypot(w.re, w.im) < SERIES_BELOW) return series(w, (k) => 2 * k * (2 * k + 1)) // Σ wᵏ/(2k + 1)!
  const theta = rootOf(w)
  const sinh = {
    re: Math.sinh(theta.re) * Math.cos(theta.im),
    im: Math.cosh(theta.re) * Math.sin(theta.im),
  }
  return divide(sinh, theta)
}

/**
 * tanh(θ/2)/(θ/2). It has a pole where a line without losses is half a wave long or an odd multiple of it.
 * @param w θ²
 */
export function tanhcHalf(w: Complex): Complex {
  if (Math.hypot(w.re, w.im) < SERIES_BELOW) {
    const quarter = { re: w.re / 4, im: w.im / 4 }
    return divide(
      series(quarter, (k) => 2 * k * (2 * k + 1)),
      series(quarter, (k) => 2 * k * (2 * k - 1)), // Σ wᵏ/(2k)!
    )
  }
  const theta = rootOf(w)
  const fall = Math.exp(-theta.re)
  // tanh(x + jy) = (sinh 2x + j sin 2y)/(cosh 2x + cos 2y), all times e^{−2x}; 1 + cos 2y is 2 cos² y
  const below = Math.expm1(-theta.re) ** 2 / 2 + 2 * fall * Math.cos(theta.im / 2) ** 2
  const tanh = {
    re: -Math.expm1(-2 * theta.re) / 2 / below,
    im: (fall * Math.sin(theta.im)) / below,
  }
  const half = divide(tanh, theta)
  return { re: 2 * half.re, im: 2 * half.im }
}

/** Σ wᵏ/(d(1)·…·d(k)), from the last term to the first. */
function series(w: Complex, d: (k: number) => number): Complex {
  let re = 1
  let im = 0
  for (let k = TERMS; k >= 1; k -= 1) {
    const product = multiply({ re, im }, w)
    re = 1 + product.re / d(k)
    im = product.im / d(k)
  }
  return { re, im }
}
