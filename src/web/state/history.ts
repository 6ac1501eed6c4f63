/**
 * What was, is and may be again: undo and redo without end. Pure; every function leaves its argument as it is.
 * Past and future are chains that share their links, so that a step costs one link however long the history is.
 */

/** A value and what lies behind it. */
export interface Link<Value> {
  readonly value: Value
  readonly next: Link<Value> | undefined
  /** How many there are from here on. */
  readonly count: number
}

export interface History<Value> {
  /** The nearest first. */
  readonly past: Link<Value> | undefined
  readonly present: Value
  /** The nearest first. */
  readonly future: Link<Value> | undefined
}

const linked = <Value>(value: Value, next: Link<Value> | undefined): Link<Value> => ({
  value,
  next,
  count: 1 + (next?.count ?? 0),
})

export function begun<Value>(present: Value): History<Value> {
  return { past: undefined, present, future: undefined }
}

/** Goes on; what had been undone is forgotten. */
export function changed<Value>({ past, present }: History<Value>, next: Value): History<Value> {
  return { past: linked(present, past), present: next, future: undefined }
}

/** One step back; the same where there is none. */
export function undone<Value>(history: History<Value>): History<Value> {
  const { past, present, future } = history
  return past === undefined
    ? history
    : { past: past.next, present: past.value, future: linked(present, future) }
}

/** One step forward; the same where there is none. */
export function redone<Value>(history: History<Value>): History<Value> {
  const { past, present, future } = history
  return future === undefined
    ? history
    : { past: linked(present, past), present: future.value, future: future.next }
}

/** Another present without a step: what is no change of the work, such as the name that it was saved under. */
export function amended<Value>({ past, future }: History<Value>, present: Value): History<Value> {
  return { past, present, future }
}

/** So many steps back are there. */
export function stepsBack<Value>({ past }: History<Value>): number {
  return past?.count ?? 0
}

/** So many steps forward are there. */
export function stepsForward<Value>({ future }: History<Value>): number {
  return future?.count ?? 0
}
