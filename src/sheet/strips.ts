/** The terminals that the strips of a set have. */
import type { Place } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { Checker } from './checker.ts'
import { entriesOf, type Raw, under } from './raw.ts'
import { oneOf, ticked, write } from './wording.ts'

const MOST_TERMINALS = 99

export class Strips {
  readonly #check: Checker
  readonly #lengths = new Map<string, number>()

  constructor(check: Checker) {
    this.#check = check
    for (const [letters, { value }] of entriesOf(under(check.root, 'strips'))) {
      // a length that the schema refuses: rather none of its terminals is called unknown than all
      const length =
        value.shape === 'scalar' && Number.isInteger(value.value) ? Number(value.value) : MOST_TERMINALS
      this.#lengths.set(letters, Math.min(length, MOST_TERMINALS))
    }
  }

  /** A word that is no joint's: written as a terminal, or one but for its case. */
  looksLikeTerminal(text: string): boolean {
    return /^[A-Z]+[0-9]+$/.test(text) || this.#has(text.toUpperCase())
  }

  /** A value must be a terminal of the set, or one of a few words. */
  check(raw: Raw | undefined, words: readonly string[] = []): void {
    const word = this.#check.word(raw)
    if (word !== undefined && !words.includes(word.text)) this.checkName(word.text, word.place, words)
  }

  /** The same for a terminal that is part of a name. */
  checkName(text: string, place: Place, words: readonly string[] = []): void {
    if (this.#has(text) || this.#check.root.entries.get('strips')?.value.shape !== 'map') return
    const expected = this.#expected(text, words)
    this.#check.report(
      'terminal-unknown',
      place,
      `the terminal ${ticked(text)}`,
      expected,
      this.#mend(text, words),
    )
  }

  /** The same in capitals, a word that is nearly spelt so, or the last terminal of a strip that is too short. */
  #mend(text: string, words: readonly string[]): string | undefined {
    if (this.#has(text.toUpperCase())) return write(text.toUpperCase())
    const word = nearest(text, words)
    if (word !== undefined) return write(word)
    const [, letters = ''] = /^([A-Z]+)[0-9]+$/.exec(text) ?? []
    const length = this.#lengths.get(letters)
    return length === undefined
      ? undefined
      : `write \`${letters}${length}\`, or make the strip \`${letters}\` longer`
  }

  #has(text: string): boolean {
    const [, letters = '', number = ''] = /^([A-Z]+)([1-9][0-9]*)$/.exec(text) ?? []
    return Number(number) <= (this.#lengths.get(letters) ?? -1)
  }

  /** The strip's own terminals where there is such a strip, all strips otherwise. */
  #expected(text: string, words: readonly string[]): string {
    const letters = /^[A-Za-z]*/.exec(text)?.[0].toUpperCase() ?? ''
    const ranges = this.#lengths.has(letters) ? [letters] : [...this.#lengths.keys()]
    if (ranges.length === 0) return 'a terminal; `strips` has none'
    const terminals = ranges.map(
      (strip) => `${ticked(`${strip}1`)} to ${ticked(`${strip}${this.#lengths.get(strip)}`)}`,
    )
    return `a terminal: ${[...terminals, ...(words.length > 0 ? [oneOf(words, '')] : [])].join(', or ')}`
  }
}
