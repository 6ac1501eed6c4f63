/** Which sheet is being edited, the drafts of it and of others, and what is wrong with it. */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Problem, SheetText } from '../../../index.ts'
import type { Kept } from '../../keep/keep.ts'
import { remembered } from '../../state/remembered.ts'
import { fleet, ownSheets, shelf } from '../../state/shelf.ts'
import { present } from '../../state/work.ts'
import type { ShelfRow } from '../../talk/protocol.ts'
import { bench } from '../../talk/solver.ts'

/** A text that has not been saved, and the mark of the text that it began from. */
export interface Draft {
  readonly text: string
  /** Null where the sheet is new. */
  readonly mark: string | null
}

/** The file that is shown. */
export const chosen: Signal<string | undefined> = signal(undefined)
/** Drafts by file; nothing is lost when the view is left. */
const written: Signal<readonly (readonly [string, Draft])[]> = remembered('drafts', [], Array.isArray)
export const drafts: ReadonlySignal<ReadonlyMap<string, Draft>> = computed(() => new Map(written.value))
export const problems: Signal<readonly Problem[]> = signal([])
/** Whether the text as it stands has been read. */
export const isRead: Signal<boolean> = signal(false)
/** The demo's texts, as far as they came. */
export const packaged: Signal<readonly SheetText[]> = signal([])

export async function fetchPackaged(): Promise<void> {
  packaged.value = await fleet()
}

/** The row of the sheet that is shown: the chosen one, or the one that lies on the bench. */
export const row: ReadonlySignal<ShelfRow | undefined> = computed(() => {
  const rows = shelf.value
  const lies = present.value
  return (
    rows.find(({ file }) => file === chosen.value) ??
    rows.find(({ sheet, name }) => sheet === 'rewire' && name === lies?.name) ??
    rows.find(({ sheet, name }) => sheet === 'set' && name === lies?.set) ??
    rows.find(({ sheet }) => sheet === 'set')
  )
})

/** The user's own text with its mark; undefined for a sheet of the demo. */
export const own: ReadonlySignal<Kept | undefined> = computed(() =>
  ownSheets.value.find(({ file }) => file === row.value?.file),
)

/** The text as it was read last, without the draft. */
export const savedText: ReadonlySignal<string | undefined> = computed(() => {
  const now = row.value
  if (now === undefined) return undefined
  if (now.own) return own.value?.text
  return packaged.value.find(({ file }) => file === now.file)?.text
})

/** The text that is shown. */
export const text: ReadonlySignal<string | undefined> = computed(
  () => drafts.value.get(row.value?.file ?? '')?.text ?? savedText.value,
)

export const isDraft: ReadonlySignal<boolean> = computed(
  () => text.value !== undefined && text.value !== savedText.value,
)

/** Takes what was typed. */
export function write(next: string): void {
  const file = row.value?.file
  if (file === undefined) return
  const before = drafts.value.get(file)
  keepDraft(file, { text: next, mark: before === undefined ? (own.value?.mark ?? null) : before.mark })
  isRead.value = false
}

export function keepDraft(file: string, draft: Draft | undefined): void {
  const all = new Map(drafts.value)
  if (draft === undefined) all.delete(file)
  else all.set(file, draft)
  written.value = [...all]
}

/** Reads the text as it stands. */
export async function read(): Promise<void> {
  const [file, now] = [row.value?.file, text.value]
  if (file === undefined || now === undefined) return
  const came = await bench.newest('read', 'read', { text: { file, text: now } })
  if (came === undefined || row.value?.file !== file || text.value !== now) return
  problems.value = came.problems
  isRead.value = true
}
