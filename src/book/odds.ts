/** How likely faults are, what finding out costs and how often people are mistaken: data of `netlists/odds.yaml`. */
import * as z from 'zod/mini'
import { quantity } from '../parts/fields.ts'
import type { Quantity } from '../quantities/quantity.ts'
import { readDelivered } from '../sheet/delivered.ts'

const weighed = z.strictObject({ weight: z.number().check(z.positive()), source: z.string() })
const likely = z.strictObject({ probability: z.number().check(z.gt(0), z.lt(1)), source: z.string() })
const costs = z.strictObject({ effort: z.number().check(z.positive()), source: z.string() })

/** Faults of the wiring, which no part's own file knows. */
const WIRING_FAULTS = [
  'cores-crossed',
  'core-one-off',
  'core-parked',
  'cores-touching',
  'strap-missing',
  'strap-extra',
  'unit-missing',
  'damp',
  'pair-reversed',
  'socket-pair-reversed',
  'wire-broken',
  'wire-earthed',
] as const
export type WiringFault = (typeof WIRING_FAULTS)[number]
/** Ways of finding out that cost different effort. */
const EFFORTS = ['in-use', 'in-use-helped', 'outside', 'outside-live', 'inside', 'lifted'] as const
export type Effort = (typeof EFFORTS)[number]

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  faults: z.record(z.enum(WIRING_FAULTS), weighed),
  'damp-resistance': z.strictObject({
    value: quantity('resistance', { above: 0 }) as z.ZodMiniType<Quantity>,
    source: z.string(),
  }),
  severity: z.strictObject({
    ohms: z.number().check(z.gt(1)),
    values: z.number().check(z.gt(0), z.lt(1)),
    source: z.string(),
  }),
  sound: weighed,
  none: likely,
  pairs: likely,
  efforts: z.record(z.enum(EFFORTS), costs),
  slips: z.strictObject({ heard: likely, read: likely }),
})

/** Cases among a thousand old sets that come to the bench. */
export interface Weighed {
  readonly weight: number
  readonly source: string
}

/** A probability. */
export interface Likely {
  readonly probability: number
  readonly source: string
}

/** How much the sizes of faults differ from those of the book: one standard deviation. */
export interface Severity {
  /** The factor of a resistance, up and down. */
  readonly ohms: number
  /** By what share a value lies further from the sheet's, or less far, than the book has it. */
  readonly values: number
  readonly source: string
}

/** The table; each line with its source. */
export interface Odds {
  readonly faults: Readonly<Record<WiringFault, Weighed>>
  /** ohms */
  readonly 'damp-resistance': { readonly value: Quantity; readonly source: string }
  readonly severity: Severity
  /** That nothing is wrong with the set. */
  readonly sound: Weighed
  /** That it is something which the book does not hold. */
  readonly none: Likely
  /** That a set has two faults at once. */
  readonly pairs: Likely
  /** Minutes of a practised hand. */
  readonly efforts: Readonly<Record<Effort, { readonly effort: number; readonly source: string }>>
  /** How often people are mistaken in what they hear, and in what they read. */
  readonly slips: { readonly heard: Likely; readonly read: Likely }
}

/** Reads the table; a broken one is a mistake of the installation. @throws ProblemError `syntax` */
export function readOdds(text: string, file: string): Odds {
  return readDelivered(SCHEMA, text, file, 'odds')
}
