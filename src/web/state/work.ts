/** What lies on the bench: one document with its history. Views read the signals and call the functions. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Move, Thing } from '../../index.ts'
import type { OnBench, Side } from '../talk/protocol.ts'
import { amended, begun, changed, type History, redone, undone } from './history.ts'

/** A document: a set as found with the moves made since, and the file that it was opened from or saved to. */
export interface Work extends OnBench {
  readonly title?: string
  readonly notes?: readonly string[]
  /** The rewire sheet that it is, once it has a name. */
  readonly name?: string
  readonly file?: string
}

export const work: Signal<History<Work> | undefined> = signal(undefined)

/** The document as it is now; undefined until one is opened. */
export const present: ReadonlySignal<Work | undefined> = computed(() => work.value?.present)

/** The document as it was last opened or saved. */
export const keptWork: Signal<Work | undefined> = signal(undefined)

/** The user's own sheet that the document was opened from or saved to: its text, and the mark of that text. */
export interface Origin {
  readonly file: string
  readonly text: string
  readonly mark: string
}
export const origin: Signal<Origin | undefined> = signal(undefined)

/** Nothing would be lost if the page were closed now. */
export const isKept: ReadonlySignal<boolean> = computed(() => {
  const { value: now } = present
  const { value: kept } = keptWork
  return now === undefined || (kept !== undefined && workText(now) === workText(kept))
})

/** Which side the pictures show. */
export const side: Signal<Side> = signal<Side>('proposed')
/** One selection for all pictures. */
export const selected: Signal<Thing | undefined> = signal(undefined)
/** What the set and the line are doing: `on-hook`, `off-hook/make`, `on-hook/ringing`. */
export const condition: Signal<string> = signal('on-hook')
/** The pair reversed where the set is plugged in. */
export const reversed: Signal<boolean> = signal(false)

/** How many documents have been opened here: another number means another document. */
export const opening: Signal<number> = signal(0)

/** Puts a document on the bench in the place of the one there; its history begins. */
export function open(one: Work, from?: Origin, kept: Work | undefined = one): void {
  batch(() => {
    work.value = begun(one)
    opening.value = opening.peek() + 1
    keptWork.value = kept
    origin.value = from
    selected.value = undefined
    side.value = 'proposed'
    condition.value = 'on-hook'
    reversed.value = false
  })
}

/** Adds a move, or any other change of the document. */
export function change(next: (now: Work) => Work): void {
  const now = work.value
  if (now !== undefined) work.value = changed(now, next(now.present))
}

export function make(move: Move): void {
  change((now) => ({ ...now, moves: [...now.moves, move] }))
}

export function undo(): void {
  if (work.value !== undefined) work.value = named(undone(work.value), work.value.present)
}

export function redo(): void {
  if (work.value !== undefined) work.value = named(redone(work.value), work.value.present)
}

/** A step back or forward keeps the name that the document was saved under meanwhile. */
function named(history: History<Work>, { name, file }: Work): History<Work> {
  const { present: now } = history
  if (now.name === name && now.file === file) return history
  const { name: _name, file: _file, ...rest } = now
  return amended(history, {
    ...rest,
    ...(name === undefined ? {} : { name }),
    ...(file === undefined ? {} : { file }),
  })
}

/** The document has been saved as this; that is no step of its history. */
export function saved(as: Work, from: Origin): void {
  const now = work.value
  if (now === undefined) return
  const { name, file, title, notes } = as
  batch(() => {
    work.value = amended(now, {
      ...now.present,
      ...(name === undefined ? {} : { name }),
      ...(file === undefined ? {} : { file }),
      ...(title === undefined ? {} : { title }),
      ...(notes === undefined ? {} : { notes }),
    })
    keptWork.value = as
    origin.value = from
  })
}

/** The document as workers take it. */
export function onBench({ set, moves, on, at, in: socket }: Work): OnBench {
  return {
    set,
    moves,
    ...(on === undefined ? {} : { on }),
    ...(at === undefined ? {} : { at }),
    ...(socket === undefined ? {} : { in: socket }),
  }
}

/** What a sheet keeps of a document, as one text to compare by; where it was looked at is not kept. */
function workText({ set, moves, title, notes, name }: Work): string {
  return JSON.stringify([set, moves, title, notes, name])
}
