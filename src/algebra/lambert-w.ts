/**
 * Lambert's W of eˣ: the w > 0 with w + ln w = x. Written for the exponent, it serves where eˣ itself would overflow.
 * @param x any finite number; below −745 w is eˣ, which is 0 there
 * @returns w to a few units in the last place
 * @source Corless, Gonnet, Hare, Jeffrey, Knuth: On the Lambert W function (1996), from memory; Halley's iteration
 */
export function lambertOfExp(x: number): number {
  if (x < -37) return Math.exp(x) // w = eˣ·e^−w, and e^−w is 1 to the last place
  let w = x > 1 ? x - Math.log(x) : Math.log1p(Math.exp(x)) / (1 + 0.5 * Math.log1p(Math.exp(x)))
  for (let step = 0; step < 8; step += 1) {
    // f = w + ln w − x, f′ = (w + 1)/w, f″ = −1/w²
    const f = w + Math.log(w) - x
    const first = (w + 1) / w
    const change = f / (first + f / (2 * w * w * first))
    const next = w - change
    w = next > 0 ? next : w / 2
    if (Math.abs(change) <= 1e-15 * w) break
  }
  return w
}
