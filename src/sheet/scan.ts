/** What is refused before the parser sees the text, in one walk over its words. */
import { CST, Lexer } from 'yaml'
import type { Problem, ProblemCode } from '../problem.ts'
import { Levels } from './levels.ts'
import { type Page, placeAt } from './page.ts'
import { ticked, wrong } from './wording.ts'

/** The longest sheet, bytes of UTF-8. */
export const MOST_BYTES: number = 1 << 20
/** The most words and signs of a sheet: the text of some 2,500 parts. The parser's time grows with them, not with bytes. */
export const MOST_WORDS = 60_000

/** The first thing for which a text is refused unread: its size, its depth, its characters, what YAML could do with it. */
export function scan(page: Page): Problem | undefined {
  const { text } = page
  const bytes = text.length > MOST_BYTES ? text.length : new TextEncoder().encode(text).length
  if (bytes > MOST_BYTES) {
    return wrong(
      'too-big',
      placeAt(page, 0, 1),
      'a sheet of more than 1 MiB',
      'at most 1 MiB',
      'split the sheet',
    )
  }
  const strange = firstStrange(text)
  if (strange !== -1) {
    const code = text.charCodeAt(strange).toString(16).toUpperCase().padStart(4, '0')
    const place = placeAt(page, strange, strange + 1)
    return wrong(
      'syntax',
      place,
      `the character U+${code}`,
      'printable text in UTF-8',
      'delete the character',
    )
  }
  return scanWords(page)
}

/**
 * Offset of the first character that no text holds: a control but tab and line ends, half of a surrogate pair, a
 * mark that is no character, a lone carriage return; -1 when there is none. A loop, since a regular expression of
 * the same takes ten times as long over 1 MiB.
 */
function firstStrange(text: string): number {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (code >= 0x20 && code < 0x7f) continue
    if (code === 0x0a || code === 0x09 || code === 0x85 || (code > 0x9f && code < 0xd800)) continue
    if (code === 0x0d && text.charCodeAt(at + 1) === 0x0a) continue
    if (code >= 0xd800 && code < 0xdc00 && (text.charCodeAt(at + 1) & 0xfc00) === 0xdc00) at += 1
    else if (code < 0xe000 || code === 0xfeff || code > 0xfffd) return at
  }
  return -1
}

/** Ways of YAML that no sheet needs, by the lexer's name for their first word. */
const REFUSED: Readonly<Record<string, readonly [ProblemCode, string, string, string]>> = {
  anchor: [
    'alias-refused',
    'the anchor',
    'plain values',
    'delete the anchor; write values out where they are needed',
  ],
  alias: ['alias-refused', 'the alias', 'the value itself', 'write the value out here'],
  tag: ['syntax', 'the tag', 'plain values without tags', 'delete the tag'],
  'directive-line': ['syntax', 'the directive', 'a sheet without directives', 'delete the line'],
}

function scanWords(page: Page): Problem | undefined {
  const levels = new Levels()
  let offset = 0
  let words = 0
  let isScalar = false
  for (const token of new Lexer().lex(page.text)) {
    if (token === CST.SCALAR) {
      isScalar = true
      continue
    }
    if (token === CST.DOCUMENT || token === CST.FLOW_END) {
      if (token === CST.FLOW_END) levels.leaveFlow()
      continue
    }
    const type = isScalar ? 'text' : (CST.tokenType(token) ?? 'text')
    isScalar = false
    const problem = refusedWord(page, type, offset, token) ?? levels.take(page, type, offset, token)
    if (problem !== undefined) return problem
    if (type !== 'space' && ++words > MOST_WORDS) {
      const place = placeAt(page, offset, offset + token.length)
      return wrong(
        'too-big',
        place,
        `more than ${MOST_WORDS} words and signs`,
        'a smaller sheet',
        'split the sheet',
      )
    }
    offset += token.length
  }
  return undefined
}

function refusedWord(page: Page, type: string, offset: number, token: string): Problem | undefined {
  const refused = REFUSED[type]
  if (refused === undefined) return undefined
  const [code, found, expected, mend] = refused
  return wrong(
    code,
    placeAt(page, offset, offset + token.length),
    `${found} ${ticked(token)}`,
    expected,
    mend,
  )
}
