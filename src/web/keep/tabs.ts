/** What the tabs of one browser tell each other: who is open, and that a sheet has changed. */
type Word =
  | { readonly says: 'who' }
  | { readonly says: 'here'; readonly tab: string }
  | { readonly says: 'changed' }

const WAIT_MS = 250

const channel: BroadcastChannel | undefined =
  typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('ringproof')

let own = ''
const others = new Set<string>()
const listeners = new Set<() => void>()

function send(word: Word): void {
  channel?.postMessage(word)
}

channel?.addEventListener('message', ({ data }: MessageEvent<Word>) => {
  if (data.says === 'who' && own !== '') send({ says: 'here', tab: own })
  if (data.says === 'here') others.add(data.tab)
  if (data.says === 'changed') for (const one of listeners) one()
})

/** Tells the other tabs that sheets have changed. */
export function tellChanged(): void {
  send({ says: 'changed' })
}

/** Calls when another tab has changed sheets. */
export function onChanged(does: () => void): void {
  listeners.add(does)
}

/** This tab's own word and those of the tabs that are open beside it. */
export interface Tabs {
  readonly tab: string
  /** The word under which this tab noted its work before; another when the tab was doubled. */
  readonly before: string
  readonly alive: ReadonlySet<string>
}

/** Finds out who is open. A doubled tab brings its twin's word along and takes a new one. */
export async function meetTabs(): Promise<Tabs> {
  send({ says: 'who' })
  if (channel !== undefined) await new Promise((done) => setTimeout(done, WAIT_MS))
  const before = remembered()
  own = before === '' || others.has(before) ? fresh() : before
  try {
    sessionStorage.setItem('ringproof/tab', own)
  } catch {
    // a browser that keeps nothing: the word lasts as long as the page
  }
  return { tab: own, before: before === '' ? own : before, alive: new Set([...others, own]) }
}

/** The word under which this tab noted its work before a reload; empty for a new tab. */
export function remembered(): string {
  try {
    return sessionStorage.getItem('ringproof/tab') ?? ''
  } catch {
    return ''
  }
}

function fresh(): string {
  return [...crypto.getRandomValues(new Uint8Array(8))]
    .map((one) => one.toString(16).padStart(2, '0'))
    .join('')
}
