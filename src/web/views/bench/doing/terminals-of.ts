import type { Board } from '../../../../index.ts'

/** Every terminal as something to choose. */
export function terminalsOf({ strips }: Board): readonly { readonly value: string; readonly says: string }[] {
  return strips.flatMap(({ terminals }) =>
    terminals.map(({ name, spare }) => ({ value: name, says: spare ? `${name}, spare` : name })),
  )
}
