/** The view that is shown: loaded when it is first asked for. */
import { type Signal, signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { VIEWS, type View } from './views.ts'

export interface Shown {
  readonly id: string
  readonly title: string
  readonly view: ComponentType
}

export const shown: Signal<Shown | undefined> = signal(undefined)
/** Why a view did not come. */
export const notLoaded: Signal<string | undefined> = signal(undefined)

let asked = ''

/** The view of this word, or the first one. */
export function viewOf(word: string): View | undefined {
  return VIEWS.find(({ id }) => id === word) ?? VIEWS[0]
}

/** Loads and shows a view; only the newest call counts. */
export async function show(word: string): Promise<void> {
  const one = viewOf(word)
  if (one === undefined) return
  asked = one.id
  try {
    const view = await one.load()
    if (asked !== one.id) return
    notLoaded.value = undefined
    shown.value = { id: one.id, title: one.title, view }
  } catch {
    if (asked === one.id) {
      notLoaded.value = `The view “${one.title}” did not come: the page's files may be out of reach, or newer ones may have taken their place.`
    }
  }
}
