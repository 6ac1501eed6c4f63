/** Sheets as files. What the system says about a file becomes a problem; no error of the system leaves here. */
import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'
import { basename } from 'node:path'
import { refuse } from '../problem.ts'
import type { SheetText } from '../sheet/shelf.ts'

/**
 * So many bytes are read of any sheet. The reader refuses a text of more than 1 MiB; the few bytes more make it
 * see that there is more, also behind a byte order mark, without a giant being read whole.
 */
const MOST_READ = (1 << 20) + 16

/** Why a file cannot be read, by the system's code. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'is not there',
  ENOTDIR: 'is not there',
  EACCES: 'may not be read',
  EPERM: 'may not be read',
  EISDIR: 'is a folder',
  ELOOP: 'leads in a circle',
  ENAMETOOLONG: 'has a name that is too long',
}

/**
 * The text of a sheet.
 *
 * @throws ProblemError `file-missing` when the file is not there, is no plain file or cannot be read
 */
export function readSheetFile(path: string): SheetText {
  try {
    return { file: path, text: readStart(path, MOST_READ) }
  } catch (thrown) {
    const { code } = thrown as { code?: unknown }
    const why = REASONS[String(code)] ?? 'cannot be read'
    return refuse({
      code: 'file-missing',
      found: `${shown(path)}, which ${why}`,
      expected: 'a sheet that can be read',
      mend: `look whether ${shown(basename(path))} is spelt right and in this folder`,
    })
  }
}

/** The first bytes of a plain file as text. Throws the system's error; `EISDIR` for a folder. */
export function readStart(path: string, most: number): string {
  // without blocking: a pipe that nobody writes to would never open
  const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK)
  try {
    const status = fstatSync(file)
    if (!status.isFile()) {
      throw Object.assign(new Error('no plain file'), { code: status.isDirectory() ? 'EISDIR' : 'NOFILE' })
    }
    const buffer = Buffer.alloc(Math.min(most, status.size))
    let length = 0
    while (length < buffer.length) {
      const count = readSync(file, buffer, length, buffer.length - length, length)
      if (count === 0) break
      length += count
    }
    return buffer.toString('utf8', 0, length)
  } finally {
    closeSync(file)
  }
}

/** The longest path that a message shows whole, characters. */
const LONGEST = 120

/** A path as messages show it: in backticks, its end where it is long, nothing invisible that could steer a terminal. */
function shown(path: string): string {
  const clean = Array.from(path.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '·'))
  return `\`${clean.length > LONGEST ? `…${clean.slice(1 - LONGEST).join('')}` : clean.join('')}\``
}
