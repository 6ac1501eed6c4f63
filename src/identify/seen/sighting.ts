/** What can be seen of a set: a question with its answers, and what each known set would have answered. */
import type { KnownSet } from '../known.ts'
import type { SightingSort } from '../odds.ts'

/** One thing to look for. */
export interface Sighting {
  /** `slot`, `strap.B2-B3`, `marking.bell-resistor`. */
  readonly id: string
  readonly sort: SightingSort
  readonly asks: string
  /** All answers that a person may give, in words. */
  readonly answers: readonly string[]
  /** What a known set would have answered, by index; NaN where its sheet does not say. */
  answerOf(known: KnownSet): number
  /** Which answer a person's own words mean. */
  readAnswer?(words: string): number | undefined
  /** Why it tells little, where it does. */
  readonly weak?: string
}

/** What does not belong to any answer of the known sets. */
export const OTHER = 'something else'

/** Yes or no; undefined where the sheet does not say. */
export function yesNo(
  id: string,
  sort: SightingSort,
  asks: string,
  has: (known: KnownSet) => boolean | undefined,
): Sighting {
  return {
    id,
    sort,
    asks,
    answers: ['no', 'yes'],
    answerOf: (known) => {
      const is = has(known)
      return is === undefined ? Number.NaN : Number(is)
    },
  }
}

/** One of the words that the known sets give, or something else. */
export function oneOfWords(
  id: string,
  sort: SightingSort,
  asks: string,
  among: readonly KnownSet[],
  word: (known: KnownSet) => string | undefined,
  more: Pick<Sighting, 'weak'> & {
    readonly read?: (words: string, answers: readonly string[]) => number | undefined
  } = {},
): Sighting {
  const { read, weak } = more
  const words = new Set(among.map(word).filter((one) => one !== undefined))
  const answers = [...[...words].sort(inOrder), OTHER]
  return {
    id,
    sort,
    asks,
    answers,
    answerOf: (known) => {
      const is = word(known)
      const at = is === undefined ? -1 : answers.indexOf(is)
      return at < 0 ? Number.NaN : at
    },
    ...(read === undefined ? {} : { readAnswer: (given: string) => read(given, answers) }),
    ...(weak === undefined ? {} : { weak }),
  }
}

/** Numbers by their size, words by their letters. */
function inOrder(a: string, b: string): number {
  const [p, q] = [Number(a), Number(b)]
  if (!Number.isNaN(p) && !Number.isNaN(q)) return p - q
  return a < b ? -1 : 1
}

/** Which answer is meant, case and blanks apart; undefined where none is. */
export function answerMeant(sighting: Sighting, given: string): number | undefined {
  const words = given.trim().toLowerCase()
  const meant = YES_NO[words] ?? words
  const at = sighting.answers.findIndex((answer) => answer.toLowerCase() === meant)
  return at >= 0 ? at : sighting.readAnswer?.(given.trim())
}

const YES_NO: Readonly<Record<string, string>> = Object.freeze({
  __proto__: null as never,
  y: 'yes',
  true: 'yes',
  there: 'yes',
  n: 'no',
  false: 'no',
  'not there': 'no',
})
