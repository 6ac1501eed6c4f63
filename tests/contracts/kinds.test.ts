import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { PARTS } from 'ringproof/parts/index'
import { DIMENSIONS } from 'ringproof/quantities/units'
import { ANSWER_SCHEMAS, answerJsonSchema } from 'ringproof/report/json-answers'
import { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import { SHEET_KINDS } from 'ringproof/sheet/schema'
import { describe, expect, test } from 'vitest'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { generate } from '../docs/generate.mjs'
import { EXAMPLES } from './_part-examples.ts'
import { partKindContract } from './part-kind.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const files = generate(
  { sheetJsonSchema, SHEET_KINDS, answerJsonSchema, ANSWER_SCHEMAS, PARTS, DIMENSIONS },
  (path) => readFileSync(`${root}${path}`, 'utf8'),
)
const reference = files['docs/sheets.md'] ?? ''

/** What the reference says of one kind. */
function sectionOf(kind: string): string {
  const [, behind = ''] = reference.split(`\n### ${kind}\n`)
  return behind.split('\n### ')[0] ?? ''
}

describe('the kinds of part', () => {
  test.each(['gas-tube', 'varistor', 'tone-ringer', 'current-resistor'])(
    'let %s say what a meter cannot show of it, for a sentence',
    (name) => {
      expect(PARTS.get(name)?.meterBlind).toMatch(/^[a-z].*[^.]$/)
    },
  )

  test('all have an example here', () => {
    expect(Object.keys(EXAMPLES).sort()).toEqual([...PARTS.keys()].sort())
  })

  test.each([...PARTS])(
    'have a section on %s in the reference, with a row for each key that examples use',
    (name, kind) => {
      const section = sectionOf(name)
      expect(section).toContain(kind.says)
      const keys = Object.values(EXAMPLES[name]?.parts ?? {}).flatMap((part) => Object.keys(part))
      for (const key of keys) expect(section).toContain(`| \`${key}\` |`)
    },
  )
})

for (const [name, kind] of PARTS) {
  const { parts = {}, ...traits } = EXAMPLES[name] ?? {}
  for (const [example, written] of Object.entries(parts)) partKindContract(kind, example, written, traits)
}
