/** What is observed when anything might be: by whatever no hypothesis explains, and by a mistake. */
import type { Hypotheses } from './hypotheses.ts'
import { along } from './scale.ts'

/** How often whatever is not explained reads `open`. from memory: wires break more often than all else. */
export const OPEN_SHARE = 0.25
/** So far beyond what the hypotheses expect the range reaches at either end, on the scale: a factor of 20. */
const MARGIN = 3

/** Numbers are spread evenly over u from `least` to `most`, thinning out beyond by 1 / (1 + distance)². */
export interface Broad {
  readonly least: number
  readonly most: number
}

/** Ranges found so far: hypotheses never change, and there may be tens of thousands of them. */
const known = new WeakMap<Hypotheses, (Broad | undefined)[]>()

/**
 * The range of an observable: what its hypotheses expect, with a wide margin. Evenly over u is evenly over the
 * logarithm where x is much larger than the scale.
 */
export function broadOf(now: Hypotheses, observable: number): Broad {
  const among = now.origin ?? now
  const ranges = known.get(among) ?? []
  known.set(among, ranges)
  const found = ranges[observable] ?? rangeOf(among, observable)
  ranges[observable] = found
  return found
}

function rangeOf(among: Hypotheses, observable: number): Broad {
  let [least, most] = [0, 0]
  for (let k = 0; k < among.count; k++) {
    const x = among.expected[k * among.observables.length + observable] ?? Number.NaN
    if (!Number.isFinite(x)) continue
    least = Math.min(least, x)
    most = Math.max(most, x)
  }
  const seen = among.observables[observable]
  const at = (x: number): number => (seen === undefined ? 0 : along(seen, x))
  return { least: least < 0 ? at(least) - MARGIN : 0, most: at(most) + MARGIN }
}

/** Natural logarithm of the density at u. */
export function logBroadDensity({ least, most }: Broad, u: number): number {
  const beyond = Math.max(0, least - u, u - most)
  return Math.log1p(-OPEN_SHARE) - Math.log(most - least + 2) - 2 * Math.log1p(beyond)
}

/** The probability of a number below u. */
export function broadBelow({ least, most }: Broad, u: number): number {
  const all = most - least + 2
  const share =
    u < least ? 1 / (1 + least - u) / all : u > most ? 1 - 1 / (1 + u - most) / all : (1 + u - least) / all
  return (1 - OPEN_SHARE) * share
}
