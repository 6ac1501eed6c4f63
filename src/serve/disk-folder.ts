/** Sheets in a folder on disk, and nothing but those. */
import { createHash } from 'node:crypto'
import { closeSync, constants, fstatSync, lstatSync, openSync, readFileSync, realpathSync } from 'node:fs'
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { foldersIn, sheetFilesIn } from '../host/folder.ts'
import { type Problem, refuse } from '../problem.ts'
import { put, Taken } from './put.ts'
import { quoted, Refusal } from './refusal.ts'
import type { MarkedSheet, SheetFolder } from './sheet-folder.ts'
import { DEEPEST, isPlainName, isSheetPath } from './sheet-name.ts'

/** The reader takes no longer text, bytes. */
export const LONGEST_TEXT: number = 1 << 20

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
    const status = lstatSync(path, { throwIfNoEntry: false })
    if (status === undefined) return { path, there: false }
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
      const below = (folder: string, depth: number): void => {
        for (const name of sheetFilesIn(folder)) {
          const file = relative(root, join(folder, name)).split(sep).join('/')
          try {
            if (!isSheetPath(file.split('/'))) throw outside(file)
            const sheet = look(file)
            if (sheet !== undefined) sheets.push(sheet)
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
            problems.push({ ...error.problem, severity: 'warning' })
          }
        }
        if (depth > 0) for (const inner of foldersIn(folder)) below(inner, depth - 1)
      }
      below(root, DEEPEST)
      return { sheets, problems }
    },
    read(file) {
      const sheet = look(file)
      if (sheet === undefined) throw missing(file, 'a sheet that is there')
      return sheet
    },
    save(file, text, mark) {
      const bytes = Buffer.from(text, 'utf8')
      const isAsRead = (): boolean => (look(file)?.mark ?? null) === mark
      if (!isAsRead()) return { now: look(file) }
      try {
        put(placeOf(file).path, bytes, mark === null, isAsRead)
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
  const real = realOf(resolve(path))
  if (real !== undefined && lstatSync(real).isDirectory()) return real
  return refuse({
    code: 'file-missing',
    found: `${quoted(path)}, which is no folder`,
    expected: 'a folder with sheets',
    mend: 'make the folder first, or leave it out to see the demo fleet',
  })
}

/** Undefined where a path leads nowhere. */
function realOf(path: string): string | undefined {
  try {
    return realpathSync(path)
  } catch {
    return undefined
  }
}

/** The bytes of a text; undefined where the file has just gone. @throws Refusal where it is no text that a sheet can be */
function bytesOf(path: string, file: string): Buffer | undefined {
  let handle: number | undefined
  try {
    // neither a link that has just been put there, nor a pipe that nobody writes to
    handle = openSync(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK)
    const status = fstatSync(handle)
    if (!status.isFile()) throw outside(file)
    if (status.size > LONGEST_TEXT) {
      throw new Refusal(413, { code: 'too-big', found: quoted(file), expected: 'a sheet of at most 1 MiB' })
    }
    const bytes = readFileSync(handle)
    if (!Buffer.from(bytes.toString('utf8'), 'utf8').equals(bytes)) {
      throw new Refusal(403, {
        code: 'syntax',
        found: `${quoted(file)}, which is not UTF-8`,
        expected: 'a text in UTF-8',
        mend: 'store it as UTF-8 with the editor that wrote it',
      })
    }
    return bytes
  } catch (error) {
    if (error instanceof Refusal) throw error
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined
    throw new Refusal(403, {
      code: 'file-missing',
      found: `${quoted(file)}, which cannot be read`,
      expected: 'a sheet that can be read',
    })
  } finally {
    if (handle !== undefined) closeSync(handle)
  }
}

const missing = (file: string, expected: string): Refusal =>
  new Refusal(404, { code: 'file-missing', found: `${quoted(file)}, which is not there`, expected })

const outside = (file: string): Refusal =>
  new Refusal(403, {
    found: `${quoted(file)}, which is no plain file inside the folder`,
    expected: 'a sheet inside the folder, links followed',
  })

function unwritable(file: string, error: unknown): unknown {
  if (error instanceof Refusal || (error as NodeJS.ErrnoException).code === undefined) return error
  return new Refusal(403, {
    code: 'file-missing',
    found: `${quoted(file)}, which cannot be written (${String((error as NodeJS.ErrnoException).code)})`,
    expected: 'a folder that may be written to, with room in it',
  })
}
