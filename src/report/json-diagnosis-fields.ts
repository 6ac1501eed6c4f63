/** The answer to `diagnose` as JSON shows it, its keys in their order. */
import type {
  DiagnoseAnswer,
  NextQuestion,
  PossibleGroup,
  Seen,
  Weighed,
  WhatIf,
} from '../answer/diagnose-answer.ts'
import { conditionJson } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

/** Keys of `diagnose/1` between its head and its problems. */
export const DIAGNOSIS_KEYS: readonly string[] = [
  ...['outcome', 'place', 'instrument', 'counts', 'decided', 'groups', 'none', 'evidence', 'skipped'],
  ...['next', 'cautions'],
]

/** What stands under those keys. */
export function diagnosisFields(answer: DiagnoseAnswer): Fields {
  return {
    counts: pick(answer.counts, ['faults', 'pairs', 'tests']),
    none: bounded(answer.none),
    groups: answer.groups.map(groupJson),
    evidence: answer.evidence.map(weighedJson),
    skipped: answer.skipped.map((one) => pick(one, ['test', 'asks'])),
    ...(answer.next === undefined ? {} : { next: nextJson(answer.next) }),
  }
}

/** A sum of probabilities may pass 1 by rounding. */
const bounded = (probability: number): number => Math.min(1, Math.max(0, probability))

function groupJson(group: PossibleGroup): Fields {
  return pick(group, ['probability', 'size', 'causes', 'apart'], {
    probability: bounded(group.probability),
    causes: group.causes.map((one) =>
      pick(one, ['faults', 'says', 'sign', 'mend', 'probability'], { probability: bounded(one.probability) }),
    ),
    ...(group.apart === undefined ? {} : { apart: pick(group.apart, ['test', 'asks']) }),
  })
}

const seenJson = (one: Seen): Fields => pick(one, ['answers', 'says', 'value', 'state', 'unit'])

function weighedJson(one: Weighed): Fields {
  return pick(one, ['test', 'asks', 'observed', 'leading', 'sound', 'speaks', 'ratio'], {
    observed: seenJson(one.observed),
    leading: one.leading && seenJson(one.leading),
    sound: one.sound && seenJson(one.sound),
  })
}

const NEXT = ['test', 'asks', 'how', 'site', 'live', 'condition', 'unit', 'effort', 'bits']

function nextJson(next: NextQuestion): Fields {
  const single = Object.keys(next.condition.sets).length <= 1
  return pick(next, [...NEXT, 'cautions', 'outcomes'], {
    condition: conditionJson(next.condition, single),
    outcomes: next.outcomes.map(outcomeJson),
  })
}

function outcomeJson(one: WhatIf): Fields {
  return pick(one, ['answer', 'says', 'least', 'most', 'state', 'probability', 'points'], {
    probability: bounded(one.probability),
    points: one.points.map((each) =>
      pick(each, ['says', 'size', 'probability'], { probability: bounded(each.probability) }),
    ),
  })
}
