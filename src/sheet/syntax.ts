/** What the YAML parser objects to, in our own words. */
import type { ErrorCode } from 'yaml'
import type { Problem } from '../problem.ts'
import { type Page, placeAt } from './page.ts'
import { ticked, wrong } from './wording.ts'

/** One objection: the parser's code and sentence, and the stretch of text. */
export interface Objection {
  readonly code: ErrorCode
  readonly message: string
  readonly start: number
  readonly end: number
}

interface Row {
  readonly code?: ErrorCode
  /** Told apart by the parser's sentence where one code has several meanings. */
  readonly says?: RegExp
  readonly found: string
  readonly expected: string
  readonly mend: string
}

/** The parser's sentence for items that touch. */
export const MISSING_COMMA = 'Missing , between flow collection items'

/** First match wins; `%` in a sentence is what stands at the place. */
const ROWS: readonly Row[] = [
  {
    code: 'TAB_AS_INDENT',
    found: 'a tab',
    expected: 'blanks before a key',
    mend: 'replace the tab by two blanks',
  },
  {
    code: 'MULTIPLE_DOCS',
    found: 'a second document',
    expected: 'one sheet in a file',
    mend: 'move it to a file of its own',
  },
  {
    code: 'BAD_DQ_ESCAPE',
    found: 'the escape %',
    expected: 'an escape of YAML',
    mend: 'use single quotation marks, which know no escapes',
  },
  {
    code: 'BAD_SCALAR_START',
    found: '%',
    expected: 'a value that starts with a letter or a digit',
    mend: 'put the value in quotation marks',
  },
  {
    says: /quote$/,
    found: 'a text without its closing quotation mark',
    expected: 'a closing quotation mark',
    mend: 'close the quotation',
  },
  {
    says: /end with a \}/,
    found: 'a map without its closing brace',
    expected: '`}`',
    mend: 'close the brace',
  },
  {
    says: /end with a \]/,
    found: 'a list without its closing bracket',
    expected: '`]`',
    mend: 'close the bracket',
  },
  {
    says: /^Missing (,|, or :) between/,
    found: '%',
    expected: 'a comma between the items',
    mend: 'put a comma in front of it',
  },
  {
    says: /Missing space after :/,
    found: 'a colon without a blank behind it',
    expected: 'a colon and a blank',
    mend: 'put a blank behind the colon',
  },
  {
    says: /followed by map values|Sequence item without|must start at the same column/,
    found: '%',
    expected: 'a key with a colon, in the column of its neighbours',
    mend: 'put a colon and a blank behind the key, or line it up',
  },
  {
    says: /Comments must be separated/,
    found: 'a `#` that touches the word before it',
    expected: 'a blank before `#`',
    mend: 'put a blank before `#`',
  },
  {
    code: 'BLOCK_AS_IMPLICIT_KEY',
    found: 'a second key in one line',
    expected: 'one key and its value',
    mend: 'put the value in quotation marks, or start a new line',
  },
  {
    code: 'BAD_INDENT',
    found: '%',
    expected: 'the column of its neighbours',
    mend: 'line the keys of one map up under each other',
  },
  {
    code: 'MULTILINE_IMPLICIT_KEY',
    found: 'a key over several lines',
    expected: 'a key in one line, with its colon',
    mend: 'put a colon and a blank behind the key',
  },
  {
    code: 'KEY_OVER_1024_CHARS',
    found: 'a key of more than 1024 characters',
    expected: 'a short key',
    mend: 'shorten the key',
  },
  {
    code: 'BLOCK_IN_FLOW',
    found: 'a second key within one item',
    expected: 'items with commas between',
    mend: 'put a comma between the items; write what is inside brackets in brackets too',
  },
  {
    says: /^Unexpected , in|empty item/,
    found: 'a comma with nothing before it',
    expected: 'an item before the comma',
    mend: 'delete the comma',
  },
  {
    says: /lexical|Unexpected (flow-map-end|flow-seq-end)|flow-(map|seq)-end/,
    found: 'the closing %',
    expected: 'an opening one before it',
    mend: 'delete it, or open it',
  },
]

const OTHERWISE: Row = {
  found: '%',
  expected: 'a key, a colon, a blank and a value',
  mend: 'look at this line and the one before; put the value in quotation marks',
}

/** The problem of the parser's first objection. The others mostly follow from it. */
export function syntaxProblem(page: Page, { code, message, start, end }: Objection): Problem {
  const row =
    ROWS.find((one) => (one.code ?? code) === code && (one.says === undefined || one.says.test(message))) ??
    OTHERWISE
  const offset = pointedAt(page.text, message, start)
  const place = placeAt(page, offset, Math.max(end, offset + 1))
  const rest = page.text.slice(offset, offset + 80).split('\n', 1)[0] ?? ''
  const here = rest.trim() === '' ? 'the end of the line' : ticked(rest)
  return wrong(
    'syntax',
    place,
    row.found.replace('%', () => here),
    row.expected,
    row.mend,
  )
}

/** The parser points behind what is not closed: the place is the open quotation mark, or the last word before. */
function pointedAt(text: string, message: string, start: number): number {
  const mark = /closing (['"])quote$/.exec(message)?.[1]
  if (mark !== undefined) return Math.max(0, text.lastIndexOf(mark, start - 1))
  const line = text.slice(start, start + 80).split('\n', 1)[0] ?? ''
  return line.trim() === '' ? text.slice(0, start).trimEnd().length : start
}
