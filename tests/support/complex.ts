/** A complex number; everything in it that is alternating is an rms phasor. */
export interface Complex {
  readonly re: number
  readonly im: number
}

/** A reading of a solve: a plain number for direct current, a phasor for alternating. */
export type Value = number | Complex

/** The value as a complex number. */
export function complex(value: Value): Complex {
  return typeof value === 'number' ? { re: value, im: 0 } : value
}

/** The phasor of a modulus and an angle in degrees; multiples of a right angle are exact. */
export function polar(modulus: number, degrees: number): Complex {
  const turn = ((degrees % 360) + 360) % 360
  if (turn % 90 === 0) {
    const sign = turn < 180 ? 1 : -1
    return turn % 180 === 0 ? { re: sign * modulus, im: 0 } : { re: 0, im: sign * modulus }
  }
  const angle = (degrees * Math.PI) / 180
  return { re: modulus * Math.cos(angle), im: modulus * Math.sin(angle) }
}

export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im }
}

export function subtract(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im }
}

export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re }
}

/** a / b by Smith's method, which neither overflows nor loses the smaller part. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const r = b.im / b.re
    const d = b.re + b.im * r
    return { re: (a.re + a.im * r) / d, im: (a.im - a.re * r) / d }
  }
  const r = b.re / b.im
  const d = b.re * r + b.im
  return { re: (a.re * r + a.im) / d, im: (a.im * r - a.re) / d }
}

export function conjugate(a: Complex): Complex {
  return { re: a.re, im: -a.im }
}

export function modulus(a: Complex): number {
  return Math.hypot(a.re, a.im)
}

export function degrees(a: Complex): number {
  return (Math.atan2(a.im, a.re) * 180) / Math.PI
}
