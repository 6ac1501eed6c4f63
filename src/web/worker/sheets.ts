/** The sheets that a worker was handed, and the rows that the page lists. */
import {
  type Move,
  presentedBy,
  readSheetText,
  refuse,
  rewireText,
  SHEET_KINDS,
  type SheetKind,
  type SheetText,
  type Shelf,
  textShelf,
} from '../../index.ts'
import type { OnBench, ShelfAsk, ShelfRow } from '../talk/protocol.ts'

/** What is in reach of a worker. */
export interface Sheets {
  readonly shelf: Shelf
  /** The same with further texts in front. */
  with(texts: readonly SheetText[] | undefined): Shelf
  rows(): readonly ShelfRow[]
}

export const NO_SHEETS: ShelfAsk = { packaged: [], texts: [] }

export function sheetsOf({ packaged, texts }: ShelfAsk): Sheets {
  const shelf = textShelf(texts, packaged)
  return {
    shelf,
    with: (more = []) => (more.length === 0 ? shelf : textShelf([...more, ...texts], packaged)),
    rows: () => [
      ...texts.flatMap((text) => rowOf(text, true, shelf)),
      ...packaged.flatMap((text) => rowOf(text, false, shelf)),
    ],
  }
}

/**
 * One's own text that does not say what it is has a row all the same, so that it can be found and mended. Packaged
 * sheets are sound: a test of ours reads them all.
 */
function rowOf(text: SheetText, own: boolean, shelf: Shelf): readonly ShelfRow[] {
  const head = presentedBy(text.text)
  const which = SHEET_KINDS.find((one) => one === head?.kind)
  if (!own && which === undefined) return []
  const read = own ? readSheetText(text, shelf) : undefined
  const title = read?.sheet?.title ?? head?.title
  const problems = read?.problems.filter(({ severity }) => severity === 'error').length ?? 0
  return [
    {
      ...(which === undefined ? {} : { sheet: which }),
      name: head?.name ?? text.file.slice(text.file.lastIndexOf('/') + 1),
      ...(title === undefined ? {} : { title }),
      file: text.file,
      own,
      problems,
    },
  ]
}

/** The text of a sheet. @throws ProblemError where there is none of that name */
export function textOf(which: SheetKind, name: string, shelf: Shelf): SheetText {
  const found = shelf.find(which, name)
  if (found !== undefined) return found
  refuse({
    code: 'name-unknown',
    found: `the ${which} \`${name}\``,
    expected: `the name of a ${which} sheet in reach`,
  })
}

/** The set on the bench after these moves as a rewire, for questions that take sheets; the set itself without any. */
export function benchText({ set }: OnBench, moves: readonly Move[], shelf: Shelf): SheetText {
  if (moves.length === 0) return textOf('set', set, shelf)
  return { file: 'bench.yaml', text: rewireText({ name: set, set, moves }) }
}

/** Where the bench stands, as requests say it. */
export function groundOf({ on, at, in: socket }: OnBench): { on?: string; at?: string; in?: string } {
  return {
    ...(on === undefined ? {} : { on }),
    ...(at === undefined ? {} : { at }),
    ...(socket === undefined ? {} : { in: socket }),
  }
}
