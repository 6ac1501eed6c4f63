/** Refusals that the scan of the words and the walk over the nodes share. */
import type { Place, Problem } from '../problem.ts'
import { type Page, placeAt } from './page.ts'
import { ticked, wrong } from './wording.ts'

/** The deepest nesting: the sheet itself is the first level. */
export const MOST_LEVELS = 32

/** Nesting beyond the limit. */
export function tooDeep(page: Page, start: number, end: number): Problem {
  const expected = `at most ${MOST_LEVELS} levels`
  return wrong('too-deep', placeAt(page, start, end), `more than ${MOST_LEVELS} levels of nesting`, expected)
}

/** A key that stands twice in one map. */
export function doubledKey(key: string, second: Place, first: Place): Problem {
  const found = `${ticked(key)} a second time, first in line ${first.line}, column ${first.column}`
  return wrong('key-doubled', second, found, 'each key once', 'delete one of the two')
}
