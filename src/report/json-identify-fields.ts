/** The answer of `identify` as JSON shows it, its keys in their order. */
import type { IdentifiedGroup, IdentifyAnswer, IdentifyFinding } from '../answer/identify-answer.ts'
import { type Fields, pick } from './pick.ts'

const fitJson = (fit: IdentifyFinding['first']): Fields => pick(fit, ['says', 'ohms', 'agrees'])

const groupJson = (group: IdentifiedGroup): Fields =>
  pick(group, ['sets', 'probability', 'hidden'], {
    sets: group.sets.map((one) => pick(one, ['name', 'set', 'rewire', 'unit'])),
    hidden: group.hidden.map((one) => pick(one, ['set', 'what', 'first', 'other'])),
  })

const findingJson = (finding: IdentifyFinding): Fields =>
  pick(finding, ['id', 'found', 'says', 'ohms', 'first', 'next', 'weak'], {
    first: fitJson(finding.first),
    next: finding.next && fitJson(finding.next),
  })

const nextJson = (next: NonNullable<IdentifyAnswer['next']>): Fields =>
  pick(next, ['id', 'ask', 'asks', 'answers', 'pair', 'again', 'bits', 'effort', 'outcomes'], {
    pair: next.pair && pick(next.pair, ['red', 'black', 'condition']),
    outcomes: next.outcomes.map((one) => pick(one, ['says', 'least', 'most', 'sets'])),
  })

/** Keys of `identify/1` between its head and its problems. */
export const IDENTIFY_KEYS: readonly string[] = [
  ...['outcome', 'instrument', 'finds', 'sure', 'compared', 'groups', 'unknown', 'findings', 'taken back'],
  'stray',
  ...['differences', 'next', 'unread', 'straps', 'cautions'],
]

/** Every part of it that is no plain value. */
export function identifyFields(answer: IdentifyAnswer): Fields {
  return {
    groups: answer.groups.map(groupJson),
    unknown: pick(answer.unknown, ['probability', 'changed', 'foreign', 'like']),
    findings: answer.findings.map(findingJson),
    'taken back': answer['taken back'].map((one) => pick(one, ['id', 'says', 'ohms'])),
    differences: answer.differences.map((one) => pick(one, ['what', 'first', 'other'])),
    ...(answer.next === undefined ? {} : { next: nextJson(answer.next) }),
    straps: pick(answer.straps, ['groups', 'apart', 'contacts', 'against']),
  }
}
