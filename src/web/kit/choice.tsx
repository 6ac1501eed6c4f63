/** One of a few, all in sight: a group of radio buttons, gone through with the arrow keys. */
import type { VNode } from 'preact'
import { useId } from 'preact/hooks'

export interface ChoiceProps<Value extends string> {
  /** What is chosen. */
  readonly says: string
  readonly options: readonly { readonly value: Value; readonly says: string; readonly hint?: string }[]
  /** Undefined while nothing is chosen. */
  readonly chosen: Value | undefined
  readonly onChoose: (value: Value) => void
  /** The words of the group are heard but not seen: where the place makes it plain. */
  readonly legendUnseen?: boolean
  readonly disabledBecause?: string | undefined
}

export function Choice<Value extends string>(props: ChoiceProps<Value>): VNode {
  const { says, options, chosen, onChoose, legendUnseen, disabledBecause } = props
  const id = useId()
  const isOff = disabledBecause !== undefined
  return (
    <fieldset
      class="choice"
      aria-disabled={isOff ? true : undefined}
      aria-describedby={isOff ? `${id}-why` : undefined}
    >
      <legend class={legendUnseen === true ? 'unseen' : undefined}>{says}</legend>
      <div class="options">
        {options.map(({ value, says: words, hint }) => (
          <label key={value} class="option">
            <input
              type="radio"
              name={id}
              value={value}
              checked={value === chosen}
              aria-disabled={isOff ? true : undefined}
              onClick={(event) => {
                if (isOff) event.preventDefault()
              }}
              onChange={() => {
                if (!isOff) onChoose(value)
              }}
            />
            <span class="words">
              {words}
              {hint === undefined ? null : <span class="hint">{hint}</span>}
            </span>
          </label>
        ))}
      </div>
      {isOff ? (
        <p class="hint" id={`${id}-why`}>
          {disabledBecause}
        </p>
      ) : null}
    </fieldset>
  )
}
