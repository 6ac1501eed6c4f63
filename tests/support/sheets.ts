import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { SheetKind } from 'ringproof/sheet/model'
import type { SheetText, Shelf } from 'ringproof/sheet/shelf'

/** The skeletons of the format, copied word for word. */
export const SKELETONS: string = fileURLToPath(new URL('../unit/sheet/skeletons/', import.meta.url))

/** Every sheet of a folder, the file named without the folder. */
export function sheetsIn(folder: string): readonly SheetText[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ file, text: readFileSync(`${folder}/${file}`, 'utf8') }))
}

/** A shelf that holds these sheets, found by the words behind `sheet:` and `name:`; the first of a name counts. */
export function shelfOf(sheets: readonly SheetText[]): Shelf {
  const known = sheets.map((sheet) => ({
    sheet,
    kind: wordBehind('sheet', sheet),
    name: wordBehind('name', sheet),
  }))
  return {
    find: (kind: SheetKind, name: string) =>
      known.find((one) => one.kind === kind && one.name === name)?.sheet,
    names: (kind: SheetKind) =>
      known
        .filter((one) => one.kind === kind)
        .map(({ name }) => name ?? '')
        .sort(),
  }
}

/** A shelf with the skeletons. */
export function skeletonShelf(): Shelf {
  return shelfOf(sheetsIn(SKELETONS))
}

function wordBehind(key: string, { text }: SheetText): string | undefined {
  return new RegExp(`^${key}: (\\S+)`, 'm').exec(text)?.[1]
}
