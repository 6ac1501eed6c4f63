/** JSON Schemas of the sheets, from the schemas that read them: editors complete and check with these. */
import * as z from 'zod/mini'
import type { SheetKind } from './model.ts'
import { SCHEMAS } from './schema.ts'

/** A JSON Schema as data. */
export type JsonSchema = { readonly [key: string]: unknown }

const DIALECT = 'https://json-schema.org/draft/2020-12/schema'

/**
 * The JSON Schema (draft 2020-12) of what a sheet of this kind may say, before `based on` is merged. A set
 * may be a whole set or a variant; a variant may leave out whatever its base says.
 */
export function sheetJsonSchema(sheet: SheetKind): JsonSchema {
  const whole = z.toJSONSchema(SCHEMAS[sheet], {
    target: 'draft-2020-12',
    io: 'input',
    reused: 'inline',
    // a field that names its type takes that one alone: a quantity is text, though a bare number is read to be refused
    override: ({ jsonSchema }) => {
      if (jsonSchema.type !== undefined) delete jsonSchema.anyOf
    },
  })
  const { $schema: _, ...body } = whole
  const title = `Ringproof sheet, version 1: ${sheet}`
  if (sheet !== 'set') return { $schema: DIALECT, title, ...body }
  return { $schema: DIALECT, title, anyOf: [alone(body), variant(body)] }
}

/** A set that is based on nothing. */
function alone(body: JsonSchema): JsonSchema {
  const { 'based on': _, without: __, ...properties } = body['properties'] as Record<string, unknown>
  return { ...body, description: 'a set of its own', properties }
}

/** A set that says only what differs from another. */
function variant(body: JsonSchema): JsonSchema {
  const { required: _, ...loose } = loosened(body) as JsonSchema
  const required = ['ringproof', 'sheet', 'name', 'based on']
  return { ...loose, description: 'a variant: only what differs from the set that it is based on', required }
}

/** Nothing required, deeply; of the kinds of part any whose keys fit, since `kind` may stand in the base. */
function loosened(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(loosened)
  if (typeof schema !== 'object' || schema === null) return schema
  const entries = Object.entries(schema).filter(([key, value]) => key !== 'required' || !Array.isArray(value))
  return Object.fromEntries(entries.map(([key, value]) => [key === 'oneOf' ? 'anyOf' : key, loosened(value)]))
}
