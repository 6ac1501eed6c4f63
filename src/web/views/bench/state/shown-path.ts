/** The way that a verdict speaks of, marked in both pictures when asked for. */
import { type Signal, signal } from '@preact/signals'

export const shownPath: Signal<readonly string[]> = signal([])

/** Ids without their place, as the terminal picture knows them. */
export function withoutPlace(ids: readonly string[]): readonly string[] {
  return ids.map((id) => id.slice(id.indexOf('/') + 1))
}
