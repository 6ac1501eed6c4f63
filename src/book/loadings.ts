/** What a spread is made of: by how much each value that is not known moves each score. */
import type { Netlist } from '../netlist/netlist.ts'
import { type Drift, driftsOf } from './tolerances.ts'

/**
 * Values that are not known, of one book. Straight ones are the parts' tolerances, in the order of `driftsOf`; they move
 * u in proportion. Curved ones spread over decades, and u bends: first the fault's own size, then each carbon transmitter.
 */
export interface Latents {
  readonly straight: number
  readonly curved: number
}

/** What all of them do in a book. */
export interface Loadings extends Latents {
  /**
   * For each row and test `straight` steps of u for one standard deviation up, then for each curved value four, for
   * −2, −1, 1 and 2 standard deviations. 0 where the row's score is no number. In single precision, whose seven digits
   * are more than any meter's.
   */
  readonly steps: Float32Array
}

/** Where on a curve u is worked out, in standard deviations. */
export const PLACES: readonly number[] = [-2, -1, 1, 2]

/** Steps that a row has for one test. */
export function stepsEach({ straight, curved }: Latents): number {
  return straight + PLACES.length * curved
}

/** The values of a network that are not known, those that move u in proportion and the carbon transmitters. */
export interface Unknown extends Latents {
  readonly steady: readonly Drift[]
  readonly shaken: readonly Drift[]
}

/** Parts the values of a network. */
export function unknownOf(net: Netlist, transmitterSpread: number): Unknown {
  const all = driftsOf(net, transmitterSpread)
  const shaken = all.filter((drift) => drift.shaken)
  const steady = all.filter((drift) => !drift.shaken)
  return { steady, shaken, straight: steady.length, curved: 1 + shaken.length }
}

/**
 * Steps of one curve from the scores' u; NaN and infinities, where a score is no number, are taken as if the curve
 * went on straight.
 */
export function mendCurve(steps: Float32Array, at: number): void {
  const [low = 0, down = 0, up = 0, high = 0] = steps.subarray(at, at + PLACES.length)
  const one = Number.isFinite(up) ? up : Number.isFinite(down) ? -down : 0
  const back = Number.isFinite(down) ? down : -one
  steps.set([Number.isFinite(low) ? low : 2 * back, back, one, Number.isFinite(high) ? high : 2 * one], at)
}
