/** Values within their tolerances, each of them one standard deviation above what its sheet states. */
import { looseValues, specScaled } from '../meter/vary.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'

/** A value that spreads: which part holds it, where in its spec, and the factor of one standard deviation. */
export interface Drift {
  readonly part: number
  readonly path: readonly string[]
  readonly factor: number
  /** Whether it is a carbon transmitter's: log-normal, over decades. */
  readonly shaken: boolean
}

/** A stated tolerance is taken as so many standard deviations: nearly all parts lie within it. From memory. */
const DEVIATIONS = 3

/**
 * Every value that is stated within limits, of the set, of its sockets and of its line. They are taken as normal, a
 * carbon transmitter's as log-normal. A value without a tolerance does not spread.
 *
 * @param transmitterSpread the factor within which a carbon transmitter reads, up and down
 */
export function driftsOf(net: Netlist, transmitterSpread: number): readonly Drift[] {
  return looseValues(net, transmitterSpread).map(({ part, path, unit, most }) => {
    const shaken = net.parts[part]?.role === 'sender' && unit === 'Ω'
    return { part, path, shaken, factor: shaken ? most ** (1 / DEVIATIONS) : 1 + (most - 1) / DEVIATIONS }
  })
}

/**
 * A part's spec with the value drifted by so many standard deviations; a shaken one by powers of its factor. A fault
 * that brings the part other values drifts with them.
 */
export function drifted(spec: PartSpec, { path, factor, shaken }: Drift, deviations: number = 1): PartSpec {
  return specScaled(spec, path, shaken ? factor ** deviations : 1 + deviations * (factor - 1))
}
