/** How far the learner has come; kept in this browser alone. */
import { type Signal, signal } from '@preact/signals'

/** A step that was tried: whether the expectation held, and the line that stays. */
export interface Tried {
  /** Absent where the learner had it shown. */
  readonly held?: boolean
  readonly learned: string
}

export type Progress = Readonly<Record<string, Tried>>

const KEY = 'ringproof.lesson'

function kept(): Progress {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}')
    if (typeof read !== 'object' || read === null) return {}
    return Object.fromEntries(Object.entries(read).filter(([, one]) => isTried(one)))
  } catch {
    // a store that is shut or holds something else: the lesson begins anew
    return {}
  }
}

function isTried(one: unknown): boolean {
  return typeof one === 'object' && one !== null && 'learned' in one && typeof one.learned === 'string'
}

export const progress: Signal<Progress> = signal(kept())

/** Notes a step. */
export function note(step: string, tried: Tried): void {
  keep({ ...progress.value, [step]: tried })
}

/** Forgets all. */
export function beginAnew(): void {
  keep({})
}

function keep(next: Progress): void {
  progress.value = next
  try {
    localStorage.setItem(KEY, JSON.stringify(next))
  } catch {
    // without a store it lasts as long as the page
  }
}
