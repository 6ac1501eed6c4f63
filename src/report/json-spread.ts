/** The schema of the answer to `spread`. */
import * as z from 'zod/mini'
import { CONDITION, FIGURE, LIMIT } from './json-parts.ts'

const text = z.string()
const share = z.number().check(z.minimum(0), z.maximum(1.000001))
const count = z.number().check(z.int(), z.minimum(0))
const state = z.enum(['holds', 'marginal', 'fails', 'unknown'])

const part = z.strictObject({ part: text, share })

const figure = z.strictObject({
  figure: FIGURE,
  by: z.optional(z.enum(['adjoint', 'differences'])),
  worst: z.optional(z.strictObject({ least: z.number(), most: z.number(), steady: z.boolean() })),
  percentiles: z.optional(z.strictObject({ '5': z.number(), '50': z.number(), '95': z.number() })),
  lost: count,
  pulls: z.array(z.strictObject({ value: text, part: text, 'for one per cent': z.number(), share })),
  parts: z.array(part),
})

const verdict = z.strictObject({
  check: text,
  subject: text,
  condition: CONDITION,
  stated: state,
  state,
  figure: FIGURE,
  limit: LIMIT,
  worst: z.nullable(
    z.strictObject({
      value: z.nullable(z.number()),
      limit: z.nullable(z.number()),
      rests: z.optional(z.strictObject({ id: text, subject: text, unit: text })),
    }),
  ),
  fails: z.nullable(share),
  decides: z.optional(part),
})

const aged = z.strictObject({
  years: z.number(),
  changes: z.array(
    z.strictObject({
      part: text,
      value: text,
      parts: count,
      factor: z.optional(z.number()),
      seconds: z.optional(z.number()),
      source: text,
    }),
  ),
})

const value = z.strictObject({
  id: text,
  part: text,
  value: z.number(),
  least: z.number(),
  most: z.number(),
  unit: text,
})

/** What stands in the answer besides its head. */
export const SPREAD: Readonly<Record<string, z.ZodMiniType>> = {
  outcome: z.literal('answered'),
  aged: z.optional(aged),
  values: z.array(value),
  'without tolerance': count,
  figures: z.array(figure),
  verdicts: z.array(verdict),
  'not followed': z.array(z.strictObject({ check: text, subject: text, state, reason: z.optional(text) })),
}
