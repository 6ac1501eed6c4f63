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

/** How often all was forgotten: what was tried before is not noted after it. */
let rounds = 0

/** Notes a step when it is solved, whether or not it is still looked at. What failed is told where it is shown. */
export function noteWhen(step: string, solving: Promise<Tried>): void {
  const mine = rounds
  solving.then(
    (tried) => mine === rounds && note(step, tried),
    () => undefined,
  )
}

/** Forgets all. */
export function beginAnew(): void {
  rounds += 1
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
