/** What lies on the bench: one document with its history. Views read the signals and call the functions. */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Move, Thing } from '../../index.ts'
import type { OnBench, Side } from '../talk/protocol.ts'
import { begun, changed, type History, redone, undone } from './history.ts'

/** A document: a set as found with the moves made since, and the file that it was opened from or saved to. */
export interface Work extends OnBench {
  readonly title?: string
  /** The rewire sheet that it is, once it has a name. */
  readonly name?: string
  readonly file?: string
}

export const work: Signal<History<Work> | undefined> = signal(undefined)

/** The document as it is now; undefined until one is opened. */
export const present: ReadonlySignal<Work | undefined> = computed(() => work.value?.present)

/** Which side the pictures show. */
export const side: Signal<Side> = signal<Side>('proposed')
/** One selection for all pictures. */
export const selected: Signal<Thing | undefined> = signal(undefined)
/** What the set and the line are doing: `on-hook`, `off-hook/make`, `on-hook/ringing`. */
export const condition: Signal<string> = signal('on-hook')
/** The pair reversed where the set is plugged in. */
export const reversed: Signal<boolean> = signal(false)

export function open(one: Work): void {
  work.value = begun(one)
  selected.value = undefined
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
  if (work.value !== undefined) work.value = undone(work.value)
}

export function redo(): void {
  if (work.value !== undefined) work.value = redone(work.value)
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
