/** The bytes of one sheet on disk. */
import { closeSync, constants, fstatSync, lstatSync, openSync, readFileSync, realpathSync } from 'node:fs'
import { quoted, Refusal } from './refusal.ts'

/** The reader takes no longer text, bytes. */
export const LONGEST_TEXT: number = 1 << 20

/** The bytes of a text; undefined where the file has just gone. @throws Refusal where it is no text that a sheet can be */
export function bytesOf(path: string, file: string): Buffer | undefined {
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
    // a folder on the way may have been changed for a link: what was opened is what stands there without one
    const stands = lstatSync(path)
    if (realpathSync(path) !== path || stands.ino !== status.ino || stands.dev !== status.dev)
      throw outside(file)
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

export const outside = (file: string): Refusal =>
  new Refusal(403, {
    found: `${quoted(file)}, which is no plain file inside the folder`,
    expected: 'a sheet inside the folder, links followed',
  })
