/** The shape of `faults/1`. */
import * as z from 'zod/mini'
import { CONDITION } from './json-parts.ts'

const text = z.string()
const texts = z.array(text)
const count = z.number().check(z.int(), z.minimum(0))

const notice = z.strictObject({ test: text, asks: text, answer: text, says: text })

const shown = z.strictObject({
  value: z.nullable(z.number()),
  state: z.optional(z.enum(['open', 'undetermined', 'no-convergence'])),
})

const telling = z.strictObject({
  test: text,
  asks: text,
  how: text,
  site: z.enum(['in-use', 'outside', 'inside']),
  live: z.boolean(),
  condition: CONDITION,
  unit: z.enum(['Ω', 'F', 'V', '1']),
  resolution: z.number(),
  sound: shown,
  faulty: shown,
  clearness: z.number(),
})

const row = z.strictObject({
  fault: text,
  subjects: texts,
  family: text,
  says: text,
  sign: text,
  mend: text,
  weight: z.number(),
  source: text,
  notices: z.array(notice),
  tells: z.array(telling),
})

const two = z.tuple([text, text])

/** What `faults/1` holds between its head and its problems. */
export const FAULT_BOOK: Readonly<Record<string, z.ZodMiniType>> = {
  outcome: z.literal('answered'),
  place: text,
  instrument: text,
  counts: z.strictObject({
    faults: count,
    matching: count,
    'moving nothing': count,
    symptoms: count,
    readings: count,
  }),
  sound: z.array(notice),
  faults: z.array(row),
  'moving nothing': z.array(row),
  pairs: z.optional(
    z.strictObject({
      count,
      matching: count,
      'only together': count,
      likeliest: z.array(z.strictObject({ faults: two, says: two, notices: z.array(notice) })),
    }),
  ),
  cautions: texts,
}
