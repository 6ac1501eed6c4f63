/** Drawing each thing once. */
import type { Mark } from '../../mark.ts'

interface Kept {
  readonly place: object | undefined
  readonly marks: Map<string, Mark>
}

const kept = new WeakMap<object, Kept>()

/**
 * The mark of a thing at a place in a state, the very same each time while these are: a picture that is drawn again
 * draws only what has changed, and whoever shows it can tell by identity. Things and places are never changed once
 * they are made, so this hides nothing.
 * @param state whatever else the mark hangs on
 */
export function drawnOnce(thing: object, place: object | undefined, state: string, make: () => Mark): Mark {
  let own = kept.get(thing)
  if (own === undefined || own.place !== place) {
    own = { place, marks: new Map() }
    kept.set(thing, own)
  }
  const before = own.marks.get(state)
  if (before !== undefined) return before
  const made = make()
  own.marks.set(state, made)
  return made
}
