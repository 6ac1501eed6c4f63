import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import { SHEET_KINDS } from 'ringproof/sheet/schema'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { SKELETONS, sheetsIn } from '../../support/sheets.ts'

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true })
const validators = new Map<string, ValidateFunction>(
  SHEET_KINDS.map((sheet) => [sheet, ajv.compile(sheetJsonSchema(sheet))]),
)

/** Whether an editor that knows the JSON Schema is content with a sheet. */
function accepts(text: string): boolean {
  const data = parse(text, { schema: 'core' })
  const validate = validators.get(data.sheet)
  if (validate === undefined) throw new Error(`no JSON Schema for ${data.sheet}`)
  return validate(data)
}

describe('the JSON Schemas', () => {
  test.each(SHEET_KINDS)('of a %s is draft 2020-12 and names the kind', (sheet) => {
    const schema = sheetJsonSchema(sheet)
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema['title']).toBe(`Ringproof sheet, version 1: ${sheet}`)
    expect(JSON.stringify(sheetJsonSchema(sheet))).toBe(JSON.stringify(schema))
  })

  test.each(sheetsIn(SKELETONS))('accept $file', ({ text }) => {
    expect(accepts(text)).toBe(true)
  })

  const bad = fileURLToPath(new URL('../../problems/', import.meta.url))
  const SEEN = [
    'key-missing--items',
    'key-missing--kind',
    'key-missing--name',
    'key-missing--onto',
    'key-missing--reading',
    'key-missing--socket-kind',
    'key-missing--version',
    'key-missing',
    'key-unknown--action',
    'key-unknown--based-on',
    'key-unknown--beside-an-action',
    'key-unknown--in-the-head',
    'key-unknown--misspelt',
    'key-unknown--strange-action',
    'key-unknown--two-actions',
    'key-unknown',
    'name-malformed--core-of-a-move',
    'name-malformed--end',
    'name-malformed--number',
    'name-malformed--plug',
    'name-malformed--sheet',
    'name-malformed--strap',
    'name-malformed--strip',
    'name-malformed--winding',
    'name-malformed',
    'name-unknown--socket-kind',
    'name-unknown--wave',
    'name-unknown--word',
    'name-unknown--yes',
    'part-kind-unknown--in-a-move',
    'part-kind-unknown',
    'quantity-out-of-range--crest-factor',
    'quantity-out-of-range--strip',
    'quantity-unreadable--date',
    'quantity-unreadable--number',
    'six-mistakes',
    'syntax--list-for-a-map',
    'syntax--list-for-a-recall',
    'syntax--map-for-a-quantity',
    'syntax--map-for-a-text',
    'syntax--nothing-for-a-list',
    'syntax--text-for-a-list',
    'terminal-unknown--core',
    'version-unknown--text',
    'version-unknown',
  ]
  test.each(SEEN)('refuse %s', (file) => {
    expect(accepts(readFileSync(`${bad}${file}.yaml`, 'utf8'))).toBe(false)
  })

  test('ask nothing of a variant but its head, and know its words all the same', () => {
    const head = 'ringproof: 1\nsheet: set\nname: new\n'
    expect(accepts(`${head}based on: fescue\n`)).toBe(true)
    expect(accepts(head)).toBe(false)
    expect(
      accepts(
        `${head}based on: fescue\nparts: {click: {to: B2}}\ncords: {line: {cores: {a: {colour: red}}}}\n`,
      ),
    ).toBe(true)
    expect(accepts(`${head}based on: fescue\nparts: {click: {onto: B2}}\n`)).toBe(false)
    expect(accepts(`${head}based on: fescue\nstrap: {}\n`)).toBe(false)
    expect(accepts(`${head}strips: {A: 1}\nwithout: [parts.bell]\n`)).toBe(false)
  })

  test.each(SHEET_KINDS)('describe every key of a %s', (sheet) => {
    const bare: string[] = []
    const walk = (schema: unknown, path: string): void => {
      if (typeof schema !== 'object' || schema === null) return
      const { properties, ...rest } = schema as { properties?: Record<string, Record<string, unknown>> }
      for (const [key, value] of Object.entries(properties ?? {})) {
        if (value['description'] === undefined && key !== 'kind') bare.push(`${path}.${key}`)
        walk(value, `${path}.${key}`)
      }
      for (const value of Object.values(rest)) walk(value, path)
    }
    walk(sheetJsonSchema(sheet), sheet)
    expect(bare).toEqual([])
  })
})
