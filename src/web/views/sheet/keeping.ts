/** Saving the sheet that is edited, making a sheet of the demo one's own, and what the bench does then. */
import { type Signal, signal } from '@preact/signals'
import type { Kept, Saved } from '../../keep/keep.ts'
import { keepWord, saveSheet } from '../../keep/keeper.ts'
import { announce } from '../../kit/index.ts'
import { openSheet } from '../../state/shelf.ts'
import { isKept, present, work } from '../../state/work.ts'
import type { ShelfRow } from '../../talk/protocol.ts'
import { chosen, drafts, keepDraft, own, problems, row, text } from './sheet-state.ts'

/** Another text stands in the file by now. */
export interface Clash {
  readonly file: string
  /** Undefined where the file is gone. */
  readonly now: Kept | undefined
}

export const clash: Signal<Clash | undefined> = signal(undefined)
export const wentWrong: Signal<string | undefined> = signal(undefined)

/** Saves the text as it stands; over what stands there where that has been seen. */
export async function save(over?: { readonly mark: string | null }): Promise<void> {
  const [now, written] = [row.value, text.value]
  if (now === undefined || written === undefined) return
  const mark = over === undefined ? (drafts.value.get(now.file)?.mark ?? own.value?.mark ?? null) : over.mark
  // the bench may differ from its sheet; then it keeps what lies there
  const wasKept = isKept.value
  const came = await tried(now.file, written, mark)
  if (came?.done !== 'saved') return
  keepDraft(now.file, undefined)
  announce(`Saved ${now.file}.`)
  if (problems.value.every(({ severity }) => severity === 'warning')) await follow(now, wasKept)
}

async function tried(file: string, written: string, mark: string | null): Promise<Saved | undefined> {
  wentWrong.value = undefined
  clash.value = undefined
  try {
    const came = await saveSheet(file, written, mark)
    if (came.done === 'conflict') clash.value = { file, now: came.now }
    return came
  } catch (thrown) {
    wentWrong.value = keepWord(thrown)
    return undefined
  }
}

/** The bench judges again what rests on a sheet that has changed. */
async function follow({ sheet, name }: ShelfRow, wasKept: boolean): Promise<void> {
  const history = work.value
  const lies = present.value
  if (history === undefined || lies === undefined) return
  if (sheet === 'rewire' && lies.name === name && wasKept) await openSheet('rewire', name)
  // the same document over other sheets
  else work.value = { ...history, present: { ...lies } }
}

/** A copy among one's own sheets; it comes before the demo's sheet of the same name. */
export async function makeMine(): Promise<void> {
  const [now, written] = [row.value, text.value]
  if (now === undefined || written === undefined) return
  const file = now.file.slice(now.file.lastIndexOf('/') + 1)
  const came = await tried(file, written, null)
  if (came?.done !== 'saved') return
  chosen.value = file
  announce(`${file} is yours now.`)
}

/** Goes on with the text that stands in the file. */
export function takeTheirs(): void {
  const there = clash.value
  if (there === undefined) return
  keepDraft(there.file, undefined)
  clash.value = undefined
}
