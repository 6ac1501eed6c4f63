/** The shape of `identify/1`. */
import * as z from 'zod/mini'

const text = z.string()
const texts = z.array(text)
const count = z.number().check(z.int(), z.minimum(0))
const share = z.number().check(z.minimum(0), z.maximum(1))
const maybe = <T>(of: z.ZodMiniType<T>) => z.optional(of)

const set = z.strictObject({ name: text, set: text, rewire: maybe(text), unit: maybe(z.nullable(text)) })
const difference = { what: text, first: text, other: text }
const fit = z.strictObject({ says: maybe(text), ohms: maybe(z.number()), agrees: maybe(z.boolean()) })
const pair = z.array(text).check(z.length(2))

/** What `identify/1` holds between its head and its problems. */
export const IDENTIFY: Readonly<Record<string, z.ZodMiniType>> = {
  outcome: z.literal('answered'),
  instrument: text,
  finds: z.enum(['one', 'like-one', 'several', 'unknown']),
  sure: text,
  compared: count,
  groups: z.array(
    z.strictObject({
      sets: z.array(set),
      probability: share,
      hidden: z.array(z.strictObject({ set: text, ...difference })),
    }),
  ),
  unknown: z.strictObject({ probability: share, changed: share, foreign: share, like: maybe(text) }),
  findings: z.array(
    z.strictObject({
      id: text,
      found: z.enum(['reading', 'absent', 'sighting']),
      says: maybe(text),
      ohms: maybe(z.number()),
      first: fit,
      next: maybe(fit),
      weak: maybe(text),
    }),
  ),
  'taken back': z.array(z.strictObject({ id: text, says: maybe(text), ohms: maybe(z.number()) })),
  stray: texts,
  differences: z.array(z.strictObject(difference)),
  next: maybe(
    z.strictObject({
      id: text,
      ask: z.enum(['reading', 'sighting']),
      asks: text,
      answers: texts,
      pair: maybe(z.strictObject({ red: text, black: text, condition: text })),
      again: z.boolean(),
      bits: z.number(),
      effort: z.number(),
      outcomes: z.array(
        z.strictObject({ says: maybe(text), least: maybe(z.number()), most: maybe(z.number()), sets: texts }),
      ),
    }),
  ),
  unread: texts,
  straps: z.strictObject({
    groups: z.array(texts),
    apart: z.array(pair),
    contacts: z.array(pair),
    against: z.array(pair),
  }),
  cautions: texts,
}
