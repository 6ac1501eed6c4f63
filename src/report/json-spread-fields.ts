/** The answer to `spread` as JSON shows it, its keys in their order. */
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import type { VerdictLimit } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import type { FigureSpread, PartShare } from '../spread/study.ts'
import type { VerdictSpread } from '../spread/verdicts.ts'
import { conditionJson, placesIn } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

/** The keys behind the head of the answer. */
export const SPREAD_KEYS: readonly string[] = [
  'outcome',
  'aged',
  'values',
  'without tolerance',
  'figures',
  'verdicts',
  'not followed',
]

/** How figures and limits are shown wherever they stand. */
export interface Shows {
  figure(figure: Figure, single: boolean): Fields
  limit(limit: VerdictLimit): Fields
}

/** All of it; conditions are flat while they speak of one place. */
export function spreadFields(answer: SpreadAnswer, shows: Shows): Fields {
  const { aged, values, figures, verdicts } = answer
  const conditions = [
    ...figures.map(({ figure }) => figure.condition),
    ...verdicts.map((one) => one.condition),
  ]
  const single = placesIn(conditions).size <= 1
  return {
    aged:
      aged &&
      pick(aged, ['years', 'changes'], {
        changes: aged.changes.map((one) =>
          pick(one, ['part', 'value', 'parts', 'factor', 'seconds', 'source']),
        ),
      }),
    values: values.map((one) => pick(one, ['id', 'part', 'value', 'least', 'most', 'unit'])),
    figures: figures.map((one) => figureFields(one, shows, single)),
    verdicts: verdicts.map((one) => verdictFields(one, shows, single)),
    'not followed': answer['not followed'].map((one) => pick(one, ['check', 'subject', 'state', 'reason'])),
  }
}

const shareFields = (one: PartShare): Fields => pick(one, ['part', 'share'])

function figureFields(one: FigureSpread, shows: Shows, single: boolean): Fields {
  return pick(one, ['figure', 'by', 'worst', 'percentiles', 'lost', 'pulls', 'parts'], {
    figure: shows.figure(one.figure, single),
    worst: one.worst && pick(one.worst, ['least', 'most', 'steady']),
    percentiles: one.percentiles && pick(one.percentiles, ['5', '50', '95']),
    pulls: one.pulls.map((pull) => pick(pull, ['value', 'part', 'for one per cent', 'share'])),
    parts: one.parts.map(shareFields),
  })
}

const VERDICT = [
  'check',
  'subject',
  'condition',
  'stated',
  'state',
  'figure',
  'limit',
  'worst',
  'fails',
  'decides',
]

function verdictFields(one: VerdictSpread, shows: Shows, single: boolean): Fields {
  return pick(one, VERDICT, {
    condition: conditionJson(one.condition, single),
    figure: shows.figure(one.figure, single),
    limit: shows.limit(one.limit),
    worst:
      one.worst &&
      pick(one.worst, ['value', 'limit', 'rests'], {
        rests: one.worst.rests && pick(one.worst.rests, ['id', 'subject', 'unit']),
      }),
    decides: one.decides && shareFields(one.decides),
  })
}
