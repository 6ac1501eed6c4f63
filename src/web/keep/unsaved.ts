/** Notes the document while it changes, brings it back after a reload, and finds what other tabs left. */
import { effect, type Signal, signal } from '@preact/signals'
import { isKept, keptWork, open, origin, present } from '../state/work.ts'
import { forget, leftBehind, type Noted, type Notes, note, notedBy } from './journal.ts'
import { meetTabs, remembered } from './tabs.ts'

/** Unsaved work of tabs that were closed. */
export const left: Signal<readonly Noted[]> = signal([])
/** False where the browser keeps nothing: unsaved work would be lost with the page. */
export const isNoting: Signal<boolean> = signal(true)

let tab = ''

/** The browser's own notes; undefined where it refuses them. */
function notes(): Notes | undefined {
  try {
    return localStorage
  } catch {
    return undefined
  }
}

/** Brings back what this tab had. @returns whether there was something */
export function resume(): boolean {
  const all = notes()
  const mine = all === undefined ? undefined : notedBy(all, remembered())
  if (mine !== undefined) open(mine.work, mine.origin, mine.kept)
  return mine !== undefined
}

/** Begins to note, once it is known which other tabs are open, and finds what closed ones left. */
export async function startNoting(): Promise<void> {
  const all = notes()
  const met = await meetTabs()
  tab = met.tab
  if (all !== undefined) {
    const found = leftBehind(all, new Set([...met.alive, met.before]))
    // what had been saved anyhow is no loss
    for (const one of found) if (isSaved(one)) forget(all, one.tab)
    left.value = found.filter((one) => !isSaved(one))
  }
  effect(() => {
    const { value: work } = present
    const { value: kept } = keptWork
    const { value: from } = origin
    if (work === undefined) return
    isNoting.value =
      all !== undefined &&
      note(all, {
        tab,
        at: Date.now(),
        work,
        ...(kept === undefined ? {} : { kept }),
        ...(from === undefined ? {} : { origin: from }),
      })
  })
}

const isSaved = ({ work, kept }: Noted): boolean =>
  JSON.stringify(work.moves) === JSON.stringify(kept?.moves ?? [])

/** Puts another tab's work on this bench. */
export function takeUp(one: Noted): void {
  open(one.work, one.origin, one.kept)
  drop(one)
}

/** Forgets another tab's work. */
export function drop(one: Noted): void {
  const all = notes()
  if (all !== undefined) forget(all, one.tab)
  left.value = left.value.filter(({ tab: other }) => other !== one.tab)
}

/** Asks before the page is closed, where unsaved work would be lost. */
export function guardLeaving(): void {
  addEventListener('beforeunload', (event) => {
    if (!isNoting.value && !isKept.value) event.preventDefault()
  })
}
