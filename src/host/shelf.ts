/** Sheets in folders, found by the kind and the name that stand in them, never by the names of files. */
import { dirname, join } from 'node:path'
import type { SheetKind } from '../sheet/model.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { readSheetFile } from './files.ts'
import { type Found, foldersIn, sheetsIn } from './folder.ts'

/** So many levels of folders below a given one are looked through. */
const DEEPEST = 3

/**
 * A shelf of the sheets in folders, nearest first: the asking sheet's own folder, the folders beside it, then each
 * given folder with what is below it, then the packaged one. Of two sheets of one kind and name that are equally
 * near, the first by file name counts. Folders that cannot be read are passed over.
 *
 * What a folder holds is looked up once: make a new shelf to see new files.
 */
export function folderShelf(folders: readonly string[], packaged: string): Shelf {
  const known = new Map<string, readonly Found[]>()
  const inFolder = (folder: string): readonly Found[] => {
    const found = known.get(folder) ?? sheetsIn(folder)
    known.set(folder, found)
    return found
  }
  function* tiers(from: string | undefined): Generator<readonly Found[]> {
    if (from !== undefined) {
      const own = dirname(from)
      yield inFolder(own)
      yield foldersIn(join(own, '..')).flatMap(inFolder)
    }
    for (const folder of [...folders, packaged]) yield below(folder, DEEPEST).flatMap(inFolder)
  }
  /** Of the nearest tier that has a readable one, all sheets of this kind and name. */
  const nearest = (kind: SheetKind, name: string, from: string | undefined): readonly SheetText[] => {
    for (const tier of tiers(from)) {
      const candidates = tier.filter((one) => one.kind === kind && one.name === name).sort(byFileName)
      const texts = candidates.map(({ path }) => textOf(path)).filter((text) => text !== undefined)
      if (texts.length > 0) return texts
    }
    return []
  }
  return {
    find: (kind, name, from) => nearest(kind, name, from)[0],
    twins: (kind, name, from) => nearest(kind, name, from).map(({ file }) => file),
    names(kind: SheetKind, from) {
      const all = [...tiers(from)].flat().filter((one) => one.kind === kind)
      return [...new Set(all.map(({ name }) => name))].sort()
    },
  }
}

/** A folder and the folders below it, to a depth. */
function below(folder: string, deepest: number): readonly string[] {
  const inner = deepest === 0 ? [] : foldersIn(folder)
  return [folder, ...inner.flatMap((one) => below(one, deepest - 1))]
}

/** By the file's own name, then by its folder: the same order on every machine. */
function byFileName(a: Found, b: Found): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1
  return a.path < b.path ? -1 : 1
}

/** Undefined for a file that has gone since its folder was looked through. */
function textOf(path: string): SheetText | undefined {
  try {
    return readSheetFile(path)
  } catch {
    return undefined
  }
}
