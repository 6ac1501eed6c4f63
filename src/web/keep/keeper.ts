/** The place where this page keeps sheets, chosen once: the server's folder, or the browser's own store. */
import { batch, type Signal, signal } from '@preact/signals'
import { ownSheets, setOwn } from '../state/shelf.ts'
import { type Origin, onBench, origin, present, saved } from '../state/work.ts'
import { bench } from '../talk/solver.ts'
import { type Keep, KeepError, type Kept, type Saved } from './keep.ts'
import { serverKeep } from './server.ts'
import { browserKeep } from './store.ts'
import { onChanged, tellChanged } from './tabs.ts'

export const keep: Signal<Keep | undefined> = signal(undefined)
/** `this browser`, `the folder my-sheets`. */
export const keptWhere: Signal<string> = signal('')
/** What keeping has to tell, in plain words. */
export const keepWords: Signal<readonly string[]> = signal([])

/** Finds the place and reads what is there. Never throws: what went wrong is told in `keepWords`. */
export async function startKeeping(token: string | undefined): Promise<void> {
  onChanged(() => void reload())
  keep.value = token === undefined ? browserKeep() : serverKeep(token)
  await reload()
  // a server without a folder keeps nothing
  if (keptWhere.value === '' && keepWords.value.length === 0) {
    keep.value = browserKeep()
    await reload()
  }
}

/** Reads all own sheets again. */
export async function reload(): Promise<void> {
  try {
    const all = await keep.value?.all()
    batch(() => {
      keptWhere.value = all?.where ?? ''
      keepWords.value = all?.words ?? []
    })
    await setOwn(all?.sheets ?? [])
  } catch (thrown) {
    keepWords.value = [keepWord(thrown)]
    await setOwn(ownSheets.value)
  }
}

/** What went wrong with keeping, as a sentence. */
export function keepWord(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown)
}

/** Saves a sheet's text. @param mark of the text that it began from; null for a new file @throws KeepError */
export async function saveSheet(file: string, text: string, mark: string | null): Promise<Saved> {
  const came = await place().save(file, text, mark)
  if (came.done === 'saved') {
    tellChanged()
    await reload()
  }
  return came
}

/** Takes a sheet out of the browser's store. @throws KeepError */
export async function removeSheet({ file, mark }: Kept): Promise<Saved> {
  const { remove } = place()
  if (remove === undefined) throw new KeepError('Sheets in a folder are taken away there, not here.')
  const came = await remove(file, mark)
  tellChanged()
  await reload()
  return came
}

function place(): Keep {
  const { value } = keep
  if (value === undefined) throw new KeepError('The page is still starting. Try again in a moment.')
  return value
}

/** What a document is to be called. */
export interface Called {
  readonly name: string
  readonly title?: string
  readonly notes?: readonly string[]
}

/** A document that met another text in its file. */
export interface Clash {
  readonly file: string
  readonly mine: string
  readonly called: Called
  /** Undefined when the file is gone. */
  readonly now: Kept | undefined
}

/**
 * Saves what lies on the bench as a rewire sheet.
 *
 * @param over the text to write over, once it has been seen
 * @returns the clash, where the file has become another; nothing was written then
 * @throws KeepError, AskedWrong
 */
export async function saveWork(
  called: Called,
  over?: { readonly mark: string | null },
): Promise<Clash | undefined> {
  const now = present.value
  if (now === undefined) return undefined
  const from: Origin | undefined = now.name === called.name ? origin.value : undefined
  const { text } = await bench.ask('write', {
    bench: onBench(now),
    ...called,
    ...(from === undefined ? {} : { old: { file: from.file, text: from.text } }),
  })
  const file = from?.file ?? `${called.name}.yaml`
  const came = await saveSheet(file, text, over === undefined ? (from?.mark ?? null) : over.mark)
  if (came.done === 'conflict') return { file, mine: text, called, now: came.now }
  saved({ ...now, ...called, file }, { file, text, mark: came.mark })
  return undefined
}
