/**
 * Unsaved work outlives the page: each tab notes its document in the browser, and finds it again after a reload.
 * What a closed tab left behind is offered to the next.
 */
import type { Move } from '../../index.ts'
import type { Origin, Work } from '../state/work.ts'

/** What is needed of `localStorage` and `sessionStorage`. */
export type Notes = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

/** What a tab had on its bench. */
export interface Noted {
  readonly tab: string
  /** When, ms since 1970. */
  readonly at: number
  readonly work: Work
  /** The document as last opened or saved; absent when never. */
  readonly kept?: Work
  /** The sheet that it came from. */
  readonly origin?: Origin
}

const BEFORE = 'ringproof/work/'

/** Writes what a tab has on its bench. @returns false where the browser keeps nothing */
export function note(notes: Notes, noted: Noted): boolean {
  try {
    notes.setItem(BEFORE + noted.tab, JSON.stringify(noted))
    return true
  } catch {
    return false
  }
}

/** What this tab had; undefined where there is nothing or nothing that makes sense. */
export function notedBy(notes: Notes, tab: string): Noted | undefined {
  try {
    return readNoted(notes.getItem(BEFORE + tab))
  } catch {
    return undefined
  }
}

export function forget(notes: Notes, tab: string): void {
  try {
    notes.removeItem(BEFORE + tab)
  } catch {
    // nothing was kept, nothing is to be forgotten
  }
}

/** What other tabs left, the newest first. `alive` are those still open. */
export function leftBehind(notes: Notes, alive: ReadonlySet<string>): readonly Noted[] {
  const found: Noted[] = []
  try {
    for (let at = 0; at < notes.length; at += 1) {
      const key = notes.key(at)
      if (key === null || !key.startsWith(BEFORE) || alive.has(key.slice(BEFORE.length))) continue
      const noted = readNoted(notes.getItem(key))
      if (noted !== undefined) found.push(noted)
    }
  } catch {
    return []
  }
  return found.sort((a, b) => b.at - a.at)
}

/** What a browser kept may have been cut or altered: it is taken only when it has the shape of a document. */
function readNoted(text: string | null): Noted | undefined {
  if (text === null) return undefined
  let read: unknown
  try {
    read = JSON.parse(text)
  } catch {
    return undefined
  }
  const { tab, at, work, kept, origin } = mapOf(read)
  const one = readWork(work)
  if (typeof tab !== 'string' || typeof at !== 'number' || one === undefined) return undefined
  const before = readWork(kept)
  const from = readOrigin(origin)
  return {
    tab,
    at,
    work: one,
    ...(before === undefined ? {} : { kept: before }),
    ...(from === undefined ? {} : { origin: from }),
  }
}

function readOrigin(read: unknown): Origin | undefined {
  const { file, text, mark } = mapOf(read)
  const isWhole = typeof file === 'string' && typeof text === 'string' && typeof mark === 'string'
  return isWhole ? { file, text, mark } : undefined
}

function mapOf(read: unknown): Readonly<Record<string, unknown>> {
  return typeof read === 'object' && read !== null ? (read as Record<string, unknown>) : {}
}

function readWork(read: unknown): Work | undefined {
  const map = mapOf(read)
  const { set, moves, notes } = map
  if (typeof set !== 'string' || !Array.isArray(moves)) return undefined
  if (!moves.every((move) => typeof move === 'object' && move !== null)) return undefined
  const words = Object.fromEntries(
    (['on', 'at', 'in', 'title', 'name', 'file'] as const).flatMap((key) =>
      typeof map[key] === 'string' ? [[key, map[key]]] : [],
    ),
  )
  const written = Array.isArray(notes) && notes.every((one) => typeof one === 'string') ? { notes } : {}
  return { set, moves: moves as Move[], ...words, ...written }
}
