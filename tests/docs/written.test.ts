import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { PARTS } from 'ringproof/parts/index'
import { DIMENSIONS } from 'ringproof/quantities/units'
import { ANSWER_SCHEMAS, answerJsonSchema } from 'ringproof/report/json-answers'
import { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import { readSheet } from 'ringproof/sheet/read'
import { SHEET_KINDS } from 'ringproof/sheet/schema'
import { describe, expect, test } from 'vitest'
import { sheetsIn, shelfOf } from '../support/sheets.ts'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { generate } from './generate.mjs'

const root = fileURLToPath(new URL('../../', import.meta.url))
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8')
const files = generate(
  { sheetJsonSchema, SHEET_KINDS, answerJsonSchema, ANSWER_SCHEMAS, PARTS, DIMENSIONS },
  read,
)
const reference = files['docs/sheets.md'] ?? ''

/** Every name of a key anywhere in a schema. */
function keysOf(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(keysOf)
  if (typeof schema !== 'object' || schema === null) return []
  const { properties } = schema as { properties?: Record<string, unknown> }
  return [...Object.keys(properties ?? {}), ...Object.values(schema).flatMap(keysOf)]
}

describe('the written documents', () => {
  test.each(Object.entries(files))('%s is what `npm run docs` would write now', (path, text) => {
    expect(read(path)).toBe(text)
  })

  test('are all that stands in docs/schemas', () => {
    const written = Object.keys(files).filter((path) => path.startsWith('docs/schemas/'))
    const there = readdirSync(`${root}docs/schemas`).map((file) => `docs/schemas/${file}`)
    expect(there.sort()).toEqual(written.sort())
  })
})

/** Only the build has a library that plain node can load. */
describe.runIf(process.env.RINGPROOF_BUILD === '1')('the writer', () => {
  test('writes the same files by itself', () => {
    const folder = mkdtempSync(join(tmpdir(), 'ringproof-docs-'))
    try {
      const said = execFileSync(process.execPath, ['tests/docs/write.mjs', folder], {
        cwd: root,
        encoding: 'utf8',
      })
      expect(said.trim().split('\n').sort()).toEqual(Object.keys(files).sort())
      for (const [path, text] of Object.entries(files)) {
        expect(readFileSync(join(folder, path), 'utf8'), path).toBe(text)
      }
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})

describe('the reference of the sheets', () => {
  test.each(SHEET_KINDS)('has a row for every key of a %s', (kind) => {
    const missing = keysOf(sheetJsonSchema(kind)).filter((key) => !reference.includes(`\n| \`${key}\` |`))
    // `beside` belongs to an element of an impedance, which has no table of its own
    expect([...new Set(missing)].filter((key) => !reference.includes(`{${key}: [`))).toEqual([])
  })

  test.each([...PARTS.keys()])('has a section on the kind of part %s', (kind) => {
    expect(reference).toContain(`\n### ${kind}\n`)
  })

  const shelf = shelfOf(
    readdirSync(`${root}netlists`, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .flatMap(({ name }) => sheetsIn(`${root}netlists/${name}`)),
  )
  const examples = [...reference.matchAll(/```yaml\n((?:#.*\n)*ringproof: 1\n[\s\S]*?)```/g)].map(
    ([, text = '']) => text,
  )
  test('shows whole sheets that are read without a problem', () => {
    expect(examples.length).toBeGreaterThanOrEqual(SHEET_KINDS.length)
    for (const text of examples) {
      expect(readSheet({ file: 'example.yaml', text }, shelf).problems, text).toEqual([])
    }
  })
})
