/** What the fragment asks to lay on the bench. */

/** What can be laid on the bench by its name. */
export type Sort = 'set' | 'rewire' | 'premises'

/** Reads `set/meadow`; undefined where it cannot be read. */
export function readOpen(text: string): { readonly sort: Sort; readonly name: string } | undefined {
  const [, sort, name] = /^(set|rewire|premises)\/(.+)$/.exec(text) ?? []
  return sort === undefined || name === undefined ? undefined : { sort: sort as Sort, name }
}
