/** The problem of a single value that its schema refuses. */
import type { Place, Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { QuantityFault } from '../quantities/quantity.ts'
import { patternProblem } from './issue-pattern.ts'
import { discriminated, type Issue } from './issue-union.ts'
import type { Raw, RawScalar } from './raw.ts'
import { oneOf, SHAPES, shownAs, ticked, write, wrong } from './wording.ts'

/** Words an issue; `place` is the key's, for issues about keys. */
export function valueProblem(issue: Issue, at: Raw, place: Place): Problem {
  switch (issue.code) {
    case 'custom':
      return faultProblem((issue.params as { problem: QuantityFault }).problem, at)
    case 'invalid_key':
      return wrong(
        'name-malformed',
        place,
        `the name ${ticked(String(issue.path.at(-1)))}`,
        'a name of lower-case letters, digits and hyphens',
      )
    case 'invalid_union': {
      const { discriminator, words } = discriminated(issue)
      return wordProblem(discriminator === PART_WORD ? 'part-kind-unknown' : 'name-unknown', words, at)
    }
    case 'invalid_value':
      return wordProblem('name-unknown', issue.values.map(String), at)
    case 'invalid_format':
      return patternProblem(issue.pattern ?? '', at)
    case 'too_small':
      return sizeProblem('at least', Number(issue.minimum), at)
    case 'too_big':
      return sizeProblem('at most', Number(issue.maximum), at)
    default:
      return shapeProblem((issue as { expected?: string }).expected ?? 'string', at)
  }
}

/** The key that tells the kinds of part apart. */
const PART_WORD = 'kind'

/** A quantity's own words; a column inside the value where the text stands as written. */
function faultProblem({ code, found, expected, mend, at: offset }: QuantityFault, at: Raw): Problem {
  const place = offset === undefined || at.shape !== 'scalar' ? at.place : inside(at, offset)
  return wrong(code, place, found, expected, mend)
}

/** The place of a character of a scalar; the scalar's own when it is not written in one piece. */
function inside({ place, text, indent }: RawScalar, offset: number): Place {
  if (place.length !== text.length + 2 * indent || offset >= text.length) return place
  return { ...place, column: place.column + indent + offset, length: text.length - offset }
}

function wordProblem(code: Problem['code'], words: readonly string[], at: Raw): Problem {
  const meant = at.shape === 'scalar' ? nearest(at.text, words) : undefined
  return wrong(code, at.place, shownAs(at), oneOf(words, 'nothing'), write(meant))
}

function sizeProblem(side: string, limit: number, at: Raw): Problem {
  if (at.shape !== 'list') return wrong('quantity-out-of-range', at.place, shownAs(at), `${side} ${limit}`)
  const found = at.items.length === 0 ? 'an empty list' : `a list of ${at.items.length}`
  return wrong('key-missing', at.place, found, `${side} ${limit} ${limit === 1 ? 'item' : 'items'}`)
}

function shapeProblem(shape: string, at: Raw): Problem {
  const expected = SHAPES[shape] ?? 'a text'
  const found = shownAs(at)
  if (at.shape !== 'scalar') return wrong('syntax', at.place, found, expected)
  if (shape === 'number' || shape === 'int') return wrong('quantity-unreadable', at.place, found, expected)
  if (shape !== 'string') return wrong('syntax', at.place, found, expected)
  const mend = at.value === null ? undefined : `put it in quotation marks: "${at.text.slice(0, 32)}"`
  return wrong('name-malformed', at.place, found, expected, mend)
}
