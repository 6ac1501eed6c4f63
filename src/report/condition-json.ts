/** Conditions as JSON shows them: one flat object for a single set, a map by place beside others. */
import { type Condition, type LineState, ON_HOOK, type SetCondition } from '../netlist/condition.ts'

/** One set: `{"hook","dial","key","line"}`. */
export interface FlatCondition extends SetCondition {
  readonly line: LineState
}
/** Several: `{"line","sets"}`; those not named are on-hook. */
export interface PlacedCondition {
  readonly line: LineState
  readonly sets: Readonly<Record<string, SetCondition>>
}

const setJson = ({ hook, dial, key }: SetCondition): SetCondition => ({ hook, dial, key })

/** A condition, flat when `single`. */
export function conditionJson({ line, sets }: Condition, single: boolean): FlatCondition | PlacedCondition {
  const all = Object.entries(sets)
  if (single) return { ...setJson(all[0]?.[1] ?? ON_HOOK), line }
  return { line, sets: Object.fromEntries(all.map(([place, one]) => [place, setJson(one)])) }
}

/** Places that conditions speak of. */
export function placesIn(conditions: Iterable<Condition>): Set<string> {
  return new Set(Array.from(conditions, ({ sets }) => Object.keys(sets)).flat())
}

/**
 * The condition of a solved or followed network, which may come flat already.
 * @throws TypeError for anything else: the programmer's error
 */
export function conditionOfAnswer(given: unknown): FlatCondition | PlacedCondition | null {
  if (given === null || given === undefined) return null
  if (typeof given === 'object' && 'line' in given) {
    if ('sets' in given) {
      const condition = given as Condition
      return conditionJson(condition, Object.keys(condition.sets).length <= 1)
    }
    if ('hook' in given) return { ...setJson(given as FlatCondition), line: (given as FlatCondition).line }
  }
  throw new TypeError('a condition that is none')
}
