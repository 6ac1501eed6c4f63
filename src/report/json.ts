/** Answers as JSON: keys always in the same order, plain numbers in SI units, never NaN or infinite. */
import type {
  CheckAnswer,
  CompareAnswer,
  Envelope,
  FiguresAnswer,
  FollowAnswer,
  ListAnswer,
  SolveAnswer,
} from '../answer/answer.ts'
import type { DiagnoseAnswer } from '../answer/diagnose-answer.ts'
import type { DrawAnswer } from '../answer/draw.ts'
import type { FaultsAnswer } from '../answer/faults-answer.ts'
import type { IdentifyAnswer } from '../answer/identify-answer.ts'
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import type { Consequence, Verdict, VerdictLimit } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import type { Figure } from '../figures/figure.ts'
import type { Problem } from '../problem.ts'
import { conditionJson, conditionOfAnswer, placesIn } from './condition-json.ts'
import { answerName } from './heading.ts'
import { DIAGNOSIS_KEYS, diagnosisFields } from './json-diagnosis-fields.ts'
import { DRAW_KEYS, drawFields } from './json-draw-fields.ts'
import { FAULT_BOOK_KEYS, faultBookFields } from './json-fault-book-fields.ts'
import { IDENTIFY_KEYS, identifyFields } from './json-identify-fields.ts'
import { METER_KEYS, meterFields } from './json-meter-fields.ts'
import { moveJson } from './json-moves.ts'
import { OPINION, opinionFields } from './json-opinion-fields.ts'
import { SPREAD_KEYS, spreadFields } from './json-spread-fields.ts'
import { standsFields } from './json-stands.ts'
import { type Fields, pick } from './pick.ts'
import type { Answer } from './text.ts'

/** A value of JSON. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }
/** Plain JSON, or a TypeError that says where something is none. */
function plain(value: unknown, at: string): Json {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value === 'number' && Number.isFinite(value)) return value === 0 ? 0 : value
  if (Array.isArray(value)) return value.map((one, k) => plain(one, `${at}.${k}`))
  if (typeof value === 'object') {
    const entries = Object.entries(value).filter(([, one]) => one !== undefined)
    return Object.fromEntries(entries.map(([key, one]) => [key, plain(one, `${at}.${key}`)]))
  }
  throw new TypeError(`${String(value)} at ${at} is no JSON`)
}

const problemJson = (problem: Problem): Fields =>
  pick(problem, ['code', 'severity', 'place', 'found', 'expected', 'mend', 'excerpt'], {
    place: problem.place && pick(problem.place, ['file', 'line', 'column', 'length']),
  })

function figureJson(figure: Figure, single: boolean): Fields {
  const keys = [
    'id',
    'subject',
    'condition',
    'frequency',
    'value',
    'phasor',
    'unit',
    'state',
    'approximate',
    'residual',
  ]
  return pick(figure, keys, { condition: conditionJson(figure.condition, single) })
}

const limitJson = (limit: VerdictLimit): Fields =>
  pick(limit, ['value', 'side', 'unit', 'source', 'clause', 'grade'])

const consequenceJson = ({ figure, mended }: Consequence, single: boolean): Fields => ({
  figure: figureJson(figure, single),
  ...(mended === undefined ? {} : { mended: figureJson(mended, single) }),
})

const VERDICT = [
  'check',
  'subject',
  'state',
  'reason',
  'condition',
  'says',
  'figure',
  'limit',
  'margin',
  'path',
]

function verdictJson(verdict: Verdict, single: boolean): Fields {
  return pick(verdict, [...VERDICT, 'consequences', 'mend', 'remark'], {
    condition: conditionJson(verdict.condition, single),
    figure: verdict.figure && figureJson(verdict.figure, single),
    limit: verdict.limit && limitJson(verdict.limit),
    consequences: verdict.consequences?.map((one) => consequenceJson(one, single)),
  })
}

function faultJson(fault: NamedFault, single: boolean): Fields {
  return pick(
    fault,
    ['fault', 'title', 'subject', 'condition', 'says', 'path', 'consequences', 'mend', 'moves', 'explains'],
    {
      condition: conditionJson(fault.condition, single),
      consequences: fault.consequences.map((one) => consequenceJson(one, single)),
      moves: fault.moves?.map(moveJson),
    },
  )
}

interface Judged {
  readonly verdicts: readonly Verdict[]
  readonly faults: readonly NamedFault[]
  readonly figures: readonly Figure[]
}

/** Verdicts and figures of one side; conditions are flat while they speak of one place. */
function judgedJson({ verdicts, faults, figures }: Judged): Fields {
  const shown = verdicts.flatMap(({ figure }) => (figure === null ? [] : [figure]))
  const follows = [...verdicts, ...faults]
    .flatMap(({ consequences = [] }) => consequences)
    .flatMap(({ figure, mended }) => (mended === undefined ? [figure] : [figure, mended]))
  const all = [...verdicts, ...faults, ...figures, ...shown, ...follows]
  const single = placesIn(all.map(({ condition }) => condition)).size <= 1
  return {
    verdicts: verdicts.map((verdict) => verdictJson(verdict, single)),
    faults: faults.map((fault) => faultJson(fault, single)),
    figures: figures.map((figure) => figureJson(figure, single)),
  }
}

const COUNTS = ['holds', 'marginal', 'fails', 'unknown', 'faults']
const HEAD = ['ringproof', 'made by', 'request']

const EQUAL = 'equal bells'

function equalFields(answer: CheckAnswer): Fields {
  const equal = answer[EQUAL]
  if (equal === undefined) return {}
  const keys = ['bells', 'least', 'most', 'resistor', 'in all', 'in one']
  return { [EQUAL]: pick(equal, keys, { 'in one': pick(equal['in one'], ['itself', 'others']) }) }
}

const checkJson = (answer: CheckAnswer): Fields =>
  pick(
    answer,
    [...HEAD, 'outcome', 'counts', 'stands', 'verdicts', 'faults', 'figures', EQUAL, OPINION, 'problems'],
    {
      counts: pick(answer.counts, COUNTS),
      ...standsFields(answer),
      ...judgedJson(answer),
      ...equalFields(answer),
      ...opinionFields(answer),
    },
  )

const figuresJson = (answer: FiguresAnswer): Fields =>
  pick(answer, [...HEAD, 'outcome', 'stands', 'figures', OPINION, 'problems'], {
    ...standsFields(answer),
    figures: judgedJson({ verdicts: [], faults: [], figures: answer.figures }).figures,
    ...opinionFields(answer),
  })

function compareJson(answer: CompareAnswer): Fields {
  const side = (one: CompareAnswer['found']): Fields => ({ name: one.name, ...judgedJson(one) })
  const because = answer.changed.because.map((one) =>
    pick(one, ['check', 'moves', 'says', 'found', 'proposed'], {
      found: one.found && pick(one.found, ['state', 'says']),
      proposed: one.proposed && pick(one.proposed, ['state', 'says']),
    }),
  )
  const keys = ['outcome', 'counts', 'stands', 'moves', 'found', 'proposed', 'changed', 'problems']
  return pick(answer, [...HEAD, ...keys], {
    counts: pick(answer.counts, COUNTS),
    ...standsFields(answer),
    found: side(answer.found),
    proposed: side(answer.proposed),
    changed: pick(answer.changed, ['checks', 'figures', 'because'], { because }),
  })
}

const SOLVE = ['voltages', 'currents', 'units', 'states', 'islands', 'shared', 'residual']
const QUESTION = [...HEAD, 'outcome', 'analysis', 'frequency', 'condition']

const solveJson = (answer: SolveAnswer): Fields =>
  pick(answer, [...QUESTION, 'stands', ...SOLVE, 'approximate', 'source', 'grade', OPINION, 'problems'], {
    condition: conditionOfAnswer(answer.condition),
    ...standsFields(answer),
    units: pick(answer.units, ['voltages', 'currents']),
    ...opinionFields(answer),
  })

const followJson = (answer: FollowAnswer): Fields =>
  pick(answer, [...QUESTION, 'stands', 'steps', 'approximate', 'problems'], {
    condition: conditionOfAnswer(answer.condition),
    ...standsFields(answer),
    steps: answer.steps.map((step) =>
      pick(step, ['node', 'branch', 'sort', 'current', 'origin', 'rest'], {
        rest: step.rest?.map((one) => pick(one, ['branch', 'current'])),
      }),
    ),
  })

const listJson = (answer: ListAnswer): Fields =>
  pick(answer, [...HEAD, 'outcome', 'what', 'rows', 'problems'])

const meterJson = (answer: MeterAnswer): Fields =>
  pick(answer, [...HEAD, ...METER_KEYS, 'stands', 'problems'], {
    ...meterFields(answer),
    ...standsFields(answer),
  })

const faultsJson = (answer: FaultsAnswer): Fields =>
  pick(answer, [...HEAD, ...FAULT_BOOK_KEYS, 'stands', 'problems'], {
    ...faultBookFields(answer),
    ...standsFields(answer),
  })

const spreadJson = (answer: SpreadAnswer): Fields =>
  pick(answer, [...HEAD, ...SPREAD_KEYS, 'stands', 'problems'], {
    ...spreadFields(answer, { figure: figureJson, limit: limitJson }),
    ...standsFields(answer),
  })

const identifyJson = (answer: IdentifyAnswer): Fields =>
  pick(answer, [...HEAD, ...IDENTIFY_KEYS, 'problems'], identifyFields(answer))

const diagnoseJson = (answer: DiagnoseAnswer): Fields =>
  pick(answer, [...HEAD, ...DIAGNOSIS_KEYS, 'stands', 'problems'], {
    ...diagnosisFields(answer),
    ...standsFields(answer),
  })

const drawJson = (answer: DrawAnswer): Fields =>
  pick(answer, [...HEAD, ...DRAW_KEYS, 'stands', 'problems'], {
    ...drawFields(answer, figureJson),
    ...standsFields(answer),
  })

const MAKERS: Readonly<Record<string, (answer: never) => Fields>> = {
  check: checkJson,
  compare: compareJson,
  figures: figuresJson,
  solve: solveJson,
  follow: followJson,
  list: listJson,
  meter: meterJson,
  identify: identifyJson,
  spread: spreadJson,
  faults: faultsJson,
  diagnose: diagnoseJson,
  draw: drawJson,
}

/**
 * An answer as data for JSON. Conditions are `{"hook","dial","key","line"}` for one set and
 * `{"line","sets"}` beside others.
 * @throws TypeError for NaN, infinities and keys that no schema knows: the programmer's errors
 */
export function toJson(answer: Answer | DrawAnswer): Json {
  const make = MAKERS[answerName(answer)]
  if (make === undefined) throw new TypeError(`no JSON for ${answer.ringproof}`)
  const problems = answer.problems.map(problemJson)
  return plain({ ...make(answer as never), problems }, answer.ringproof)
}

/** The answer to a request that could not be answered. `madeBy` is the version of the program. */
export function problemsEnvelope(
  problems: readonly Problem[],
  request: Envelope['request'],
  madeBy: string,
): Json {
  const head = { ringproof: 'problems/1', 'made by': madeBy, request }
  return plain({ ...head, problems: problems.map(problemJson) }, head.ringproof)
}

/** JSON as it is printed: indented by two, with a line break at its end. */
export function jsonText(json: Json | Fields): string {
  return `${JSON.stringify(json, null, 2)}\n`
}
