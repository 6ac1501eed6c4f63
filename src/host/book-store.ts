/** Fault books kept on disk between runs. A store that cannot be read or written makes a run slower, never wrong. */
import { randomUUID } from 'node:crypto'
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { BookStore } from '../index.ts'
import { nameOf, sealed, unsealed } from './book-seal.ts'
import { type Bounds, prune } from './book-store-prune.ts'

/** The ending of a kept file. */
const ENDING = '.book'

/** What a store may hold before its oldest files go. */
const BOUNDS: Bounds = { files: 4000, bytes: 256 * 2 ** 20 }

/** So many bytes are written between two looks at how much there is. */
const LOOK_EVERY = 8 * 2 ** 20

/**
 * A store in a folder, which is made when something is first kept. Each entry is a file of its own, named after what
 * decides its content, written beside its place and then put there in one step: two writers of one entry write the
 * same, and whoever dies while writing leaves nothing that is taken for an entry. What is not whole, or not this
 * program's, is passed over as if it were not there.
 */
export function bookStore(folder: string, bounds: Bounds = BOUNDS): BookStore {
  const pathOf = (key: string): string => join(folder, nameOf(key) + ENDING)
  // the first write of a run looks, so that many short runs stay within bounds too
  let written = LOOK_EVERY
  // a folder that cannot be had is asked for once: what it refuses now it refuses for every entry to come
  let refused = false
  return {
    read(key) {
      return quietly(() => {
        const path = pathOf(key)
        const bytes = unsealed(key, readFileSync(path))
        if (bytes !== undefined) touch(path)
        return bytes
      })
    },
    write(key, bytes) {
      if (refused) return
      quietly(() => {
        if (!hasFolder(folder)) {
          refused = true
          return
        }
        const path = pathOf(key)
        const beside = `${path}.${process.pid}.${randomUUID()}.tmp`
        try {
          writeFileSync(beside, sealed(key, bytes), { flag: 'wx', mode: 0o600 })
          renameSync(beside, path)
        } catch (error) {
          rmSync(beside, { force: true })
          throw error
        }
        written += bytes.byteLength
        if (written < LOOK_EVERY) return
        written = 0
        prune(folder, ENDING, bounds)
      })
    },
    remove(key) {
      quietly(() => rmSync(pathOf(key), { force: true }))
    },
  }
}

/** Whether the folder is there, or could be made. */
function hasFolder(folder: string): boolean {
  return quietly(() => makeFolder(folder)) === true
}

/**
 * Makes a folder and those above it, one step at a time. Not `recursive: true`: where a system answers "not there" to a
 * folder that is to be made in one that is there, as below `/proc`, Node 20 tries again without end.
 * @throws Error of the file system where it refuses, or where something else than a folder stands in the way
 */
function makeFolder(folder: string): true {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true) return true
  const above = dirname(folder)
  if (above !== folder) makeFolder(above)
  try {
    mkdirSync(folder, { mode: 0o700 })
  } catch (error) {
    // another run may have been faster
    if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) throw error
  }
  return true
}

/** What was used last goes last. */
function touch(path: string): void {
  const now = new Date()
  quietly(() => utimesSync(path, now, now))
}

/** Nothing that a disk refuses is an error here. */
function quietly<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch {
    return undefined
  }
}
