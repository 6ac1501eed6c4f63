import type { Place, Problem } from '../problem.ts'
import { type Page, placeAt } from './page.ts'
import { doubledKey, MOST_LEVELS, tooDeep } from './refusals.ts'
import { MISSING_COMMA, syntaxProblem } from './syntax.ts'

/** So many doubled keys are no slip: such a sheet is not parsed to name them all. */
const MOST_DOUBLED = 100

interface Word {
  readonly offset: number
  readonly text: string
}

interface Level {
  /** Column of the block's keys or dashes; undefined for brackets. */
  readonly column: number | undefined
  /** Offsets of the keys seen so far; none in a list in brackets, whose pairs may repeat a key. */
  readonly keys: Map<string, number> | undefined
}

/**
 * A lower bound of the nesting, from brackets and from the columns at which block keys and dashes stand.
 * It misses lists that stand in the column of their key, so it is less than twice too small: what passes
 * is shallow enough to be parsed and counted exactly.
 */
export class Levels {
  readonly #stack: Level[] = []
  #lineStart = 0
  #doubled = 0
  #firstDoubled: Problem | undefined
  /** The word that may turn out to be a key; none at the start of a line. */
  #word: Word | undefined

  /** Takes one word of the lexer; answers with the refusal that it leads to. */
  take(page: Page, type: string, offset: number, token: string): Problem | undefined {
    if (type === 'flow-map-start') this.#push(undefined, new Map())
    else if (type === 'flow-seq-start') this.#push(undefined, undefined)
    else if (type === 'flow-map-end' || type === 'flow-seq-end') this.#close()
    else if (type === 'seq-item-ind' || type === 'explicit-key-ind') this.#open(offset)
    else if (type === 'map-value-ind') {
      const problem = this.#key(page, offset)
      if (problem !== undefined) return problem
    }
    const newLine = token.lastIndexOf('\n')
    if (newLine !== -1) this.#lineStart = offset + newLine + 1
    if (type === 'newline') this.#word = undefined
    else if (type !== 'space') this.#word = { offset, text: token }
    return this.#stack.length > MOST_LEVELS ? tooDeep(page, offset, offset + token.length) : undefined
  }

  /** The lexer has given up the brackets that are open. */
  leaveFlow(): void {
    while (this.#inFlow) this.#stack.pop()
  }

  get #inFlow(): boolean {
    const top = this.#stack.at(-1)
    return top !== undefined && top.column === undefined
  }

  #push(column: number | undefined, keys: Level['keys']): void {
    this.#stack.push({ column, keys })
  }

  #close(): void {
    if (this.#inFlow) this.#stack.pop()
  }

  /** A dash or a key in block style: closes the deeper blocks, opens its own. */
  #open(offset: number): void {
    if (this.#inFlow) return
    const column = offset - this.#lineStart
    while ((this.#stack.at(-1)?.column ?? -1) > column) this.#stack.pop()
    if (this.#stack.at(-1)?.column !== column) this.#push(column, new Map())
  }

  #key(page: Page, colon: number): Problem | undefined {
    const word = this.#word
    if (word?.text.includes('\n') === true) return keyOverLines(page, word, this.#inFlow)
    if (!this.#inFlow) this.#open(word?.offset ?? colon)
    const keys = this.#stack.at(-1)?.keys
    if (word === undefined || keys === undefined) return undefined
    const first = keys.get(word.text)
    if (first === undefined) {
      keys.set(word.text, word.offset)
      return undefined
    }
    const end = word.text.length
    const places = [word.offset, first].map((offset) => placeAt(page, offset, offset + end)) as [Place, Place]
    this.#firstDoubled ??= doubledKey(word.text, ...places)
    return ++this.#doubled > MOST_DOUBLED ? this.#firstDoubled : undefined
  }
}

/**
 * A key over several lines. Each would nest once more in the parser, uncounted by columns. Within brackets it is
 * mostly a comma that is missing at the end of a line.
 */
function keyOverLines(page: Page, { offset, text }: Word, inFlow: boolean): Problem {
  const end = offset + text.length
  if (!inFlow) return syntaxProblem(page, { code: 'MULTILINE_IMPLICIT_KEY', message: '', start: offset, end })
  const last = text.slice(text.lastIndexOf('\n') + 1).trimStart()
  return syntaxProblem(page, { code: 'MISSING_CHAR', message: MISSING_COMMA, start: end - last.length, end })
}
