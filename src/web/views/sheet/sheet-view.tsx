/** The text of a sheet, and what is wrong with it at its line. */
import '../diagnosis/diagnosis.css'
import './sheet.css'
import type { RefObject, VNode } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import type { Problem } from '../../../index.ts'
import { Busy, Button, Notice, Problems } from '../../kit/index.ts'
import { shelf } from '../../state/shelf.ts'
import type { ShelfRow } from '../../talk/protocol.ts'
import { Editor } from './editor.tsx'
import { clash, makeMine, save, takeTheirs, wentWrong } from './keeping.ts'
import { indexOf } from './lines.ts'
import {
  chosen,
  fetchPackaged,
  isDraft,
  isRead,
  keepDraft,
  problems,
  read,
  row,
  text,
  write,
} from './sheet-state.ts'

/** A writer rests so long before the text is read, ms. */
const REST = 300

export function SheetView(): VNode {
  const area = useRef<HTMLTextAreaElement>(null)
  const now = row.value
  const written = text.value
  useEffect(() => {
    void fetchPackaged().catch(() => undefined)
  }, [])
  useEffect(() => {
    problems.value = []
    isRead.value = false
  }, [now?.file])
  useEffect(() => {
    const waiting = setTimeout(() => void read(), REST)
    return () => clearTimeout(waiting)
  }, [now?.file, written])
  return (
    <div class="sheet-view">
      <h1 tabIndex={-1}>Sheet</h1>
      {now === undefined ? (
        <Busy tells="Waiting for the sheets…" />
      ) : (
        <>
          <Which now={now} />
          {written === undefined ? (
            <Busy tells="Fetching its text…" />
          ) : (
            <Written area={area} now={now} text={written} />
          )}
        </>
      )}
    </div>
  )
}

const KINDS = ['set', 'rewire', 'premises', 'line', 'unit', 'job', 'circuit'] as const
const PLURALS = {
  set: 'Sets',
  rewire: 'Rewires',
  premises: 'Premises',
  line: 'Lines',
  unit: 'Units',
  job: 'Jobs',
  circuit: 'Circuits',
} as const

/** Kinds, and at the end what does not say its kind. */
const GROUPS = [...KINDS, undefined]

function Which({ now }: { readonly now: ShelfRow }): VNode {
  return (
    <div class="field">
      <label for="sheet-file">Which sheet</label>
      <select
        id="sheet-file"
        value={now.file}
        onChange={(event) => {
          chosen.value = event.currentTarget.value
        }}
      >
        {GROUPS.map((sort) => {
          const rows = shelf.value.filter((one) => one.sheet === sort)
          if (rows.length === 0) return null
          return (
            <optgroup key={sort ?? ''} label={sort === undefined ? 'Without a kind' : PLURALS[sort]}>
              {rows.map(({ file, name, own, problems: count }) => (
                <option key={file} value={file}>
                  {name}
                  {own ? ` (yours: ${file})` : ''}
                  {count === 0 ? '' : `, ${count} ${count === 1 ? 'problem' : 'problems'}`}
                </option>
              ))}
            </optgroup>
          )
        })}
      </select>
    </div>
  )
}

interface WrittenProps {
  readonly area: RefObject<HTMLTextAreaElement | null>
  readonly now: ShelfRow
  readonly text: string
}

function Written({ area, now, text: written }: WrittenProps): VNode {
  const { file, own } = now
  return (
    <>
      <div class="answers">
        {own ? (
          <>
            <Button
              sort="main"
              says="Save"
              keys="Control+S"
              onPress={() => void save()}
              disabledBecause={isDraft.value ? undefined : 'Nothing was changed since it was saved'}
            />
            <Button
              sort="quiet"
              says="Drop the changes"
              onPress={() => keepDraft(file, undefined)}
              disabledBecause={isDraft.value ? undefined : 'Nothing was changed since it was saved'}
            />
          </>
        ) : (
          <>
            <Button sort="main" says="Make it mine" onPress={() => void makeMine()} />
            <p class="soft">
              This sheet belongs to the demo and stays as it is. A copy of your own can be changed.
            </p>
          </>
        )}
      </div>
      <Clashing />
      {wentWrong.value === undefined ? null : (
        <Notice sort="wrong" title="It was not saved" urgent>
          <p>{wentWrong.value}</p>
        </Notice>
      )}
      <div class="two">
        <div class="editing">
          <label for="sheet-text">Text of {file}</label>
          <Editor
            key={file}
            text={written}
            file={file}
            problems={problems.value}
            isReadOnly={!own}
            area={area}
            onInput={write}
            onSave={() => {
              if (own && isDraft.value) void save()
            }}
          />
        </div>
        <section class="wrongs" aria-labelledby="wrongs-title">
          <h2 id="wrongs-title">What is wrong</h2>
          <p id="sheet-state" aria-live="polite">
            {stateText(own)}
          </p>
          {own ? (
            <p class="soft">The bench and the other views take the text over when it is saved.</p>
          ) : null}
          <Problems problems={problems.value} onPlace={(problem) => show(area.current, problem, written)} />
        </section>
      </div>
    </>
  )
}

function stateText(isOwn: boolean): string {
  const draft = isOwn && isDraft.value ? ' Not saved yet.' : ''
  if (!isRead.value) return `Reading…${draft}`
  const wrong = problems.value.filter(({ severity }) => severity === 'error').length
  const warnings = problems.value.length - wrong
  const parts = [
    ...(wrong > 0 ? [`${wrong} ${wrong === 1 ? 'problem' : 'problems'}`] : []),
    ...(warnings > 0 ? [`${warnings} ${warnings === 1 ? 'warning' : 'warnings'}`] : []),
  ]
  return `${parts.length === 0 ? 'The sheet is sound.' : `${parts.join(', ')}.`}${draft}`
}

/** Moves the caret to a problem and marks what it is about. */
function show(area: HTMLTextAreaElement | null, { place }: Problem, written: string): void {
  if (area === null || place === undefined) return
  const start = indexOf(written, place.line, place.column)
  area.focus()
  area.setSelectionRange(start, Math.min(written.length, start + place.length))
  // the line comes to a third of the way down
  const height = area.scrollHeight / Math.max(1, written.split('\n').length)
  area.scrollTop = Math.max(0, (place.line - 1) * height - area.clientHeight / 3)
}

function Clashing(): VNode | null {
  const there = clash.value
  if (there === undefined) return null
  const { now } = there
  return (
    <Notice sort="wrong" title={`${there.file} has become another`} urgent>
      <p>
        {now === undefined
          ? 'The file is gone since it was read. Nothing was written.'
          : 'Somebody else has written it since it was read. Nothing was written.'}
      </p>
      {now === undefined ? null : (
        <details class="folded">
          <summary>The text that stands there now</summary>
          <pre class="theirs">{now.text}</pre>
        </details>
      )}
      <div class="answers">
        <Button
          says="Write mine over it"
          sort="grave"
          onPress={() => void save({ mark: now?.mark ?? null })}
        />
        <Button says="Take the text that stands there" onPress={takeTheirs} />
      </div>
    </Notice>
  )
}
