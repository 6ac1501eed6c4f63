/** The user's own sheets: in the folder behind the server, or in the browser's store. */
import { useSignal } from '@preact/signals'
import type { VNode } from 'preact'
import type { Kept } from '../../keep/keep.ts'
import { keep, keepWord, removeSheet } from '../../keep/keeper.ts'
import { Button, Dialog, Notice } from '../../kit/index.ts'
import { ownSheets, shelf, shelfState } from '../../state/shelf.ts'
import { download } from './download.ts'
import { SheetRow } from './opener.tsx'

export function Own({ where }: { readonly where: string }): VNode {
  const gone = useSignal<Kept | undefined>(undefined)
  const word = useSignal('')
  const rows = shelf.value.filter(({ own }) => own)
  const remove = async (one: Kept): Promise<void> => {
    word.value = ''
    try {
      const came = await removeSheet(one)
      if (came.done === 'conflict')
        word.value = `${one.file} has become another meanwhile and was not taken away.`
    } catch (thrown) {
      word.value = keepWord(thrown)
    }
    gone.value = undefined
  }
  const further = (one: Kept | undefined): VNode | null =>
    one === undefined ? null : (
      <>
        <Button
          says="Download"
          label={`Download ${one.file}`}
          sort="quiet"
          onPress={() => download(nameOf(one.file), one.text)}
        />
        {keep.value?.sort === 'browser' ? (
          <Button
            says="Take away"
            label={`Take away ${one.file}`}
            sort="quiet"
            onPress={() => (gone.value = one)}
          />
        ) : null}
      </>
    )
  return (
    <section aria-labelledby="files-own">
      <h2 id="files-own">Your own sheets</h2>
      <p>{where === '' ? 'They are not within reach now.' : `They are kept in ${where}.`}</p>
      {rows.length === 0 && shelfState.value === 'ready' ? <p>None yet.</p> : null}
      <ul class="sheets">
        {rows.map((row) => (
          <SheetRow key={`${row.sheet} ${row.file}`} row={row}>
            {further(ownSheets.value.find(({ file }) => file === row.file))}
          </SheetRow>
        ))}
      </ul>
      {word.value === '' ? null : (
        <Notice sort="wrong" urgent>
          <p>{word.value}</p>
        </Notice>
      )}
      {gone.value === undefined ? null : (
        <TakeAway one={gone.value} yes={remove} no={() => (gone.value = undefined)} />
      )}
    </section>
  )
}

interface TakeAwayProps {
  readonly one: Kept
  readonly yes: (one: Kept) => Promise<void>
  readonly no: () => void
}

function TakeAway({ one, yes, no }: TakeAwayProps): VNode {
  return (
    <Dialog title={`Take ${one.file} away?`} closeSays="Keep it" onClose={no}>
      <p>It is then gone from this browser. Download it first if you may want it again.</p>
      <p class="buttons">
        <Button says="Take it away" sort="grave" onPress={() => void yes(one)} />
      </p>
    </Dialog>
  )
}

const nameOf = (file: string): string => file.slice(file.lastIndexOf('/') + 1)
