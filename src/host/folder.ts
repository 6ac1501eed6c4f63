/** What lies in one folder: its sheets by kind and name, and its folders. */
import { type Dirent, readdirSync } from 'node:fs'
import { join } from 'node:path'
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
  return entriesIn(folder)
    .filter((entry) => entry.name.endsWith('.yaml') && (entry.isFile() || entry.isSymbolicLink()))
    .slice(0, MOST)
    .flatMap(({ name }) => presented(join(folder, name), name))
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
    const head = readStart(path, HEAD)
    const kind = wordBehind('sheet', head)
    const name = wordBehind('name', head)
    return kind === undefined || name === undefined ? [] : [{ kind, name, file, path }]
  } catch {
    return []
  }
}

/** The word behind a key in the first column, without quotation marks. */
function wordBehind(key: string, head: string): string | undefined {
  return new RegExp(`^\uFEFF?${key}[ \\t]*:[ \\t]+(["']?)([^\\s"'#]+)\\1[ \\t]*(?:#.*)?\\r?$`, 'm').exec(
    head,
  )?.[2]
}
