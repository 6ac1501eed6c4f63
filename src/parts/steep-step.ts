/** How far Newton may step along a law that rises steeply. */

/** Two x so near each other are taken as one, so that what has come to rest is left alone. */
const ALIKE = 1e-6

/** A law y = f(x), rising and bent upwards for x > 0, and the x beyond which it counts as steep. */
export interface SteepLaw {
  /** x at y, for y ≥ 0. */
  inverse(y: number): number
  readonly knee: number
}

/**
 * The next x of Newton's method where the tangent's answer (x, y) lies up a steep law. Up to the knee and on the way
 * down x is believed. Up beyond it the tangent's y is believed and x is what the law itself has there: since the
 * law bends upwards, that is the smaller step, and it stays on the near side of the answer.
 *
 * @param before the last x @param x the tangent's answer @param y what the tangent carries there
 * @param odd whether the law is the same below zero, turned over; else only x > 0 is steep
 * @returns a value between `before` and `x`
 */
export function steepStep(law: SteepLaw, before: number, x: number, y: number, odd: boolean): number {
  const side = odd && x < 0 ? -1 : 1
  const far = side * x
  const near = side * before
  if (far <= Math.max(near, law.knee)) return x
  const believed = Math.max(near, law.knee, law.inverse(Math.max(0, side * y)))
  return believed >= far * (1 - ALIKE) ? x : side * believed
}
