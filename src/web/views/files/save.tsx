/** Saving what lies on the bench as a rewire sheet. */
import { useSignal } from '@preact/signals'
import type { VNode } from 'preact'
import type { Problem } from '../../../index.ts'
import { type Called, type Clash, keepWord, keptWhere, saveWork } from '../../keep/keeper.ts'
import { announce, Button, Field, Notice, Problems } from '../../kit/index.ts'
import { isKept, opening, origin, present, type Work } from '../../state/work.ts'
import { AskedWrong } from '../../talk/ask.ts'
import { Conflict } from './conflict.tsx'
import { nameFault } from './name-fault.ts'

export function Save(): VNode {
  const { value: now } = present
  return (
    <section aria-labelledby="files-save">
      <h2 id="files-save">On the bench</h2>
      {now === undefined ? (
        <p>Nothing yet. Open a sheet below, or begin anew from any set.</p>
      ) : (
        <SaveForm key={opening.value} now={now} />
      )}
    </section>
  )
}

function SaveForm({ now }: { readonly now: Work }): VNode {
  const name = useSignal(now.name ?? `${now.set}-rewired`)
  // the title of the set is no title of what was done to it
  const title = useSignal(now.name === undefined ? '' : (now.title ?? ''))
  const clash = useSignal<Clash | undefined>(undefined)
  const problems = useSignal<readonly Problem[]>([])
  const word = useSignal('')
  const good = useSignal('')
  const isOwn = origin.value !== undefined && now.name === name.value
  const save = async (called: Called, over?: { readonly mark: string | null }): Promise<void> => {
    problems.value = []
    word.value = ''
    good.value = ''
    try {
      clash.value = await saveWork(called, over)
      if (clash.value === undefined) {
        good.value = `Saved as ${present.value?.file ?? called.name} in ${keptWhere.value}.`
        announce(good.value)
      }
    } catch (thrown) {
      if (thrown instanceof AskedWrong) problems.value = thrown.problems
      else word.value = keepWord(thrown)
    }
  }
  const notes = now.notes
  const called = (): Called => ({
    name: name.value.trim(),
    ...(title.value.trim() === '' ? {} : { title: title.value.trim() }),
    ...(notes === undefined ? {} : { notes }),
  })
  const isUnchanged = isOwn && isKept.value && title.value === (now.title ?? '')
  return (
    <>
      <p>
        The set <strong>{now.set}</strong> with {now.moves.length} {now.moves.length === 1 ? 'move' : 'moves'}
        . A saved sheet holds the moves; the set stays as it was found.
      </p>
      <div class="pair">
        <Field
          says="Name of the sheet"
          hint="Lower-case letters, digits and hyphens. Another name makes another sheet."
          value={name.value}
          onInput={(value) => {
            name.value = value
          }}
          error={nameFault(name.value.trim())}
          onEnter={() => void save(called())}
        />
        <Field
          says="Title"
          hint="In your own words; may be empty."
          value={title.value}
          spellcheck
          onInput={(value) => {
            title.value = value
          }}
        />
      </div>
      <p class="buttons">
        <Button
          says={isOwn ? 'Save' : 'Save as a new sheet'}
          sort="main"
          onPress={() => void save(called())}
          disabledBecause={
            nameFault(name.value.trim()) ??
            (isUnchanged ? 'Nothing has changed since it was saved.' : undefined)
          }
        />
      </p>
      {good.value === '' ? null : (
        <Notice sort="good">
          <p>{good.value}</p>
        </Notice>
      )}
      {word.value === '' ? null : (
        <Notice sort="wrong" title="Not saved" urgent>
          <p>{word.value}</p>
        </Notice>
      )}
      <Problems problems={problems.value} />
      {clash.value === undefined ? null : (
        <Conflict clash={clash.value} done={() => (clash.value = undefined)} saveAs={save} />
      )}
    </>
  )
}
