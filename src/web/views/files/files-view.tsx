/** Where sheets come from and go to: save, open, the user's own, the demo fleet, everything as one file. */
import './files.css'
import type { VNode } from 'preact'
import { keepWords, keptWhere } from '../../keep/keeper.ts'
import { Busy, Notice } from '../../kit/index.ts'
import { shelfState, shelfWord } from '../../state/shelf.ts'
import { Carry } from './carry.tsx'
import { Fleet } from './fleet.tsx'
import { Own } from './own.tsx'
import { Save } from './save.tsx'

export function FilesView(): VNode {
  return (
    <div class="files">
      <h1 tabIndex={-1}>Files</h1>
      {keepWords.value.length === 0 ? null : (
        <Notice sort="wrong" title="Keeping has something to tell" urgent>
          <ul>
            {keepWords.value.map((word) => (
              <li key={word}>{word}</li>
            ))}
          </ul>
        </Notice>
      )}
      {shelfState.value === 'broken' ? (
        <Notice sort="wrong" title="The sheets could not be read" urgent>
          <p>{shelfWord.value}</p>
        </Notice>
      ) : null}
      <Save />
      {shelfState.value === 'loading' ? <Busy tells="Reading the sheets…" /> : null}
      <Own where={keptWhere.value} />
      <Fleet />
      <Carry />
    </div>
  )
}
