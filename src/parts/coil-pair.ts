import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe } from './ends.ts'
import { plain, quantity, yesNo } from './fields.ts'

/** Two equal coils on one magnet and the link that joins them. */
export interface CoilPair {
  /** Of each coil alone, ohms and henries. */
  readonly resistance: Quantity
  readonly inductance: Quantity
  readonly joined: 'series' | 'parallel'
  /** The link is on the wrong end of one coil: the coils work against each other. */
  readonly turned?: boolean
  /** 0.9 when absent. */
  readonly coupling?: number
}

/** Coupling of a bell's two coils where the sheet is silent: they share the iron of one yoke. From memory. */
export const USUAL_COUPLING = 0.9

/** The pair as one coil, ohms and henries. */
export interface WholeCoil {
  readonly resistance: number
  readonly inductance: number
}

/**
 * Equal coils are R/2 and L(1 ± k)/2 in parallel, 2R and 2L(1 ± k) in series, exactly; − where one is turned.
 * @source closed form: M = kL in v = L di/dt ± M di/dt for both coils
 */
export function wholeOf({ resistance, inductance, joined, turned, coupling }: CoilPair): WholeCoil {
  const k = coupling ?? USUAL_COUPLING
  const times = joined === 'series' ? 2 : 0.5
  return {
    resistance: times * resistance.value,
    inductance: times * inductance.value * (turned === true ? 1 - k : 1 + k),
  }
}

/** The schema of a pair of coils. */
export function coilPair(): z.ZodMiniType<CoilPair> {
  return z.strictObject({
    resistance: describe(quantity('resistance'), 'direct-current resistance of each coil'),
    inductance: describe(quantity('inductance', { above: 0 }), 'inductance of each coil alone'),
    joined: describe(z.enum(['series', 'parallel']), 'how the link joins the two coils'),
    turned: z.optional(
      describe(yesNo(), 'yes: the link is on the wrong end of one coil, which works against the other'),
    ),
    coupling: z.optional(
      describe(plain(0, 0.9999), `coupling factor of the two coils; ${USUAL_COUPLING} when absent`),
    ),
  }) as unknown as z.ZodMiniType<CoilPair>
}
