/** Schemas of whole answers, and the JSON Schemas that are written from them. */
import * as z from 'zod/mini'
import { DIAGNOSIS } from './json-diagnosis.ts'
import { DRAW } from './json-draw.ts'
import { FAULT_BOOK } from './json-fault-book.ts'
import { IDENTIFY } from './json-identify.ts'
import { METER } from './json-meter.ts'
import { SECOND_OPINION } from './json-opinion.ts'
import { CONDITION, JUDGED, OUTCOME, PROBLEMS, STANDS } from './json-parts.ts'
import { SPREAD } from './json-spread.ts'

const text = z.string()
const texts = z.array(text)

const head = (name: string) => ({
  ringproof: z.literal(`${name}/1`),
  'made by': text,
  request: z.record(text, z.unknown()),
})

const amount = z.nullable(z.union([z.number(), z.strictObject({ re: z.number(), im: z.number() })]))
const side = z.strictObject({ name: text, ...JUDGED })

const question = {
  outcome: z.literal('answered'),
  analysis: z.enum(['direct', 'alternating']),
  frequency: z.nullable(z.number()),
  condition: z.nullable(CONDITION),
}

const step = z.strictObject({
  node: text,
  branch: z.optional(text),
  sort: z.optional(text),
  current: z.optional(z.number()),
  origin: z.optional(text),
  rest: z.optional(z.array(z.strictObject({ branch: text, current: z.number() }))),
})

const becauseSide = z.nullable(
  z.strictObject({ state: z.enum(['holds', 'marginal', 'fails', 'unknown']), says: text }),
)
const because = z.strictObject({
  check: text,
  moves: z.array(z.number().check(z.int(), z.minimum(1))),
  says: text,
  found: becauseSide,
  proposed: becauseSide,
})

const equalBells = z.strictObject({
  bells: z.number().check(z.int(), z.minimum(2)),
  least: z.number(),
  most: z.number(),
  resistor: z.number(),
  'in all': z.number(),
  'in one': z.strictObject({ itself: z.number(), others: z.number() }),
})

const row = z.record(text, z.nullable(z.union([text, z.number()])))

/** Names of the answers that have a JSON form. */
export type AnswerName =
  | 'check'
  | 'compare'
  | 'figures'
  | 'solve'
  | 'follow'
  | 'list'
  | 'meter'
  | 'diagnose'
  | 'identify'
  | 'spread'
  | 'faults'
  | 'draw'
  | 'problems'

/** The schema of each answer, version 1: closed, so that no key changes unseen. */
export const ANSWER_SCHEMAS: Readonly<Record<AnswerName, z.ZodMiniType>> = Object.freeze({
  check: z.strictObject({
    ...head('check'),
    ...OUTCOME,
    stands: STANDS,
    ...JUDGED,
    'equal bells': z.optional(equalBells),
    ...SECOND_OPINION,
    problems: PROBLEMS,
  }),
  figures: z.strictObject({
    ...head('figures'),
    outcome: z.literal('answered'),
    stands: STANDS,
    figures: JUDGED.figures,
    ...SECOND_OPINION,
    problems: PROBLEMS,
  }),
  compare: z.strictObject({
    ...head('compare'),
    ...OUTCOME,
    stands: STANDS,
    moves: texts,
    found: side,
    proposed: side,
    changed: z.strictObject({ checks: texts, figures: texts, because: z.array(because) }),
    problems: PROBLEMS,
  }),
  solve: z.strictObject({
    ...head('solve'),
    ...question,
    stands: STANDS,
    voltages: z.record(text, amount),
    currents: z.record(text, amount),
    units: z.strictObject({ voltages: z.literal('V'), currents: z.literal('A') }),
    states: z.record(text, text),
    islands: z.array(texts),
    shared: texts,
    residual: z.number(),
    approximate: z.optional(text),
    source: z.optional(text),
    grade: z.optional(text),
    ...SECOND_OPINION,
    problems: PROBLEMS,
  }),
  follow: z.strictObject({
    ...head('follow'),
    ...question,
    stands: STANDS,
    steps: z.array(step),
    approximate: z.optional(text),
    problems: PROBLEMS,
  }),
  list: z.strictObject({
    ...head('list'),
    outcome: z.literal('answered'),
    what: text,
    rows: z.array(row),
    problems: PROBLEMS,
  }),
  meter: z.strictObject({ ...head('meter'), ...METER, stands: STANDS, problems: PROBLEMS }),
  diagnose: z.strictObject({ ...head('diagnose'), ...DIAGNOSIS, stands: STANDS, problems: PROBLEMS }),
  faults: z.strictObject({ ...head('faults'), ...FAULT_BOOK, stands: STANDS, problems: PROBLEMS }),
  spread: z.strictObject({ ...head('spread'), ...SPREAD, stands: STANDS, problems: PROBLEMS }),
  identify: z.strictObject({ ...head('identify'), ...IDENTIFY, problems: PROBLEMS }),
  draw: z.strictObject({ ...head('draw'), ...DRAW, stands: STANDS, problems: PROBLEMS }),
  problems: z.strictObject({ ...head('problems'), problems: PROBLEMS }),
})

const DIALECT = 'https://json-schema.org/draft/2020-12/schema'

/** The JSON Schema (draft 2020-12) of an answer as `--json` prints it. */
export function answerJsonSchema(name: AnswerName): { readonly [key: string]: unknown } {
  const options = { target: 'draft-2020-12', reused: 'inline' } as const
  const { $schema: _, ...body } = z.toJSONSchema(ANSWER_SCHEMAS[name], options)
  return { $schema: DIALECT, title: `Ringproof answer, version 1: ${name}`, ...body }
}
