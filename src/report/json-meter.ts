/** The shape of `meter/1`. */
import * as z from 'zod/mini'
import { CONDITION } from './json-parts.ts'

const text = z.string()
const texts = z.array(text)
const band = z.strictObject({ least: z.number(), most: z.nullable(z.number()) })

const reading = z.strictObject({
  id: z.enum([
    'meter.ohms',
    'meter.buzz',
    'meter.diode',
    'meter.capacitance',
    'meter.volts',
    'meter.alternating-volts',
  ]),
  red: text,
  black: text,
  condition: CONDITION,
  range: text,
  value: z.nullable(z.number()),
  unit: z.enum(['Ω', 'V', 'F']),
  state: z.optional(z.enum(['open', 'undetermined', 'beyond-range', 'no-convergence'])),
  floating: z.optional(z.boolean()),
  'full scale': z.number(),
  resolution: z.optional(z.number()),
  band: z.optional(band),
  spread: z.optional(z.strictObject({ interval: band, worst: band, exact: z.boolean() })),
  phase: z.optional(z.number()),
  peak: z.optional(z.strictObject({ between: z.optional(z.number()), 'to earth': z.optional(z.number()) })),
  buzzes: z.optional(z.boolean()),
  current: z.number(),
  kick: z.optional(z.strictObject({ reaches: z.number(), rests: z.number(), seconds: z.number() })),
  heard: z.array(
    z.strictObject({
      branch: text,
      current: z.number(),
      says: z.enum(['click', 'scrape']),
      loud: z.optional(z.boolean()),
    }),
  ),
  path: texts,
  parts: texts,
  contacts: texts,
  beside: texts,
  blind: z.array(z.strictObject({ branch: text, says: text, current: z.optional(z.number()) })),
  remarks: texts,
  live: z.boolean(),
  approximate: z.optional(text),
  residual: z.number(),
})

/** What `meter/1` holds between its head and its problems. */
export const METER: Readonly<Record<string, z.ZodMiniType>> = {
  outcome: z.literal('answered'),
  instrument: z.strictObject({
    name: text,
    says: text,
    source: text,
    'red lead': z.enum(['positive', 'negative']),
    'shows by': z.enum(['digits', 'needle']),
  }),
  place: text,
  what: z.enum(['one', 'table', 'live']),
  points: z.array(z.strictObject({ name: text, ids: texts, colours: z.record(text, text) })),
  readings: z.array(reading),
  cords: z.array(
    z.strictObject({
      cord: text,
      cores: texts,
      loose: z.boolean(),
      readings: z.array(reading),
      groups: z.array(texts),
      alike: z.array(z.array(texts)),
    }),
  ),
  'not told': texts,
  cautions: texts,
  markings: z.array(
    z.strictObject({
      part: text,
      value: z.number(),
      bands: z.optional(texts),
      preferred: z.optional(z.number()),
    }),
  ),
}
