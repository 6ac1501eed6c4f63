/** Complex numbers of many digits. mathjs has none: a real and an imaginary part, each a number of its own. */
import type { Big } from './big.ts'
import type { Digits } from './digits.ts'

/** A complex number. */
export interface Pair {
  readonly re: Big
  readonly im: Big
}

/** Arithmetic on pairs. */
export interface Pairs {
  readonly digits: Digits
  readonly zero: Pair
  readonly one: Pair
  /** From doubles, each as the shortest decimal that means it. */
  of(re: number, im?: number): Pair
  real(re: Big): Pair
  /** j times a real number. */
  turned(im: Big): Pair
}

/** The pairs of a context. */
export function pairsOf(digits: Digits): Pairs {
  const nil = digits.of(0)
  const real = (re: Big): Pair => ({ re, im: nil })
  return {
    digits,
    zero: real(nil),
    one: real(digits.of(1)),
    of: (re, im = 0) => ({ re: digits.of(re), im: digits.of(im) }),
    real,
    turned: (im) => ({ re: nil, im }),
  }
}

/** p + q. */
export function plus(p: Pair, q: Pair): Pair {
  return { re: p.re.plus(q.re), im: p.im.plus(q.im) }
}

/** p − q. */
export function minus(p: Pair, q: Pair): Pair {
  return { re: p.re.minus(q.re), im: p.im.minus(q.im) }
}

/** p·q; parts that are nil cost nothing, so that direct current costs what real numbers do. */
export function times(p: Pair, q: Pair): Pair {
  if (p.im.isZero() && q.im.isZero()) return { re: p.re.times(q.re), im: p.im }
  if (p.im.isZero()) return { re: p.re.times(q.re), im: p.re.times(q.im) }
  if (p.re.isZero()) return { re: p.im.times(q.im).neg(), im: p.im.times(q.re) }
  return {
    re: p.re.times(q.re).minus(p.im.times(q.im)),
    im: p.re.times(q.im).plus(p.im.times(q.re)),
  }
}

/** −p. */
export function negative(p: Pair): Pair {
  return { re: p.re.neg(), im: p.im.neg() }
}

/** Whether p is 0. */
export function isNil(p: Pair): boolean {
  return p.re.isZero() && p.im.isZero()
}

/** |p| as a double, for choices and comparisons only. */
export function sizeOf(p: Pair): number {
  return Math.hypot(p.re.toNumber(), p.im.toNumber())
}
