/** The page as plain files, for any static server. */
import { createHash } from 'node:crypto'
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
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
  const { folder, files } = builtPage(from)
  const before = listIn(to) ?? {}
  const there = filesIn(to)
  const foreign = there.find((path) => path !== LIST && !isOurs(to, path, before, files))
  if (foreign !== undefined) {
    refuse({
      code: 'request-wrong',
      found: `${quoted(foreign)} in ${quoted(to)}, which is no file of an earlier page`,
      expected: 'a folder that is new, empty, or holds an earlier page and nothing else',
      mend: 'name another folder',
    })
  }
  try {
    for (const path of [...inOrder(Object.keys(files)), LIST]) {
      mkdirSync(dirname(join(to, path)), { recursive: true })
      copyFileSync(join(folder, path), join(to, path))
    }
    for (const path of there) if (path !== LIST && !(path in files)) rmSync(join(to, path), { force: true })
  } catch (error) {
    refuse({
      code: 'request-wrong',
      found: `${quoted(to)}, which cannot be written (${String((error as NodeJS.ErrnoException).code)})`,
      expected: 'a folder that may be written to, with room in it',
    })
  }
  return Object.keys(files).length + 1
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
    .map((entry) => join(entry.parentPath, entry.name).slice(join(folder, '/').length))
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
