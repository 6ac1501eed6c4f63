/** Powers for laws that are asked far outside their range on the way to an answer. */

/** Beyond e to this power a power is continued along its tangent, so that no number ever overflows. */
const MOST = 200

/** A function's value and slope at a point. */
export interface Tangent {
  readonly value: number
  readonly slope: number
}

/** sgn(x)·|x|^α and its slope, α ≥ 1; beyond e²⁰⁰ the tangent there goes on. */
export function oddPower(x: number, alpha: number): Tangent {
  const size = Math.abs(x)
  if (size === 0) return { value: 0, slope: alpha === 1 ? 1 : 0 }
  if (alpha * Math.log(size) <= MOST) {
    const value = size ** alpha
    return { value: x < 0 ? -value : value, slope: (alpha * value) / size }
  }
  const edge = Math.exp(MOST / alpha)
  const top = Math.exp(MOST)
  const slope = (alpha * top) / edge
  const value = top + slope * (size - edge)
  return { value: x < 0 ? -value : value, slope }
}

/** eˣ − 1 and its slope; beyond x = 200 the tangent there goes on. */
export function growth(x: number): Tangent {
  if (x <= MOST) return { value: Math.expm1(x), slope: Math.exp(x) }
  const slope = Math.exp(MOST)
  return { value: Math.expm1(MOST) + slope * (x - MOST), slope }
}
