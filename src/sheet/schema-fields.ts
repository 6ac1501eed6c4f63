/** Fields that several kinds of sheet share. Each key carries its sentence for the reference and the JSON Schema. */
import * as z from 'zod/mini'
import { NAME, TERMINAL } from '../parts/fields.ts'

/** A day as the calendar standard writes it. @source ISO 8601-1:2019, 5.2.2.1, from memory */
export const DATE: RegExp = /^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$/
/** The condition of a set and its line, as design 3b writes it: `off-hook/break`. */
export const CONDITION: RegExp = /^(?:on|off)-hook(?:\/(?:idle|ringing|speech|rest|make|break|key|key-up))*$/

/** Says what a key means; `example` is a value ready to type. Any other metadata goes into the JSON Schema as it is. */
export function says<T>(
  schema: z.ZodMiniType<T>,
  description: string,
  more: Record<string, unknown> = {},
): z.ZodMiniType<T> {
  z.globalRegistry.add(schema, { ...z.globalRegistry.get(schema), description, ...more })
  return schema
}

/** A name of lower-case letters, digits and hyphens. */
export function name(description: string, example = 'a-name'): z.ZodMiniType<string> {
  return says(z.string().check(z.regex(NAME)), description, { examples: [example] })
}

/** Free text. */
export function text(description: string): z.ZodMiniType<string> {
  return says(z.string(), description)
}

/** A terminal, or one of a few words. Which terminals there are is checked against the strips, not here. */
export function terminal(description: string, ...words: string[]): z.ZodMiniType<string> {
  const pattern = [TERMINAL.source, ...words.map((word) => `^${word}$`)].join('|')
  return says(z.string(), description, { pattern, examples: ['A1'] })
}

/** A day, `2026-11-03`. */
export function date(description: string): z.ZodMiniType<string> {
  return says(z.string().check(z.regex(DATE)), description, { examples: ['2026-11-03'] })
}

/** A condition, `off-hook/make`. */
export function condition(description: string): z.ZodMiniType<string> {
  return says(z.string().check(z.regex(CONDITION)), description, { examples: ['on-hook'] })
}

/** One of a few words. */
export function word<const W extends string>(
  words: readonly [W, ...W[]],
  description: string,
): z.ZodMiniType<W> {
  return says(z.enum(words), description, { examples: [words[0]] }) as unknown as z.ZodMiniType<W>
}

/** A whole number within bounds. */
export function count(least: number, most: number, description: string): z.ZodMiniType<number> {
  return says(z.int().check(z.gte(least), z.lte(most)), description, { examples: [least] })
}

/** A list. */
export function list<T>(item: z.ZodMiniType<T>, description: string, least = 0): z.ZodMiniType<T[]> {
  return says(least === 0 ? z.array(item) : z.array(item).check(z.minLength(least)), description)
}

/**
 * A map by name. Its keys are checked by `check-keys.ts` against the pattern kept here: zod would leave the value
 * of a malformed key unread. The map that comes out has no prototype, so that a name like any object's own
 * (`valueof`) finds nothing that the sheet did not write.
 */
export function named<T>(
  value: z.ZodMiniType<T>,
  description: string,
  pattern: RegExp = NAME,
): z.ZodMiniType<Record<string, T>> {
  const record = z.record(z.string(), value)
  says(record, description, { propertyNames: { pattern: pattern.source } })
  const bare = z.transform(
    (read: Record<string, T>): Record<string, T> => Object.assign(Object.create(null), read),
  )
  return says(z.pipe(record, bare) as unknown as z.ZodMiniType<Record<string, T>>, description)
}

/** A key that may be left out; the model's optional keys are absent then, never undefined. */
export function optional<T>(schema: z.ZodMiniType<T>): z.ZodMiniType<T | undefined> {
  return z.optional(schema)
}

/** A key that may be left out and then has this value, made afresh for each sheet. */
export function otherwise<T>(schema: z.ZodMiniType<T>, make: () => T): z.ZodMiniType<T> {
  return z._default(schema, make as never) as unknown as z.ZodMiniType<T>
}

/** What every sheet begins with. */
export function head<const K extends string>(
  sheet: K,
): {
  readonly ringproof: z.ZodMiniType<1>
  readonly sheet: z.ZodMiniType<K>
  readonly name: z.ZodMiniType<string>
  readonly title: z.ZodMiniType<string | undefined>
  readonly notes: z.ZodMiniType<string[] | undefined>
} {
  return {
    ringproof: says(z.literal(1), 'version of the format', { examples: [1] }) as unknown as z.ZodMiniType<1>,
    sheet: says(z.literal(sheet), 'kind of sheet', { examples: [sheet] }) as unknown as z.ZodMiniType<K>,
    name: name('name by which other sheets and commands call this one'),
    title: optional(text('one line that says what this is')),
    notes: optional(list(text('a note'), 'free notes, each a text')),
  }
}
