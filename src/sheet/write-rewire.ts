/** A rewire as the text of a sheet, in the form in which people write them. */
import { Document, isMap, isSeq, Scalar, stringify } from 'yaml'
import { ProblemError } from '../problem.ts'
import type { Move, RewireSheet } from './model.ts'
import { readSheet } from './read.ts'
import type { SheetText, Shelf } from './shelf.ts'
import { mended } from './write-over.ts'
import { type Plain, writtenMove } from './written.ts'

/** What the sheet shall say. */
export interface RewireAsked {
  readonly name: string
  /** What an old text says stays where this is absent. */
  readonly title?: string
  readonly set: string
  readonly moves: readonly Move[]
  readonly notes?: readonly string[]
  /** The sheet as it was: comments, order and form of what does not change are kept, byte for byte. */
  readonly old?: SheetText
}

/** Finds every sheet: whether the set is there is a question for whoever reads the text where it will lie. */
const ALL: Shelf = { find: () => ({ file: '', text: '' }), names: () => [] }

/**
 * A rewire sheet as text. Reading it gives these moves, this name and set.
 *
 * @throws ProblemError with what the reader would refuse: a name of other letters, a move that says nothing it knows
 */
export function rewireText(asked: RewireAsked): string {
  const keys = keysOf(asked)
  const gone = asked.notes?.length === 0 ? ['notes'] : []
  const over = asked.old && mended(asked.old.text, keys, keyText, gone)
  if (over !== undefined && says(over, asked)) return over
  const whole = `${Object.entries(keys)
    .map(([key, value]) => keyText(key, value))
    .join('\n')}\n`
  const file = asked.old?.file ?? 'rewire.yaml'
  const { sheet, problems } = readSheet({ file, text: whole }, ALL, 'rewire')
  if (sheet === undefined) throw new ProblemError(problems)
  return whole
}

/** The keys in the order of the house. */
function keysOf({ name, title, set, moves, notes }: RewireAsked): Readonly<Record<string, Plain>> {
  return {
    ringproof: 1,
    sheet: 'rewire',
    name,
    ...(title === undefined ? {} : { title }),
    set,
    moves: moves.map(writtenMove),
    ...(notes === undefined || notes.length === 0 ? {} : { notes }),
  }
}

/** One key and its value, without the end of the line; what stands below a move in braces. */
function keyText(key: string, value: Plain): string {
  const document = new Document({ [key]: value })
  const under = isMap(document.contents) ? document.contents.get(key, true) : undefined
  if (isSeq(under)) {
    if (under.items.length === 0) under.flow = true
    for (const item of under.items) {
      const part = isMap(item) ? item.get('with', true) : undefined
      if (isMap(part)) part.flow = true
      // a text of several lines stays in one
      if (item instanceof Scalar) inOneLine(item)
    }
  } else if (under instanceof Scalar) inOneLine(under)
  return stringify(document, { lineWidth: 0, flowCollectionPadding: false }).trimEnd()
}

function inOneLine(scalar: Scalar): void {
  if (typeof scalar.value === 'string' && scalar.value.includes('\n')) scalar.type = Scalar.QUOTE_DOUBLE
}

/** Whether a text is read as what was asked for. */
function says(text: string, asked: RewireAsked): boolean {
  const { sheet } = readSheet({ file: asked.old?.file ?? 'rewire.yaml', text }, ALL, 'rewire')
  return sheet !== undefined && saidBy(sheet, asked) === saidBy(asked, asked)
}

function saidBy(
  one: Pick<RewireSheet, 'name' | 'set' | 'moves' | 'title' | 'notes'>,
  asked: RewireAsked,
): string {
  const { name, set, title, notes = [], moves } = one
  return JSON.stringify([
    name,
    set,
    asked.title === undefined ? null : title,
    asked.notes === undefined ? null : notes,
    moves.map(writtenMove),
  ])
}
