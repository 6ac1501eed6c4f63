import { readFileSync, writeFileSync } from 'node:fs'
import { ANSWER_SCHEMAS, type AnswerName, answerJsonSchema, PROBLEM_CODES } from 'ringproof'
import { FIGURE_WORDS } from 'ringproof/report/words'
import { expect, test } from 'vitest'
import { beside, jsonOf, ringproof } from './ringproof.ts'

const HELD = beside('json-paths.json')

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>
  readonly additionalProperties?: Schema | boolean
  readonly items?: Schema
  readonly anyOf?: readonly Schema[]
  readonly required?: readonly string[]
  readonly type?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
}

/** Every path that an answer may have, with what stands there; `?` where it may be missing. */
function* paths(schema: Schema, at: string): Generator<string> {
  const says = schema.const ?? schema.enum?.join(' | ') ?? schema.type
  if (says !== undefined) yield `${at}: ${says}`
  for (const one of schema.anyOf ?? []) yield* paths(one, at)
  for (const [key, one] of Object.entries(schema.properties ?? {})) {
    yield* paths(one, `${at}.${key}${schema.required?.includes(key) ? '' : '?'}`)
  }
  if (schema.items !== undefined) yield* paths(schema.items, `${at}[]`)
  if (typeof schema.additionalProperties === 'object') yield* paths(schema.additionalProperties, `${at}.*`)
}

async function now() {
  const names = Object.keys(ANSWER_SCHEMAS) as AnswerName[]
  const listed = async (what: string) => {
    const { data } = jsonOf(await ringproof(['list', what, '--json']))
    return (data.rows as Record<string, string>[]).map((row) => String(Object.values(row)[0])).sort()
  }
  return {
    answers: Object.fromEntries(
      names.map((name) => [name, [...new Set(paths(answerJsonSchema(name) as Schema, name))].sort()]),
    ),
    checks: await listed('checks'),
    figures: Object.keys(FIGURE_WORDS).sort(),
    problems: Object.keys(PROBLEM_CODES).sort(),
  }
}

/** `RINGPROOF_HOLD=1` writes the file anew, for a change that is meant; the change then shows in the file. */
test('key paths and ids of every answer are those that are held in json-paths.json', async () => {
  const text = `${JSON.stringify(await now(), null, 1)}\n`
  if (process.env.RINGPROOF_HOLD === '1') writeFileSync(HELD, text)
  expect(JSON.parse(text)).toEqual(JSON.parse(readFileSync(HELD, 'utf8')))
})
