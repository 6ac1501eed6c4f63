/** Schemas of what answers are made of. */
import * as z from 'zod/mini'
import { PROBLEM_CODES, type ProblemCode } from '../problem.ts'

const text: z.ZodMiniString<string> = z.string()
const list = <T extends z.ZodMiniType>(of: T): z.ZodMiniArray<T> => z.array(of)
const maybe = <T extends z.ZodMiniType>(of: T): z.ZodMiniOptional<T> => z.optional(of)

const set = {
  hook: z.enum(['on-hook', 'off-hook']),
  dial: z.enum(['rest', 'make', 'break']),
  key: z.enum(['up', 'down']),
}
const line = z.enum(['idle', 'ringing', 'speech'])

/** One set's condition, or one by place. */
export const CONDITION: z.ZodMiniType = z.union([
  z.strictObject({ ...set, line }),
  z.strictObject({ line, sets: z.record(text, z.strictObject(set)) }),
])

const natural = z.number().check(z.int(), z.minimum(1))

const place = z.strictObject({
  file: text,
  line: natural,
  column: natural,
  length: z.number().check(z.int(), z.minimum(0)),
})

const problem = z.strictObject({
  code: z.enum(Object.keys(PROBLEM_CODES) as [ProblemCode, ...ProblemCode[]]),
  severity: z.enum(['error', 'warning']),
  place: maybe(place),
  found: text,
  expected: text,
  mend: maybe(text),
  excerpt: maybe(text),
})

/** The list that every answer ends with. */
export const PROBLEMS: z.ZodMiniType = list(problem)

const unit = z.enum(['Ω', 'A', 'V', '1', 'dB', 'VA'])

const figure = z.strictObject({
  id: text,
  subject: text,
  condition: CONDITION,
  frequency: maybe(z.number()),
  value: z.nullable(z.number()),
  phasor: maybe(z.strictObject({ re: z.number(), im: z.number() })),
  unit,
  state: maybe(z.enum(['open', 'undetermined', 'beyond-range', 'no-convergence'])),
  approximate: maybe(text),
  residual: z.number(),
})

/** A figure by itself. */
export const FIGURE: z.ZodMiniType = figure

const limit = z.strictObject({
  value: z.number(),
  side: z.enum(['at-most', 'at-least']),
  unit,
  source: text,
  clause: text,
  grade: z.enum(['SEEN-P', 'SEEN-S', 'DERIVED', 'MEMORY', 'COMMON PRACTICE', 'SHEET']),
})

/** A limit by itself. */
export const LIMIT: z.ZodMiniType = limit

const consequence = z.strictObject({ figure, mended: maybe(figure) })

const judged = {
  condition: CONDITION,
  says: text,
  figure: z.nullable(figure),
  limit: z.nullable(limit),
  margin: z.nullable(z.number()),
  path: list(text),
  consequences: maybe(list(consequence)),
}
const about = { check: text, subject: text }
const reason = z.enum(['not-modelled', 'no-limit', 'no-line', 'no-convergence', 'undetermined'])

/** Four shapes, each with its own evidence. */
const verdict = z.union([
  z.strictObject({ ...about, state: z.literal('holds'), ...judged, remark: maybe(text) }),
  z.strictObject({ ...about, state: z.literal('marginal'), ...judged, mend: text }),
  z.strictObject({ ...about, state: z.literal('fails'), ...judged, mend: text }),
  z.strictObject({ ...about, state: z.literal('unknown'), reason, ...judged }),
])

/** A move at the bench; what a part that is fitted is like stands in `with`, quantities as a sheet writes them. */
const move = z.strictObject({
  do: text,
  what: text,
  onto: maybe(text),
  in: maybe(text),
  hold: maybe(text),
  with: maybe(z.record(text, text)),
})

/** A fault by its name, with what follows from it and what its mend makes of that. */
const fault = z.strictObject({
  fault: text,
  title: text,
  subject: text,
  condition: CONDITION,
  says: text,
  path: list(text),
  consequences: list(consequence),
  mend: text,
  moves: maybe(list(move)),
  explains: list(text),
})

/** Verdicts, named faults and figures, as every judged side has them. */
export const JUDGED: {
  readonly verdicts: z.ZodMiniType
  readonly faults: z.ZodMiniType
  readonly figures: z.ZodMiniType
} = {
  verdicts: list(verdict),
  faults: list(fault),
  figures: list(figure),
}

const count = z.number().check(z.int(), z.minimum(0))

/** The outcome of what is judged, how many verdicts of each state stand behind it, and how many faults by name. */
export const OUTCOME: { readonly outcome: z.ZodMiniType; readonly counts: z.ZodMiniType } = {
  outcome: z.enum(['holds', 'marginal', 'fails', 'unknown', 'answered']),
  counts: z.strictObject({ holds: count, marginal: count, fails: count, unknown: count, faults: count }),
}

/** Line, premises, sockets and sets of an answer, with both numbers of every plug contact. */
export const STANDS: z.ZodMiniOptional<z.ZodMiniType> = maybe(
  z.strictObject({
    line: z.nullable(text),
    premises: z.nullable(text),
    sockets: list(
      z.strictObject({
        socket: text,
        is: z.enum(['master', 'outlet', 'secondary', 'adapter', 'converter', 'filter']),
        'fed from': maybe(text),
        'ringing lead': z.boolean(),
        earth: z.boolean(),
        mirrored: z.boolean(),
      }),
    ),
    sets: list(
      z.strictObject({
        place: text,
        set: text,
        rewire: maybe(text),
        socket: z.nullable(text),
        reversed: z.boolean(),
        rests: text,
        plug: list(z.strictObject({ node: text, wiring: natural, contact: natural })),
      }),
    ),
    notes: maybe(
      list(z.strictObject({ sheet: z.enum(['premises', 'set', 'rewire']), name: text, says: list(text) })),
    ),
    asked: maybe(z.strictObject({ place: text, socket: z.nullable(text), 'in place of': maybe(text) })),
  }),
)
