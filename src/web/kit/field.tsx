/** A labelled field of text, with a hint and what is wrong with it. */
import type { VNode } from 'preact'
import { useId } from 'preact/hooks'

export interface FieldProps {
  readonly says: string
  readonly value: string
  readonly onInput: (value: string) => void
  /** What is expected, below the label. */
  readonly hint?: string | undefined
  /** What is wrong with what stands there. */
  readonly error?: string | undefined
  /** Return was pressed in it. */
  readonly onEnter?: () => void
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'search'
  /** Names and figures are not words: no spelling marks. */
  readonly spellcheck?: boolean
  readonly id?: string
}

export function Field(props: FieldProps): VNode {
  const { says, value, onInput, hint, error, onEnter, inputMode, spellcheck = false } = props
  const made = useId()
  const id = props.id ?? made
  const described = [hint === undefined ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`].filter(
    Boolean,
  )
  return (
    <div class="field">
      <label for={id}>{says}</label>
      {hint === undefined ? null : (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <input
        id={id}
        type="text"
        value={value}
        inputMode={inputMode}
        spellcheck={spellcheck}
        autocomplete="off"
        autocapitalize="off"
        aria-invalid={error === undefined ? undefined : true}
        aria-describedby={described.length === 0 ? undefined : described.join(' ')}
        onInput={(event) => onInput(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') onEnter?.()
        }}
      />
      {/* always there, so that what appears in it is said */}
      <p class="error" id={`${id}-error`} aria-live="polite">
        {error ?? ''}
      </p>
    </div>
  )
}
