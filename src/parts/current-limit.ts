/**
 * A leg of a feed that limits its current: v = R·i + e up to ±I, and above that ±I at whatever voltage.
 * The law is three straight pieces, so that Newton's tangent is the piece itself and one step on the right piece
 * is exact; `settleLimited` chooses the next piece.
 */
import type { LawSink, Working } from './kind.ts'

/** What the law needs: ohms, volts of V(from) − V(to) at no current, and amperes. */
export interface Limiter {
  readonly resistance: number
  readonly direct: number
  readonly limit: number
}

/** Relative slack with which a current counts as limited; the voltage beyond the corner decides the rest. */
const SLACK = 1e-9

/** The voltage at which ±I is reached from below. */
function corner({ resistance, direct, limit }: Limiter, sign: 1 | -1): number {
  return direct + sign * (resistance * limit)
}

/** In which direction the leg limits at a point: 1 from `from` to `to`, −1 against it, 0 not at all. */
export function limiting(leg: Limiter, { voltage, current }: Working): -1 | 0 | 1 {
  for (const sign of [1, -1] as const) {
    const beyond = sign * (voltage - corner(leg, sign)) >= 0
    if (beyond && sign * current >= leg.limit * (1 - SLACK)) return sign
  }
  return 0
}

/** The tangent at a point of direct current; at rest the feed's resistance. */
export function limitedLaw(leg: Limiter, at: Working | undefined, sink: LawSink): void {
  const sign = at === undefined ? 0 : limiting(leg, at)
  if (sign === 0) sink.equation(0, 1, leg.resistance, 0, leg.direct)
  else sink.equation(0, 0, 1, 0, -sign * leg.limit) // −i = ∓I
}

/**
 * Newton's next point on the law. A tangent that gives more than the limit leads to the corner of the limited
 * piece; a limited leg whose voltage falls short of the corner goes back to its resistance.
 */
export function settleLimited(leg: Limiter, next: Working, before: Working): Working {
  const was = limiting(leg, before)
  if (was !== 0) {
    const beyond = was * (next.voltage - corner(leg, was)) >= 0
    // short of the corner: any current below the limit stands for the resistive piece
    return beyond ? next : { voltage: next.voltage, current: 0 }
  }
  for (const sign of [1, -1] as const) {
    if (sign * next.current <= leg.limit) continue
    const edge = corner(leg, sign)
    const voltage = sign * (next.voltage - edge) >= 0 ? next.voltage : edge
    return { voltage, current: sign * leg.limit }
  }
  return next
}
