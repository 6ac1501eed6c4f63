/** The text of a sheet with the numbers of its lines, and marks where something is wrong. */
import type { RefObject, VNode } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Problem } from '../../../index.ts'
import { pieces, problemLines } from './lines.ts'

export interface EditorProps {
  readonly text: string
  readonly file: string
  readonly problems: readonly Problem[]
  readonly isReadOnly: boolean
  readonly area: RefObject<HTMLTextAreaElement | null>
  readonly onInput: (text: string) => void
  /** Control and S were pressed. */
  readonly onSave: () => void
}

export function Editor({ text, file, problems, isReadOnly, area, onInput, onSave }: EditorProps): VNode {
  const numbers = useRef<HTMLOListElement>(null)
  const behind = useRef<HTMLPreElement>(null)
  // numbers and marks go along with the text
  const follow = (): void => {
    const box = area.current
    if (box === null) return
    if (numbers.current !== null) numbers.current.scrollTop = box.scrollTop
    if (behind.current !== null) {
      behind.current.scrollTop = box.scrollTop
      behind.current.scrollLeft = box.scrollLeft
    }
  }
  useLayoutEffect(follow)
  const lines = text.split('\n')
  const wrong = problemLines(problems, file)
  return (
    <div class={isReadOnly ? 'editor still' : 'editor'}>
      <ol class="numbers" ref={numbers} aria-hidden="true">
        {lines.map((_, k) => {
          const severity = wrong.get(k + 1)
          return (
            <li key={k + 1} class={severity}>
              {severity === undefined ? '' : severity === 'error' ? '✕ ' : '! '}
              {k + 1}
            </li>
          )
        })}
      </ol>
      <div class="text">
        <pre class="behind" ref={behind} aria-hidden="true">
          {lines.map((line, k) => (
            <Line
              key={k + 1}
              line={line}
              at={k + 1}
              problems={wrong.has(k + 1) ? problems : []}
              file={file}
            />
          ))}
        </pre>
        <textarea
          ref={area}
          id="sheet-text"
          value={text}
          readOnly={isReadOnly}
          spellcheck={false}
          autocapitalize="off"
          autocomplete="off"
          wrap="off"
          aria-describedby="sheet-state"
          aria-invalid={[...wrong.values()].includes('error') ? true : undefined}
          onInput={(event) => onInput(event.currentTarget.value)}
          onScroll={follow}
          onKeyDown={(event) => {
            if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 's') return
            event.preventDefault()
            onSave()
          }}
        />
      </div>
    </div>
  )
}

interface LineProps {
  readonly line: string
  readonly at: number
  readonly problems: readonly Problem[]
  readonly file: string
}

function Line({ line, at, problems, file }: LineProps): VNode {
  return (
    <>
      {problems.length === 0
        ? line
        : pieces(line, at, problems, file).map(({ text, severity }, k) =>
            severity === undefined ? (
              text
            ) : (
              <mark key={`${at} ${k}`} class={severity}>
                {text}
              </mark>
            ),
          )}
      {'\n'}
    </>
  )
}
