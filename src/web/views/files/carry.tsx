/** Carrying sheets: everything as one file, out and in, and single sheets in. */
import { useSignal } from '@preact/signals'
import type { VNode } from 'preact'
import { useId } from 'preact/hooks'
import { bundled } from '../../keep/bundle.ts'
import { Button, Notice } from '../../kit/index.ts'
import { ownSheets } from '../../state/shelf.ts'
import { download } from './download.ts'
import { type TakenIn, takeIn } from './take-in.ts'

export function Carry(): VNode {
  const id = useId()
  const came = useSignal<TakenIn | undefined>(undefined)
  const count = ownSheets.value.length
  return (
    <section aria-labelledby="files-carry" class="screen-only">
      <h2 id="files-carry">Carry sheets</h2>
      <p>
        Take all your own sheets to another browser or keep them safe as one file. A sheet that is here
        already is never written over.
      </p>
      <p class="buttons">
        <Button
          says={`Export all (${count})`}
          disabledBecause={count === 0 ? 'You have no sheets of your own yet.' : undefined}
          onPress={() => download('ringproof-sheets.json', bundled(ownSheets.value), 'application/json')}
        />
      </p>
      <div class="field">
        <label for={id}>Import files</label>
        <p class="hint">An exported file (.json) or single sheets (.yaml).</p>
        <input
          id={id}
          type="file"
          multiple
          accept=".json,.yaml,application/json,text/yaml"
          onChange={(event) => {
            const input = event.currentTarget
            void takeIn([...(input.files ?? [])]).then((all) => {
              came.value = all
              // the same file may be chosen again
              input.value = ''
            })
          }}
        />
      </div>
      {came.value === undefined ? null : <Came came={came.value} />}
    </section>
  )
}

function Came({ came: { taken, same, renamed, faults } }: { readonly came: TakenIn }): VNode {
  return (
    <Notice sort={faults.length === 0 ? 'good' : 'wrong'} title={`${taken.length} taken in`} urgent>
      {taken.length === 0 ? null : <p>{taken.join(', ')}</p>}
      {same.length === 0 ? null : <p>Here already, word for word: {same.join(', ')}.</p>}
      {renamed.map(([from, to]) => (
        <p key={from}>
          {from} is here with another text. The one from the file is now {to}; give one of the two sheets
          another name in its text.
        </p>
      ))}
      <ul>
        {faults.map((fault) => (
          <li key={fault}>{fault}</li>
        ))}
      </ul>
    </Notice>
  )
}
