/** The sheets within reach: the demo fleet and the user's own, and both told to the workers. */
import { batch, type Signal, signal } from '@preact/signals'
import type { Problem, SheetText } from '../../index.ts'
import type { Kept } from '../keep/keep.ts'
import { AskedWrong } from '../talk/ask.ts'
import type { Opened, ShelfRow } from '../talk/protocol.ts'
import { bench, study } from '../talk/solver.ts'
import { open, type Work } from './work.ts'

/** The user's own sheets with their marks. */
export const ownSheets: Signal<readonly Kept[]> = signal([])
/** Every sheet that can be opened, the user's own first. */
export const shelf: Signal<readonly ShelfRow[]> = signal([])
/** `loading` until the workers know the sheets. */
export const shelfState: Signal<'loading' | 'ready' | 'broken'> = signal('loading')
/** What kept the sheets from being read, in plain words. */
export const shelfWord: Signal<string> = signal('')

let packaged: Promise<readonly SheetText[]> | undefined
let turn = 0
/** What the workers were told last, or are being told: they need not hear the same again. */
let telling: { readonly key: string; readonly done: Promise<void> } | undefined

async function fetchFleet(): Promise<readonly SheetText[]> {
  const answer = await fetch('./fleet.json').catch(() => undefined)
  if (answer?.ok !== true)
    throw new Error(`The demo sheets did not come (${answer?.status ?? 'no answer'}). Load the page again.`)
  const came: unknown = await answer.json().catch(() => undefined)
  if (!areSheets(came)) throw new Error('The demo sheets did not come whole. Load the page again.')
  return came
}

function areSheets(came: unknown): came is readonly SheetText[] {
  const isSheet = (one: { file?: unknown; text?: unknown } | null): boolean =>
    typeof one?.file === 'string' && typeof one.text === 'string'
  return Array.isArray(came) && came.every(isSheet)
}

/** The demo's sheets; fetched once. */
export function fleet(): Promise<readonly SheetText[]> {
  packaged ??= fetchFleet().catch((thrown: unknown) => {
    // the next one may try again
    packaged = undefined
    throw thrown
  })
  return packaged
}

/** Tells the workers what sheets there are: the demo's and these. The newest call counts. */
export function setOwn(sheets: readonly Kept[]): Promise<void> {
  ownSheets.value = sheets
  const texts = sheets.map(({ file, text }) => ({ file, text }))
  const key = JSON.stringify(texts)
  if (telling?.key === key) return telling.done
  const done = tell(texts)
  telling = { key, done }
  return done
}

async function tell(texts: readonly SheetText[]): Promise<void> {
  turn += 1
  const mine = turn
  try {
    const ask = { packaged: await fleet().catch((thrown: unknown) => withoutFleet(texts, thrown)), texts }
    // an older call that waited as long would tell what is no longer so
    if (turn !== mine) return
    // asked at once, so that whatever is asked next finds them
    const rows = bench.ask('shelf', ask)
    void study.ask('shelf', ask).catch(() => undefined)
    const all = await rows
    if (turn !== mine) return
    batch(() => {
      shelf.value = all
      shelfState.value = 'ready'
      shelfWord.value = ''
    })
  } catch (thrown) {
    if (turn !== mine) return
    // the next call tries again
    telling = undefined
    batch(() => {
      shelfState.value = 'broken'
      shelfWord.value = thrown instanceof Error ? thrown.message : String(thrown)
    })
  }
}

/** Without the demo's sheets the workers are told all the same: whatever waits for them is answered. */
function withoutFleet(texts: readonly SheetText[], why: unknown): never {
  const ask = { packaged: [], texts }
  void bench.ask('shelf', ask).catch(() => undefined)
  void study.ask('shelf', ask).catch(() => undefined)
  throw why
}

/** A sheet opened for the bench, as a document. */
export function workOf(opened: Opened): Work {
  const { set, on, at, title, moves, notes, rewire } = opened
  return {
    set,
    moves,
    ...(on === undefined ? {} : { on }),
    ...(at === undefined ? {} : { at }),
    // what a set's own sheet notes stays there
    ...(rewire === undefined || notes.length === 0 ? {} : { notes }),
    ...(rewire?.title === undefined ? (title === undefined ? {} : { title }) : { title: rewire.title }),
    ...(rewire === undefined ? {} : { name: rewire.name, file: rewire.file }),
  }
}

/**
 * Puts a sheet on the bench.
 *
 * @returns the problems for which it cannot be opened; none when it lies there
 */
export async function openSheet(
  sheet: 'set' | 'rewire' | 'premises',
  name: string,
  at?: string,
): Promise<readonly Problem[]> {
  try {
    const opened = await bench.ask('open', { sheet, name, ...(at === undefined ? {} : { at }) })
    const file = opened.rewire?.file
    open(
      workOf(opened),
      ownSheets.value.find((one) => one.file === file),
    )
    return []
  } catch (thrown) {
    if (thrown instanceof AskedWrong) return thrown.problems
    throw thrown
  }
}
