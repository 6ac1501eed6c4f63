/** Lines of a text, and where in it a place is. Pure. */
import type { Problem } from '../../../index.ts'

/** How many lines a text has; an empty one has one. */
export function lineCount(text: string): number {
  return text.split('\n').length
}

/** The index of a line and column, both from 1, in UTF-16 units; within the text. */
export function indexOf(text: string, line: number, column: number): number {
  const lines = text.split('\n')
  const before = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0)
  const own = lines[line - 1] ?? ''
  return Math.min(text.length, before + Math.min(Math.max(0, column - 1), own.length))
}

/** The gravest problem of each line, of those that are of this file. */
export function problemLines(
  problems: readonly Problem[],
  file: string,
): ReadonlyMap<number, Problem['severity']> {
  const lines = new Map<number, Problem['severity']>()
  for (const { place, severity } of problems) {
    if (place === undefined || place.file !== file) continue
    if (lines.get(place.line) !== 'error') lines.set(place.line, severity)
  }
  return lines
}

/** A piece of a line, and whether a problem is about it. */
export interface Piece {
  readonly text: string
  readonly severity?: Problem['severity']
}

/** A line in pieces, those that problems are about marked; where they meet the first counts. */
export function pieces(
  line: string,
  at: number,
  problems: readonly Problem[],
  file: string,
): readonly Piece[] {
  const own = problems
    .flatMap(({ place, severity }) =>
      place === undefined || place.file !== file || place.line !== at ? [] : [{ ...place, severity }],
    )
    .sort((p, q) => p.column - q.column)
  const found: Piece[] = []
  let done = 0
  for (const { column, length, severity } of own) {
    const start = Math.min(column - 1, line.length)
    const end = Math.min(start + Math.max(1, length), line.length)
    if (start < done || end === start) continue
    if (start > done) found.push({ text: line.slice(done, start) })
    found.push({ text: line.slice(start, end), severity })
    done = end
  }
  if (done < line.length) found.push({ text: line.slice(done) })
  return found
}
