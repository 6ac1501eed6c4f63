/** The text of one sheet as lines and columns. */
import { LineCounter } from 'yaml'
import type { Place } from '../problem.ts'
import type { SheetText } from './shelf.ts'

/** A sheet's text, from which places are made. */
export interface Page {
  readonly file: string
  /** Without the byte order mark that some editors put in front: no editor counts it as a column. */
  readonly text: string
  readonly lines: LineCounter
}

const LONGEST_EXCERPT = 2000

/** Makes a page; the start of each line is noted once. */
export function pageOf({ file, text }: SheetText): Page {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text
  const lines = new LineCounter()
  lines.addNewLine(0)
  for (let at = clean.indexOf('\n'); at !== -1; at = clean.indexOf('\n', at + 1)) lines.addNewLine(at + 1)
  return { file, text: clean, lines }
}

/** The place of a stretch of text, ended at the end of its first line, at least one column long. */
export function placeAt(page: Page, start: number, end: number): Place {
  const offset = Math.min(start, page.text.length)
  const { line, col } = page.lines.linePos(offset)
  const length = Math.max(1, Math.min(end, lineEnd(page, line)) - offset)
  return { file: page.file, line, column: col, length }
}

/**
 * A line of the page, to be shown with its place underlined: as many columns as written, what could
 * steer a terminal replaced. Undefined for a line of more than 2000 columns.
 */
export function excerptOf(page: Page, line: number): string | undefined {
  const start = page.lines.lineStarts[line - 1]
  if (start === undefined) return undefined
  const end = lineEnd(page, line)
  if (end - start > LONGEST_EXCERPT) return undefined
  return page.text
    .slice(start, end)
    .replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Cf}]/gu, (found) => '·'.repeat(found.length))
}

/** The offset behind the last character of a line. */
function lineEnd(page: Page, line: number): number {
  const next = page.lines.lineStarts[line]
  if (next === undefined) return page.text.length
  return page.text[next - 2] === '\r' ? next - 2 : next - 1
}
