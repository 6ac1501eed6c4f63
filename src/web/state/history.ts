/** What was, is and may be again: undo and redo without end. Pure; every function leaves its argument as it is. */

export interface History<Value> {
  readonly past: readonly Value[]
  readonly present: Value
  readonly future: readonly Value[]
}

export function begun<Value>(present: Value): History<Value> {
  return { past: [], present, future: [] }
}

/** Goes on; what had been undone is forgotten. */
export function changed<Value>({ past, present }: History<Value>, next: Value): History<Value> {
  return { past: [...past, present], present: next, future: [] }
}

/** One step back; the same where there is none. */
export function undone<Value>(history: History<Value>): History<Value> {
  const before = history.past.at(-1)
  if (before === undefined) return history
  return {
    past: history.past.slice(0, -1),
    present: before,
    future: [history.present, ...history.future],
  }
}

/** One step forward; the same where there is none. */
export function redone<Value>(history: History<Value>): History<Value> {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return { past: [...history.past, history.present], present: next, future }
}
