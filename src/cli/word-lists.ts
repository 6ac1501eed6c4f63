/** Lists of words that a shell completes: what the program knows, asked of the program itself. */
import {
  ANSWER_SCHEMAS,
  LISTS,
  list,
  SHEET_KINDS,
  type SheetKind,
  type Shelf,
  USUAL_CONDITIONS,
} from '../index.ts'

type Names = (shelf: Shelf) => readonly string[]

const sheets =
  (...kinds: readonly SheetKind[]): Names =>
  (shelf) =>
    [...new Set(kinds.flatMap((kind) => shelf.names(kind)))].sort()

const column =
  (what: string, key: string): Names =>
  (shelf) =>
    list({ what }, shelf).rows.map((row) => String(row[key]))

/** The name of a list of words. */
export type WordList =
  | 'targets'
  | 'solvable'
  | 'sides'
  | 'grounds'
  | 'figures'
  | 'conditions'
  | 'instruments'
  | 'lists'
  | 'schemas'
  | 'shells'

/** Shells that a script can be written for. */
export const SHELLS = ['bash', 'zsh', 'fish'] as const
export type Shell = (typeof SHELLS)[number]

/** Every list by its name. */
export const WORD_LISTS: Readonly<Record<WordList, Names>> = {
  targets: sheets('set', 'rewire', 'premises'),
  solvable: sheets('set', 'rewire', 'premises', 'circuit'),
  sides: sheets('set', 'rewire'),
  grounds: (shelf) => [...sheets('premises', 'line')(shelf), 'none'],
  figures: (shelf) => {
    const ids = column('figures', 'figure')(shelf)
    return [...new Set(ids.flatMap((id) => [id.slice(0, id.indexOf('.')), id]))]
  },
  conditions: () => USUAL_CONDITIONS,
  instruments: column('instruments', 'instrument'),
  lists: () => LISTS,
  schemas: () => [...new Set([...SHEET_KINDS, ...Object.keys(ANSWER_SCHEMAS)])],
  shells: () => SHELLS,
}
