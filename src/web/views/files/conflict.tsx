/** Two writers of one file: both texts are shown, and the reader chooses. */
import { useSignal } from '@preact/signals'
import type { VNode } from 'preact'
import type { Called, Clash } from '../../keep/keeper.ts'
import { reload } from '../../keep/keeper.ts'
import { Button, Dialog, Field, Notice } from '../../kit/index.ts'
import { openSheet, ownSheets, shelf } from '../../state/shelf.ts'
import { nameFault } from './name-fault.ts'

export interface ConflictProps {
  readonly clash: Clash
  readonly done: () => void
  readonly saveAs: (called: Called, over?: { readonly mark: string | null }) => Promise<void>
}

export function Conflict({ clash, done, saveAs }: ConflictProps): VNode {
  const { file, mine, called, now } = clash
  const name = useSignal(freeName(called.name))
  const word = useSignal('')
  const fault =
    nameFault(name.value) ?? (isTaken(name.value) ? 'There is a sheet of this name already.' : undefined)
  const takeTheirs = async (): Promise<void> => {
    await reload()
    const row = shelf.value.find((one) => one.file === file && one.own)
    const problems =
      row === undefined || row.sheet !== 'rewire' ? undefined : await openSheet('rewire', row.name)
    if (problems?.length === 0) done()
    else word.value = 'Their text cannot be opened on the bench. Look at it in the view Sheet, or keep yours.'
  }
  return (
    <Dialog title={`${file} has become another`} closeSays="Decide later" onClose={done} wide>
      <p>
        {now === undefined
          ? 'The file is gone since you read it. Nothing was written.'
          : 'Another tab or program wrote it since you read it. Nothing was written: look at both and choose.'}
      </p>
      <div class="both">
        <section>
          <h3 id="clash-mine">Yours, not saved yet</h3>
          <textarea readOnly rows={14} aria-labelledby="clash-mine" value={mine} />
        </section>
        <section>
          <h3 id="clash-theirs">Theirs, in the file now</h3>
          <textarea
            readOnly
            rows={14}
            aria-labelledby="clash-theirs"
            value={now?.text ?? 'The file is not there.'}
          />
        </section>
      </div>
      <Field
        says="Keep yours under another name"
        value={name.value}
        error={fault}
        onInput={(value) => (name.value = value)}
      />
      <p class="buttons">
        <Button
          says="Keep yours under this name"
          sort="main"
          disabledBecause={fault}
          onPress={() => void saveAs({ ...called, name: name.value })}
        />
        {now === undefined ? null : (
          <Button says="Take theirs and drop yours" onPress={() => void takeTheirs()} />
        )}
        <Button
          says={now === undefined ? 'Write the file anew' : 'Write yours over theirs'}
          sort="grave"
          onPress={() => void saveAs(called, { mark: now?.mark ?? null })}
        />
      </p>
      {word.value === '' ? null : (
        <Notice sort="wrong" urgent>
          <p>{word.value}</p>
        </Notice>
      )}
    </Dialog>
  )
}

const isTaken = (name: string): boolean =>
  shelf.value.some((one) => one.own && one.name === name) ||
  ownSheets.value.some(({ file }) => file === `${name}.yaml`)

/** The name with the first number that makes it free. */
function freeName(name: string): string {
  let number = 2
  while (isTaken(`${name}-${number}`)) number += 1
  return `${name}-${number}`
}
