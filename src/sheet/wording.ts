/** Small pieces of the found, expected and mend of a problem. */

import type { Place, Problem, ProblemCode } from '../problem.ts'
import { quote } from '../quantities/fault.ts'
import type { Raw } from './raw.ts'

const MOST_LISTED = 12

/** The shapes of values by the names that schemas have for them. */
export const SHAPES: Readonly<Record<string, string>> = {
  object: 'a map',
  record: 'a map',
  array: 'a list',
  number: 'a number',
  int: 'a whole number',
  boolean: '`yes` or `no`',
}

/** Makes an error; an undefined mend is left out. */
export function wrong(
  code: ProblemCode,
  place: Place,
  found: string,
  expected: string,
  mend?: string,
): Problem {
  return { code, severity: 'error', place, found, expected, ...(mend === undefined ? {} : { mend }) }
}

/** A word of the sheet as messages show it: cut, cleaned, in backticks. */
export function ticked(text: string): string {
  return quote(text)
}

/** `a`, `b` or `c`; a long list is cut. */
export function oneOf(words: Iterable<string>, none: string): string {
  const all = [...words]
  if (all.length === 0) return none
  if (all.length === 1) return ticked(all[0] ?? '')
  if (all.length > MOST_LISTED) {
    return `one of ${all.slice(0, MOST_LISTED).map(ticked).join(', ')} and ${all.length - MOST_LISTED} more`
  }
  return `${all.slice(0, -1).map(ticked).join(', ')} or ${ticked(all.at(-1) ?? '')}`
}

/** What to type, whole, when there is something to type. */
export function write(word: string | undefined): string | undefined {
  return word === undefined ? undefined : `write ${/\p{C}/u.test(word) ? quote(word) : `\`${word}\``}`
}

/** What stands there, in words. */
export function shownAs(raw: Raw): string {
  if (raw.shape === 'map') return 'a map'
  if (raw.shape === 'list') return 'a list'
  if (raw.value === null) return 'nothing'
  if (raw.value === '') return 'an empty text'
  const what =
    typeof raw.value === 'number' ? 'the number ' : typeof raw.value === 'boolean' ? 'the truth value ' : ''
  return `${what}${ticked(raw.text)}`
}
