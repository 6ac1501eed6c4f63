/** A file put in its place in one step: whoever reads it sees the old text or the new one, never a part. */
import { randomUUID } from 'node:crypto'
import {
  closeSync,
  fchmodSync,
  fsyncSync,
  linkSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'

/** The place has been taken, or become another, since it was looked at. */
export class Taken extends Error {}

/**
 * Writes bytes beside a place, makes sure that they are on the disk, looks once more, and puts them there.
 *
 * @param path where, all links followed
 * @param fresh nothing stands there: whoever is there first keeps it
 * @param isAsRead asked right before: whether what stands there is still what the writer had read
 * @throws Taken when it is not; the system's error; in both cases nothing is left beside it
 */
export function put(path: string, bytes: Uint8Array, fresh: boolean, isAsRead: () => boolean): void {
  const beside = join(dirname(path), `.ringproof-${randomUUID()}.tmp`)
  try {
    const handle = openSync(beside, 'wx', 0o666)
    try {
      writeFileSync(handle, bytes)
      const mode = statSync(path, { throwIfNoEntry: false })?.mode
      if (mode !== undefined) fchmodSync(handle, mode & 0o7777)
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
    if (!isAsRead()) throw new Taken()
    if (!(fresh && isLinked(beside, path))) renameSync(beside, path)
  } finally {
    rmSync(beside, { force: true })
  }
  syncFolder(dirname(path))
}

/** A second name for the file, unless the name is taken; false where the file system knows no such thing. */
function isLinked(beside: string, path: string): boolean {
  try {
    linkSync(beside, path)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw new Taken()
    return false
  }
}

/** Makes the new name last as well; some systems cannot, and nothing is wrong then. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r')
    try {
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  } catch {
    // the file itself is on the disk
  }
}
