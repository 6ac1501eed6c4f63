import { Ajv2020 } from 'ajv/dist/2020.js'
import { jsonText, problemsEnvelope, toJson } from 'ringproof/report/json'
import { ANSWER_SCHEMAS, type AnswerName, answerJsonSchema } from 'ringproof/report/json-answers'
import { describe, expect, test } from 'vitest'
import { ANSWERS, at, CHECK, COMPARE, FOLLOW, figure, SOLVE } from './answers.ts'

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true })
const validate = (name: AnswerName, data: unknown) => {
  const accepts = ajv.compile(answerJsonSchema(name))
  return { ok: accepts(data), errors: accepts.errors }
}
const printed = (answer: Parameters<typeof toJson>[0]) => JSON.parse(jsonText(toJson(answer)))

describe('answers as JSON', () => {
  test.each(Object.entries(ANSWERS))('%s is as its JSON Schema says', (_says, answer) => {
    const name = answer.ringproof.replace(/\/1$/, '') as AnswerName
    expect(validate(name, printed(answer))).toEqual({ ok: true, errors: null })
  })

  test.each(Object.keys(ANSWER_SCHEMAS) as AnswerName[])('the schema of %s is closed and titled', (name) => {
    const schema = answerJsonSchema(name)
    expect(schema.title).toBe(`Ringproof answer, version 1: ${name}`)
    expect(schema.additionalProperties).toBe(false)
    expect(validate(name, { more: 1 }).ok).toBe(false)
  })

  test('come with the same order of keys, whatever the order they were made in', () => {
    const turned = Object.fromEntries(Object.entries(CHECK).reverse()) as unknown as typeof CHECK
    expect(jsonText(toJson(turned))).toBe(jsonText(toJson(CHECK)))
    expect(Object.keys(printed(CHECK))).toEqual([
      'ringproof',
      'made by',
      'request',
      'outcome',
      'counts',
      'verdicts',
      'faults',
      'figures',
      'problems',
    ])
  })

  test('write the condition of one set flat', () => {
    const flat = { hook: 'off-hook', dial: 'rest', key: 'up', line: 'speech' }
    expect(printed(CHECK).figures[0].condition).toEqual(flat)
    expect(printed(FOLLOW).condition).toEqual({ ...flat, line: 'idle' })
    expect(printed(SOLVE).condition).toEqual(SOLVE.condition)
  })

  test('write conditions by place as soon as an answer speaks of two', () => {
    const other = figure({ condition: at('off-hook', 'hall') })
    const { figures } = printed({ ...CHECK, figures: [figure(), other] })
    expect(figures[1].condition).toEqual({
      line: 'idle',
      sets: { hall: { hook: 'off-hook', dial: 'rest', key: 'up' } },
    })
    expect(figures[0].condition.sets).toHaveProperty('kiosk')
    expect(validate('check', printed({ ...CHECK, figures: [figure(), other] })).ok).toBe(true)
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('never hold %d', (value) => {
    expect(() => toJson({ ...CHECK, figures: [figure({ value })] })).toThrow('check/1.figures.0.value')
    expect(() => toJson({ ...SOLVE, currents: { r: { re: 0, im: value } } })).toThrow(TypeError)
    expect(() => toJson({ ...COMPARE, request: { value } })).toThrow(TypeError)
  })

  test('hold no minus zero and no key that no schema knows', () => {
    expect(Object.is(printed({ ...CHECK, figures: [figure({ value: -0 })] }).figures[0].value, 0)).toBe(true)
    expect(() => toJson({ ...CHECK, more: 1 } as never)).toThrow('more')
    expect(() => toJson({ ...CHECK, ringproof: 'song/1' })).toThrow('song/1')
    expect(() => toJson({ ...SOLVE, condition: 'off-hook' })).toThrow(TypeError)
  })

  test('hold problems with all they have, alone as well', () => {
    const place = { length: 1, column: 2, line: 3, file: 'a.yaml' }
    const problem = { expected: 'b', found: 'a', code: 'syntax', severity: 'error', place } as const
    const json = JSON.parse(jsonText(problemsEnvelope([problem], { arguments: ['check'] }, '0.1.0')))
    expect(json).toEqual({
      ringproof: 'problems/1',
      'made by': '0.1.0',
      request: { arguments: ['check'] },
      problems: [problem],
    })
    expect(Object.keys(json.problems[0].place)).toEqual(['file', 'line', 'column', 'length'])
    expect(validate('problems', json)).toEqual({ ok: true, errors: null })
    expect(printed({ ...CHECK, problems: [problem] }).problems).toHaveLength(1)
  })
})
