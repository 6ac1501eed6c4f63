/** The browser's own store, for pages without a server. */
import { createStore, entries, type UseStore, update } from 'idb-keyval'
import { type Keep, KeepError, type Kept, type KeptAll, type Saved } from './keep.ts'
import { markOf } from './mark.ts'

/** What went wrong with the store, in plain words with what to do. */
export function storeWord(thrown: unknown): string {
  const name = thrown instanceof Error || thrown instanceof DOMException ? thrown.name : ''
  if (name === 'QuotaExceededError') {
    return 'The browser has no more room for this page. Export everything as one file under Files, then take sheets away.'
  }
  if (['SecurityError', 'InvalidStateError', 'UnknownError', 'ReferenceError'].includes(name)) {
    return 'This browser keeps nothing for the page: a private window, perhaps. Download or export your sheets before you close it.'
  }
  return `The browser's store could not be used (${name === '' ? String(thrown) : name}). Export your sheets as one file to be safe.`
}

async function guarded<Value>(does: () => Promise<Value>): Promise<Value> {
  try {
    return await does()
  } catch (thrown) {
    throw thrown instanceof KeepError ? thrown : new KeepError(storeWord(thrown))
  }
}

export function browserKeep(): Keep {
  let made: UseStore | undefined
  const store = (): UseStore => {
    made ??= createStore('ringproof', 'sheets')
    return made
  }
  /** Reads and writes in one transaction: two tabs cannot slip in between. */
  const put = async (file: string, mark: string | null, next: string | undefined): Promise<Saved> => {
    let saved: Saved = { done: 'conflict', now: undefined }
    await update<unknown>(
      file,
      (old) => {
        const now = typeof old === 'string' ? { file, text: old, mark: markOf(old) } : undefined
        if ((now?.mark ?? null) !== mark) {
          saved = { done: 'conflict', now }
          return old
        }
        saved = { done: 'saved', mark: next === undefined ? '' : markOf(next) }
        return next
      },
      store(),
    )
    return saved
  }
  return {
    sort: 'browser',
    all: () =>
      guarded(async (): Promise<KeptAll> => {
        const sheets: Kept[] = []
        const words: string[] = []
        for (const [file, text] of await entries<IDBValidKey, unknown>(store())) {
          // a sheet that was taken away leaves nothing behind its name
          if (text === undefined) continue
          if (typeof file === 'string' && typeof text === 'string')
            sheets.push({ file, text, mark: markOf(text) })
          else words.push(`Passed over: \`${String(file)}\`, which is no sheet.`)
        }
        return { where: 'this browser', sheets: sheets.sort((a, b) => (a.file < b.file ? -1 : 1)), words }
      }),
    save: (file, text, mark) => guarded(() => put(file, mark, text)),
    remove: (file, mark) => guarded(() => put(file, mark, undefined)),
  }
}
