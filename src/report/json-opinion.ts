/** The schema of a second opinion. */
import * as z from 'zod/mini'
import { CONDITION } from './json-parts.ts'

const text = z.string()
const count = z.number().check(z.int(), z.minimum(0))

const difference = z.strictObject({
  at: text,
  unit: z.enum(['V', 'A']),
  absolute: z.number(),
  relative: z.number(),
  analysis: z.enum(['direct', 'alternating']),
  frequency: z.nullable(z.number()),
  condition: CONDITION,
})

const figure = z.strictObject({
  id: text,
  subject: text,
  unit: z.enum(['Ω', 'A', 'V', '1', 'dB', 'VA']),
  value: z.number(),
  second: z.number(),
  relative: z.number(),
})

/** Digits are texts: no number of JSON holds forty of them. */
const digits = z.nullable(z.union([text, z.strictObject({ re: text, im: text })]))

/** The key that answers with a second opinion have. */
export const SECOND_OPINION: { readonly 'second opinion': z.ZodMiniOptional<z.ZodMiniType> } = {
  'second opinion': z.optional(
    z.strictObject({
      method: text,
      digits: z.nullable(count),
      questions: count,
      unknowns: count,
      compared: count,
      largest: z.nullable(difference),
      'as doubles': z.array(text),
      'about our point': z.array(text),
      figures: z.optional(z.array(figure)),
      voltages: z.optional(z.record(text, digits)),
      currents: z.optional(z.record(text, digits)),
    }),
  ),
}
