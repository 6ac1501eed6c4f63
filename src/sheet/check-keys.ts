/** The keys of named maps against the patterns that their schemas carry. */
import * as z from 'zod/mini'
import type { Problem } from '../problem.ts'
import { malformedKey } from './issue-pattern.ts'
import { entriesOf, itemsOf, type Raw } from './raw.ts'

/** The parts of a schema's definition that lead to the schemas inside it. */
interface Inside {
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>
  readonly valueType?: z.core.$ZodType
  readonly element?: z.core.$ZodType
  readonly innerType?: z.core.$ZodType
  readonly in?: z.core.$ZodType
}

/**
 * Malformed names of entries, wherever the schema has a map by name. Kept out of the schema itself, which would
 * leave unread what stands behind a malformed name.
 */
export function checkKeys(schema: z.core.$ZodType, raw: Raw): Problem[] {
  const inside = schema._zod.def as Inside
  const through = inside.innerType ?? inside.in
  if (through !== undefined) return checkKeys(through, raw)
  if (inside.element !== undefined)
    return itemsOf(raw).flatMap((item) => checkKeys(inside.element ?? schema, item))
  const problems: Problem[] = []
  const { propertyNames } = z.globalRegistry.get(schema) ?? {}
  const pattern = (propertyNames as { pattern: string } | undefined)?.pattern
  const form = pattern === undefined ? undefined : new RegExp(pattern)
  for (const [key, { place, value }] of entriesOf(raw)) {
    if (form?.test(key) === false) {
      problems.push({ code: 'name-malformed', severity: 'error', place, ...malformedKey(key, form.source) })
    }
    const next = inside.shape?.[key] ?? inside.valueType
    if (next !== undefined) problems.push(...checkKeys(next, value))
  }
  return problems
}
