/** What can be laid on the bench: sets as they are, and rewires with their moves. */
import type { VNode } from 'preact'
import type { Problem } from '../../../../index.ts'
import { Busy, Notice, Problems } from '../../../kit/index.ts'
import { go } from '../../../shell/route.ts'
import { shelf, shelfState, shelfWord } from '../../../state/shelf.ts'
import type { Sort } from './read-open.ts'

export function ChooseSheet({ problems }: { readonly problems: readonly Problem[] }): VNode {
  return (
    <div class="bench-choose">
      <h1>Bench</h1>
      <p>
        Choose what lies on the bench. Then move its leads, work its handset and its line, and see what
        follows. Nothing here touches a real line.
      </p>
      <Problems problems={problems} />
      {shelfState.value === 'loading' ? <Busy tells="Looking for sheets…" /> : null}
      {shelfState.value === 'broken' ? <Notice sort="wrong">{shelfWord.value}</Notice> : null}
      <div class="bench-lists">
        <List says="Sets" sort="set" />
        <List says="Rewires: sets with their moves" sort="rewire" />
      </div>
    </div>
  )
}

function List({ says, sort }: { readonly says: string; readonly sort: Sort }): VNode | null {
  const rows = shelf.value.filter(({ sheet: one }) => one === sort)
  if (rows.length === 0) return null
  return (
    <section>
      <h2>{says}</h2>
      <ul class="bench-list">
        {rows.map(({ name, title, own, problems }) => (
          <li key={`${name} ${own}`}>
            <button
              type="button"
              class="bench-sheet"
              onClick={() => go('bench', { open: `${sort}/${name}` })}
            >
              <strong>{name}</strong>
              {title === undefined ? null : <span class="bench-sheet-title">{title}</span>}
              {own ? <span class="bench-sheet-title">your own</span> : null}
              {problems === 0 ? null : <span class="bench-sheet-title">{problems} to put right first</span>}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
