/** Names of sheets as requests write them. */
import { quoted, Refusal } from './refusal.ts'

/** So many folders below the given one are served, as many as a shelf looks through. */
export const DEEPEST = 3
/** The longest part of a path, bytes. Most file systems allow no more. */
const LONGEST_PART = 255
const LONGEST_PATH = 1000

/** Characters that no part has: signs of paths, drives and encodings, and what cannot be seen. */
const STRANGE = /[/\\:%*?"<>|\p{C}\p{Zl}\p{Zp}]/u

/** Whether a part of a path is a name and nothing else: not hidden, not installed, nothing that steers. */
export function isPlainName(part: string): boolean {
  return (
    part !== '' &&
    !part.startsWith('.') &&
    !/[. ]$/.test(part) &&
    part.toLowerCase() !== 'node_modules' &&
    !STRANGE.test(part) &&
    Buffer.byteLength(part) <= LONGEST_PART
  )
}

/** Whether these parts name a sheet in the folder or below it. */
export function isSheetPath(parts: readonly string[]): boolean {
  const last = parts.at(-1) ?? ''
  return (
    parts.length <= DEEPEST + 1 &&
    parts.every(isPlainName) &&
    last.endsWith('.yaml') &&
    Buffer.byteLength(parts.join('/')) <= LONGEST_PATH
  )
}

/**
 * The path of a sheet from the rest of an address: each part decoded once, and only once.
 * @returns parts joined by `/`
 * @throws Refusal 400
 */
export function sheetNameOf(encoded: string): string {
  const parts = encoded.split('/').map(decoded)
  if (isSheetPath(parts)) return parts.join('/')
  throw new Refusal(400, {
    found: quoted(encoded),
    expected: 'the path of a sheet inside the folder, ending in `.yaml`',
    mend: 'use letters, digits, hyphens and blanks in names, and no hidden folder',
  })
}

/** What cannot be decoded is no name. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return ''
  }
}
