/** What lies in one folder: its sheets by kind and name, and its folders. */
import { type Dirent, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { presentedBy } from '../index.ts'
import { readStart } from './files.ts'

/** A sheet as its head lines present it. */
export interface Found {
  readonly kind: string
  readonly name: string
  /** The file's own name, without its folder. */
  readonly file: string
  readonly path: string
}

/** Kind and name stand within so many bytes. */
const HEAD = 4096
/** So many files or folders of one folder are looked at: a folder with more is no folder of sheets. */
const MOST = 1000

/** The sheets of a folder, by file name; none when it cannot be read. */
export function sheetsIn(folder: string): readonly Found[] {
  return sheetFilesIn(folder).flatMap((name) => presented(join(folder, name), name))
}

/** The names of files that may hold a sheet, links among them. */
export function sheetFilesIn(folder: string): readonly string[] {
  return entriesIn(folder)
    .filter((entry) => entry.name.endsWith('.yaml') && (entry.isFile() || entry.isSymbolicLink()))
    .slice(0, MOST)
    .map(({ name }) => name)
}

/** The folders in a folder, by name, without hidden and installed ones; links are not followed, so that none leads back. */
export function foldersIn(folder: string): readonly string[] {
  return entriesIn(folder)
    .filter(({ name }) => !name.startsWith('.') && name !== 'node_modules')
    .filter((entry) => entry.isDirectory())
    .slice(0, MOST)
    .map(({ name }) => join(folder, name))
}

function entriesIn(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
  } catch {
    return []
  }
}

/** The sheet of a file, when its first lines say kind and name. */
function presented(path: string, file: string): readonly Found[] {
  try {
    const head = presentedBy(readStart(path, HEAD))
    return head === undefined ? [] : [{ kind: head.kind, name: head.name, file, path }]
  } catch {
    return []
  }
}
