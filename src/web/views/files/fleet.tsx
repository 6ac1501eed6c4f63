/** The demo fleet by kind. */
import type { VNode } from 'preact'
import { shelf } from '../../state/shelf.ts'
import type { ShelfRow } from '../../talk/protocol.ts'
import { SheetRow } from './opener.tsx'

const SORTS: readonly { readonly sort: ShelfRow['sheet']; readonly title: string; readonly says: string }[] =
  [
    { sort: 'set', title: 'Sets', says: 'Begin anew with the set as it was found.' },
    { sort: 'rewire', title: 'Rewires', says: 'A set with moves made on it.' },
    { sort: 'premises', title: 'Premises', says: 'Sets that share a line.' },
  ]

export function Fleet(): VNode {
  return (
    <section aria-labelledby="files-fleet">
      <h2 id="files-fleet">The demo fleet</h2>
      <p>
        All of it is invented. It comes with the page and cannot be changed; what you make of it is saved as
        your own.
      </p>
      {SORTS.map(({ sort, title, says }) => {
        const rows = shelf.value.filter((row) => !row.own && row.sheet === sort)
        return (
          <details key={sort} open={sort === 'set'}>
            <summary>
              <strong>{title}</strong> ({rows.length})
            </summary>
            <p>{says}</p>
            <ul class="sheets">
              {rows.map((row) => (
                <SheetRow key={row.name} row={row} />
              ))}
            </ul>
          </details>
        )
      })}
    </section>
  )
}
