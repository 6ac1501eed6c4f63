/** A new part: its kind, its ends and its values, read by the sheets' own reader. */
import type { VNode } from 'preact'
import { useId, useState } from 'preact/hooks'
import type { Board, Problem } from '../../../../index.ts'
import { Button, Field, Problems } from '../../../kit/index.ts'
import { present } from '../../../state/work.ts'
import type { PartField, PartForm } from '../../../talk/part-forms.ts'
import { bench } from '../../../talk/solver.ts'
import { attempt } from '../state/attempt.ts'
import { problemsOf } from '../state/judgement.ts'

export function FitPart({ board }: { readonly board: Board }): VNode {
  const [forms, setForms] = useState<readonly PartForm[]>([])
  const [part, setPart] = useState('')
  const [name, setName] = useState('')
  const [values, setValues] = useState<Readonly<Record<string, string>>>({})
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const id = useId()
  const form = forms.find((one) => one.part === part) ?? forms[0]
  const load = (): void => {
    if (forms.length > 0) return
    bench
      .ask('partForms', null)
      .then(setForms)
      .catch((thrown: unknown) => setProblems(problemsOf(thrown)))
  }
  const place = async (): Promise<void> => {
    const set = present.peek()?.set
    if (set === undefined || form === undefined) return
    try {
      const own = Object.fromEntries(form.fields.map(({ key }) => [key, values[key] ?? '']))
      const move = await bench.ask('partMove', { set, name, part: form.part, values: own })
      setProblems([])
      if (await attempt(move)) setName('')
    } catch (thrown) {
      setProblems(problemsOf(thrown))
    }
  }
  return (
    <details class="bench-fit" onToggle={load}>
      <summary>Fit a part</summary>
      {form === undefined ? null : (
        <>
          <div class="bench-chooser">
            <label for={`${id}-part`}>Kind</label>
            <select
              id={`${id}-part`}
              value={form.part}
              onChange={(event) => setPart(event.currentTarget.value)}
            >
              {forms.map((one) => (
                <option key={one.part} value={one.part}>
                  {one.part.replaceAll('-', ' ')}
                </option>
              ))}
            </select>
          </div>
          <Field
            says="Name"
            hint="lower-case letters, digits and hyphens: bell-resistor"
            value={name}
            onInput={setName}
          />
          {form.fields.map((field) => (
            <OneField
              key={`${form.part} ${field.key}`}
              field={field}
              board={board}
              value={values[field.key] ?? ''}
              onInput={(value) => setValues((now) => ({ ...now, [field.key]: value }))}
            />
          ))}
          <Problems problems={problems} />
          <p class="buttons">
            <Button
              says="Fit it"
              sort="main"
              disabledBecause={name.trim() === '' ? 'it needs a name' : undefined}
              onPress={() => void place()}
            />
          </p>
        </>
      )}
    </details>
  )
}

interface OneProps {
  readonly field: PartField
  readonly board: Board
  readonly value: string
  readonly onInput: (value: string) => void
}

function OneField({ field, board, value, onInput }: OneProps): VNode {
  const { key, says, needed, sort, example, words } = field
  const id = useId()
  const choices = sort === 'end' ? endsOf(board) : words
  if (choices === undefined) {
    const shown = example === undefined ? says : `${says}; for example ${example}`
    return (
      <Field says={needed ? key : `${key} (may be left out)`} hint={shown} value={value} onInput={onInput} />
    )
  }
  return (
    <div class="bench-chooser">
      <label for={id}>{key}</label>
      <select id={id} value={value} onChange={(event) => onInput(event.currentTarget.value)}>
        <option value="">choose…</option>
        {choices.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </div>
  )
}

/** Terminals, joints that other parts meet at, the earth, and the handset's cores. */
function endsOf({ strips, parts, cores }: Board): readonly string[] {
  const terminals = strips.flatMap(({ terminals: all }) => all.map(({ name }) => name))
  const joints = parts.flatMap(({ ends }) => ends.filter(({ joint }) => joint).map(({ on }) => on))
  const inHandset = cores.filter(({ endsIn }) => endsIn === 'handset').map(({ core }) => core)
  return [...new Set([...terminals, ...joints, 'earth', ...inHandset])]
}
