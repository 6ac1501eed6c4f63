/** A second opinion as JSON shows it. */
import type { SecondOpinion } from '../answer/second-opinion.ts'
import { conditionJson, placesIn } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

/** The key under which answers carry a second opinion. */
export const OPINION = 'second opinion'
const KEYS = ['method', 'digits', 'questions', 'unknowns', 'compared', 'largest', 'as doubles']
const DIFFERENCE = ['at', 'unit', 'absolute', 'relative', 'analysis', 'frequency', 'condition']

/** The second opinion of an answer, where it has one. */
export function opinionFields(answer: { readonly [OPINION]?: SecondOpinion }): Fields {
  const opinion = answer[OPINION]
  if (opinion === undefined) return {}
  const { largest, figures } = opinion
  const single = largest === null || placesIn([largest.condition]).size <= 1
  const replaced = {
    largest: largest && pick(largest, DIFFERENCE, { condition: conditionJson(largest.condition, single) }),
    figures: figures?.map((one) => pick(one, ['id', 'subject', 'unit', 'value', 'second', 'relative'])),
  }
  const keys = [...KEYS, 'about our point', 'figures', 'voltages', 'currents']
  return { [OPINION]: pick(opinion, keys, replaced) }
}
