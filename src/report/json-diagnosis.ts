/** The shape of `diagnose/1`. */
import * as z from 'zod/mini'
import { CONDITION } from './json-parts.ts'

const text = z.string()
const texts = z.array(text)
const count = z.number().check(z.int(), z.minimum(0))
const probability = z.number().check(z.minimum(0), z.maximum(1))
const unit = z.enum(['Ω', 'F', 'V', '1'])
const named = z.strictObject({ test: text, asks: text })

const seen = z.strictObject({
  answers: z.optional(texts),
  says: z.optional(text),
  value: z.optional(z.nullable(z.number())),
  state: z.optional(z.literal('open')),
  unit,
})

const group = z.strictObject({
  probability,
  size: count,
  causes: z.array(z.strictObject({ faults: texts, says: text, sign: text, mend: text, probability })),
  apart: z.optional(named),
})

const weighed = z.strictObject({
  test: text,
  asks: text,
  observed: seen,
  leading: z.nullable(seen),
  sound: z.nullable(seen),
  speaks: z.enum(['for', 'against', 'neither']),
  ratio: z.number(),
})

const outcome = z.strictObject({
  answer: z.optional(text),
  says: z.optional(text),
  least: z.optional(z.number()),
  most: z.optional(z.number()),
  state: z.optional(z.literal('open')),
  probability,
  points: z.array(z.strictObject({ says: text, size: count, probability })),
})

const next = z.strictObject({
  test: text,
  asks: text,
  how: text,
  site: z.enum(['in-use', 'outside', 'inside']),
  live: z.boolean(),
  condition: CONDITION,
  unit,
  effort: z.number(),
  bits: z.number(),
  cautions: texts,
  outcomes: z.array(outcome),
})

/** What `diagnose/1` holds between its head and its problems. */
export const DIAGNOSIS: Readonly<Record<string, z.ZodMiniType>> = {
  outcome: z.literal('answered'),
  place: text,
  instrument: text,
  counts: z.strictObject({ faults: count, pairs: z.optional(count), tests: count }),
  decided: z.enum(['sure', 'asking', 'nothing-tells']),
  groups: z.array(group),
  none: probability,
  evidence: z.array(weighed),
  skipped: z.array(named),
  next: z.optional(next),
  cautions: texts,
}
