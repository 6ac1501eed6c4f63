/** Plain data that outlives a reload of its tab: dialogues half done, drafts not saved. */
import { effect, type Signal, signal } from '@preact/signals'

const BEFORE = 'ringproof/view/'

/**
 * A signal that this tab remembers.
 *
 * @param fits whether what was remembered has the shape; it may be of an earlier build
 */
export function remembered<Value>(
  key: string,
  start: Value,
  fits: (read: unknown) => boolean,
): Signal<Value> {
  const made = signal(start)
  try {
    const read: unknown = JSON.parse(sessionStorage.getItem(BEFORE + key) ?? 'null')
    if (fits(read)) made.value = read as Value
  } catch {
    // what cannot be read is begun anew
  }
  effect(() => {
    const text = made.value === undefined ? undefined : JSON.stringify(made.value)
    try {
      if (text === undefined) sessionStorage.removeItem(BEFORE + key)
      else sessionStorage.setItem(BEFORE + key, text)
    } catch {
      // a browser that keeps nothing keeps the page working
    }
  })
  return made
}

/** Whether something is a map with these keys. */
export function hasKeys(read: unknown, ...keys: readonly string[]): boolean {
  return typeof read === 'object' && read !== null && keys.every((key) => Object.hasOwn(read, key))
}
