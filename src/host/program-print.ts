/** A print of the program's very files: what an earlier build has kept is not this build's. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

let known: string | undefined

/**
 * The hash of all code beside this file, and below the folder above where this is one module of many.
 *
 * @returns undefined where the code cannot be read; nothing that is kept can be trusted then
 */
export function programPrint(): string | undefined {
  try {
    known ??= printOf(codeFolder(fileURLToPath(import.meta.url)))
  } catch {
    return undefined
  }
  return known
}

/** The folder that holds all code: the file's own, or the one above the folder `host`. */
export function codeFolder(file: string): string {
  const folder = dirname(file)
  return basename(folder) === 'host' ? dirname(folder) : folder
}

/** The hash of a folder's code: every file's path and content. */
export function printOf(folder: string): string {
  const hash = createHash('sha256')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.[jt]s$/.test(file) && !file.endsWith('.d.ts'))
    .sort()
  for (const file of files)
    hash
      .update(`${file}\0`)
      .update(readFileSync(join(folder, file)))
      .update('\0')
  return hash.digest('hex')
}
