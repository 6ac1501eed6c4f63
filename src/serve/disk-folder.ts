/** Sheets in a folder on disk, and nothing but those. */
import { createHash } from 'node:crypto'
import { lstatSync, readdirSync, realpathSync } from 'node:fs'
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { type Problem, refuse } from '../problem.ts'
import { put, Taken } from './put.ts'
import { quoted, Refusal } from './refusal.ts'
import { bytesOf, outside } from './sheet-bytes.ts'
import type { MarkedSheet, SheetFolder } from './sheet-folder.ts'
import { isPlainName, isSheetPath } from './sheet-name.ts'
import { MOST_FOLDERS, MOST_SHEETS, sheetsBelow } from './sheets-below.ts'

/** Lists hold no more than this in all, bytes: the page keeps every sheet at hand. */
const MOST_LISTED = 16 << 20

const TOO_MANY: Problem = {
  code: 'too-big',
  severity: 'warning',
  found: 'a folder with more sheets or folders in it than a bench takes: the furthest are left out',
  expected: `at most ${MOST_SHEETS} sheets in ${MOST_FOLDERS} folders, ${MOST_LISTED >> 20} MiB in all`,
  mend: 'open the folder in which the sheets are',
}

const markOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/**
 * The folder behind a path.
 *
 * Everything here is done without waiting: between the look at a file and the write no other request of this process
 * can come in, so no lock is needed.
 * @throws ProblemError `file-missing` where it is no folder
 */
export function diskFolder(path: string): SheetFolder {
  const root = rootOf(path)

  /** Where a sheet really lies once all links are followed; refused where that is not in the folder. */
  const placeOf = (file: string): { readonly path: string; readonly there: boolean } => {
    const asked = join(root, ...file.split('/'))
    const folder = realOf(dirname(asked))
    if (folder === undefined) throw missing(file, 'a folder that is there')
    if (!isInside(folder)) throw outside(file)
    const path = join(folder, basename(asked))
    if (!isThere(path, file)) return { path, there: false }
    const real = realOf(path)
    if (real === undefined || !isInside(dirname(real)) || !isSheetPath(partsOf(real))) throw outside(file)
    return { path: real, there: true }
  }
  const partsOf = (real: string): readonly string[] => relative(root, real).split(sep)
  const isInside = (folder: string): boolean => {
    const way = relative(root, folder)
    return way === '' || (!isAbsolute(way) && way.split(sep).every(isPlainName))
  }

  const look = (file: string): MarkedSheet | undefined => {
    const { path, there } = placeOf(file)
    if (!there) return undefined
    const bytes = bytesOf(path, file)
    return bytes === undefined ? undefined : { file, text: bytes.toString('utf8'), mark: markOf(bytes) }
  }

  return {
    name: basename(root) || root,
    list() {
      const sheets: MarkedSheet[] = []
      const problems: Problem[] = []
      const { files, isWhole } = sheetsBelow(root)
      let room = MOST_LISTED
      for (const file of files) {
        try {
          if (!isSheetPath(file.split('/'))) throw outside(file)
          const sheet = look(file)
          room -= sheet === undefined ? 0 : Buffer.byteLength(sheet.text)
          if (room < 0) break
          if (sheet !== undefined) sheets.push(sheet)
        } catch (error) {
          if (!(error instanceof Refusal)) throw error
          problems.push({ ...error.problem, severity: 'warning' })
        }
      }
      return { sheets, problems: isWhole && room >= 0 ? problems : [TOO_MANY, ...problems] }
    },
    read(file) {
      const sheet = look(file)
      if (sheet === undefined) throw missing(file, 'a sheet that is there')
      return sheet
    },
    save(file, text, mark) {
      const bytes = Buffer.from(text, 'utf8')
      const { path } = placeOf(file)
      // a link may have been turned elsewhere meanwhile
      const isAsRead = (): boolean => placeOf(file).path === path && (look(file)?.mark ?? null) === mark
      if (!isAsRead()) return { now: look(file) }
      try {
        put(path, bytes, mark === null, isAsRead)
      } catch (error) {
        if (error instanceof Taken) return { now: look(file) }
        throw unwritable(file, error)
      }
      return { mark: markOf(bytes) }
    },
  }
}

/** @throws ProblemError `file-missing` */
function rootOf(path: string): string {
  const real = path === '' ? undefined : realOf(resolve(path))
  if (real !== undefined && isReadable(real)) return real
  return refuse({
    code: 'file-missing',
    found: `${quoted(path)}, which is no folder that can be read`,
    expected: 'a folder with sheets',
    mend: 'make the folder first, or leave it out to see the demo fleet',
  })
}

function isReadable(folder: string): boolean {
  try {
    readdirSync(folder)
    return true
  } catch {
    return false
  }
}

/** Undefined where a path leads nowhere. */
function realOf(path: string): string | undefined {
  try {
    return realpathSync(path)
  } catch {
    return undefined
  }
}

/** Whether anything stands at a place, a link that leads nowhere too. @throws Refusal where that cannot be told */
function isThere(path: string, file: string): boolean {
  try {
    return lstatSync(path, { throwIfNoEntry: false }) !== undefined
  } catch {
    // below a file, with a name that is too long for this disk, in a folder that may not be read
    throw missing(file, 'a sheet in a folder that can be read')
  }
}

const missing = (file: string, expected: string): Refusal =>
  new Refusal(404, { code: 'file-missing', found: `${quoted(file)}, which is not there`, expected })

function unwritable(file: string, error: unknown): unknown {
  if (error instanceof Refusal || (error as NodeJS.ErrnoException).code === undefined) return error
  return new Refusal(403, {
    code: 'file-missing',
    found: `${quoted(file)}, which cannot be written (${String((error as NodeJS.ErrnoException).code)})`,
    expected: 'a folder that may be written to, with room in it',
  })
}
