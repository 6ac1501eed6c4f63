/** A file put in its place in one step: whoever reads it sees the old text or the new one, never a part. */
import { randomUUID } from 'node:crypto'
import {
  accessSync,
  closeSync,
  constants,
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
 * @throws Taken when it is not; the system's error; in both cases nothing is left beside it. A file that nobody may
 * write stays, though its folder would let it be replaced.
 */
export function put(path: string, bytes: Uint8Array, fresh: boolean, isAsRead: () => boolean): void {
  const beside = join(dirname(path), `.ringproof-${randomUUID()}.tmp`)
  try {
    const handle = openSync(beside, 'wx', 0o666)
    try {
      writeFileSync(handle, bytes)
      const mode = modeOf(path)
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

/** Undefined where nothing stands there. @throws the system's error, EACCES among them where it may not be written */
function modeOf(path: string): number | undefined {
  const mode = statSync(path, { throwIfNoEntry: false })?.mode
  if (mode === undefined) return undefined
  accessSync(path, constants.W_OK)
  // who runs the whole machine may write anything, and yet somebody has locked this
  if ((mode & 0o222) === 0) throw Object.assign(new Error('locked'), { code: 'EACCES' })
  return mode
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
