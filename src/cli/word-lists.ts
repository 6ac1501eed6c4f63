/** Lists of words that a shell completes: what the program knows, asked of the program itself. */
import {
  ANSWER_SCHEMAS,
  DRAW_LAWS,
  LISTS,
  list,
  PICTURES,
  readSheetText,
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

/** Names of the places or the sockets of all premises in reach. */
const ofPremises =
  (key: 'sets' | 'sockets'): Names =>
  (shelf) => {
    const names = shelf.names('premises').flatMap((name) => {
      const text = shelf.find('premises', name)
      const sheet = text === undefined ? undefined : readSheetText(text, shelf, 'premises').sheet
      return Object.keys(sheet?.[key] ?? {})
    })
    return [...new Set(names)].sort()
  }

/** The name of a list of words. */
export type WordList =
  | 'targets'
  | 'solvable'
  | 'sides'
  | 'grounds'
  | 'figures'
  | 'conditions'
  | 'places'
  | 'sockets'
  | 'ranges'
  | 'instruments'
  | 'laws'
  | 'pictures'
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
  sides: sheets('set', 'rewire', 'premises'),
  grounds: (shelf) => [...sheets('premises', 'line')(shelf), 'none'],
  figures: (shelf) => {
    const ids = column('figures', 'figure')(shelf)
    return [...new Set(ids.flatMap((id) => [id.slice(0, id.indexOf('.')), id]))]
  },
  conditions: (shelf) => [
    ...USUAL_CONDITIONS,
    ...ofPremises('sets')(shelf).flatMap((place) => [`${place}=on-hook`, `${place}=off-hook`]),
  ],
  places: ofPremises('sets'),
  sockets: ofPremises('sockets'),
  ranges: column('ranges', 'range'),
  instruments: column('instruments', 'instrument'),
  laws: () => DRAW_LAWS,
  pictures: () => PICTURES,
  lists: () => LISTS,
  schemas: () => [...new Set([...SHEET_KINDS, ...Object.keys(ANSWER_SCHEMAS)])],
  shells: () => SHELLS,
}
