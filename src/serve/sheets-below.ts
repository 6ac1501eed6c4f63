/** Which files below a folder may hold sheets, without opening one. */
import { join, relative, sep } from 'node:path'
import { foldersIn, sheetFilesIn } from '../host/folder.ts'
import { DEEPEST } from './sheet-name.ts'

/** So many are looked at. A folder with more, such as a whole disk, is no folder of sheets. */
export const MOST_SHEETS = 1000
export const MOST_FOLDERS = 1000

export interface SheetsBelow {
  /** Paths from the folder, `/` between their parts; what is near comes first. */
  readonly files: readonly string[]
  /** Whether there is no more than these. */
  readonly isWhole: boolean
}

/** The sheets of a folder and of those below it. */
export function sheetsBelow(root: string): SheetsBelow {
  const files: string[] = []
  let layer: readonly string[] = [root]
  let left = MOST_FOLDERS
  for (let depth = 0; depth <= DEEPEST && layer.length > 0; depth += 1) {
    const looked = layer.slice(0, left)
    left -= looked.length
    for (const folder of looked) {
      for (const name of sheetFilesIn(folder)) {
        if (files.length === MOST_SHEETS) return { files, isWhole: false }
        files.push(relative(root, join(folder, name)).split(sep).join('/'))
      }
    }
    if (looked.length < layer.length) return { files, isWhole: false }
    if (depth < DEEPEST) layer = inner(looked, left + 1)
  }
  return { files, isWhole: true }
}

/** Folders in folders, one more at most than can still be looked at. */
function inner(folders: readonly string[], most: number): readonly string[] {
  const found: string[] = []
  for (const folder of folders) {
    if (found.length >= most) break
    found.push(...foldersIn(folder))
  }
  return found
}
