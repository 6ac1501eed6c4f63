/** The page as plain files, for any static server. */
import { createHash } from 'node:crypto'
import { copyFileSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { refuse } from '../problem.ts'
import { builtPage, type FileList, LIST, listIn } from './built-page.ts'
import { quoted } from './refusal.ts'

/**
 * Writes the built page into a folder, which is made where it is not there. An earlier page there is replaced; the
 * folder is left alone where anything else stands in it, or where a file of the page was changed.
 *
 * @returns how many files were written
 * @throws ProblemError `request-wrong`, `ours`
 */
export function writePage(to: string, from?: string): number {
  if (to === '') {
    refuse({ code: 'request-wrong', found: 'no folder', expected: 'the name of a folder to write into' })
  }
  const { folder, files } = builtPage(from)
  const before = listIn(to) ?? {}
  const there = attempt(to, () => filesIn(to))
  const foreign = there.find((path) => path !== LIST && !isOurs(to, path, before, files))
  if (foreign !== undefined) {
    refuse({
      code: 'request-wrong',
      found: `${quoted(foreign)} in ${quoted(to)}, which is no file of an earlier page`,
      expected: 'a folder that is new, empty, or holds an earlier page and nothing else',
      mend: 'name another folder',
    })
  }
  attempt(to, () => {
    for (const path of [...inOrder(Object.keys(files)), LIST]) copy(join(folder, path), join(to, path))
    for (const path of there)
      if (path !== LIST && !Object.hasOwn(files, path)) rmSync(join(to, path), { force: true })
  })
  return Object.keys(files).length + 1
}

/** In one step: no other name of the file, and no link that stood there, is written through. */
function copy(from: string, to: string): void {
  const beside = `${to}.part`
  mkdirSync(dirname(to), { recursive: true })
  try {
    copyFileSync(from, beside)
    renameSync(beside, to)
  } finally {
    rmSync(beside, { force: true })
  }
}

/** @throws ProblemError `request-wrong` with the system's word where something of the system is in the way */
function attempt<T>(to: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    return refuse({
      code: 'request-wrong',
      found: `${quoted(to)}, which cannot be written (${String((error as NodeJS.ErrnoException).code)})`,
      expected: 'a folder that may be written to, with room in it',
    })
  }
}

/** What others name comes before what names it: whoever loads the page meanwhile finds it whole. */
function inOrder(paths: readonly string[]): readonly string[] {
  const late = (path: string): number => ['index.html', 'service-worker.js'].indexOf(path)
  return [...paths].sort((a, b) => late(a) - late(b))
}

/** All that is below a folder but folders, links among them; a file where the folder should be is itself what is there. */
function filesIn(folder: string): readonly string[] {
  const status = statSync(folder, { throwIfNoEntry: false })
  if (status === undefined) return []
  if (!status.isDirectory()) return ['.']
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .map((path) => path.replaceAll('\\', '/'))
}

/** A file of the earlier page, or of this one where an earlier writing was cut short. */
function isOurs(folder: string, path: string, ...lists: readonly FileList[]): boolean {
  try {
    const hash = createHash('sha256')
      .update(readFileSync(join(folder, path)))
      .digest('hex')
    return lists.some((list) => list[path] === hash)
  } catch {
    return false
  }
}
