/**
 * What a hand can point at in a picture, in one word: the same word in the terminal picture and in the circuit
 * picture, so that one selection shows in both. Marks that stand for a thing carry it as `data-thing`.
 */

/** `terminal:A1`, `core:handset.r2`, `strap:B2-B3`, `part:bell-1`, `slot:regulator`; `branch:…` for what is outside the set. */
export type Thing = `${ThingSort}:${string}`

/** What sorts of thing there are. */
export type ThingSort = 'terminal' | 'core' | 'strap' | 'part' | 'slot' | 'branch'

/** A thing's sort and its name. */
export function thingParts(thing: Thing): { readonly sort: ThingSort; readonly name: string } {
  const at = thing.indexOf(':')
  return { sort: thing.slice(0, at) as ThingSort, name: thing.slice(at + 1) }
}
