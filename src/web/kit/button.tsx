/** A button that says what it does, and why it does not. */
import type { VNode } from 'preact'
import { useId, useState } from 'preact/hooks'
import { announce } from './announce.tsx'

export interface ButtonProps {
  /** Its words; they are its name. */
  readonly says: string
  readonly onPress: () => void
  /** For a button that stays down: its state. */
  readonly pressed?: boolean
  /** Why it does nothing now. It keeps its place in the order of keys, and the reason shows. */
  readonly disabledBecause?: string | undefined
  /** `main` for the one thing to do here, `quiet` beside others, `grave` for what cannot be taken back. */
  readonly sort?: 'plain' | 'main' | 'quiet' | 'grave'
  /** A longer name for those who listen; it begins with the words that are seen. */
  readonly label?: string
  /** Keys that do the same, as ARIA writes them: `Control+Z`. */
  readonly keys?: string
  /** Id of what explains it. */
  readonly describedBy?: string
  /** Id of what it opens, and whether that is open. */
  readonly controls?: string
  readonly expanded?: boolean
  readonly id?: string
}

export function Button(props: ButtonProps): VNode {
  const { says, onPress, pressed, disabledBecause, sort = 'plain', label, keys, id } = props
  const own = useId()
  const [hushed, setHushed] = useState(false)
  const reason = `${own}-why`
  const isOff = disabledBecause !== undefined
  const described = [isOff ? reason : undefined, props.describedBy].filter((one) => one !== undefined)
  const button = (
    <button
      type="button"
      id={id}
      class={`button ${sort}`}
      aria-pressed={pressed}
      aria-disabled={isOff ? true : undefined}
      aria-describedby={described.length === 0 ? undefined : described.join(' ')}
      aria-label={label}
      aria-keyshortcuts={keys}
      aria-controls={props.controls}
      aria-expanded={props.expanded}
      onClick={() => {
        if (!isOff) return onPress()
        setHushed(false)
        announce(disabledBecause)
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') setHushed(true)
      }}
      onBlur={() => setHushed(false)}
    >
      {says}
    </button>
  )
  // always within the same element: a button that goes off or on keeps its focus
  return (
    <span class={hushed ? 'reasoned hushed' : 'reasoned'}>
      {button}
      {isOff ? (
        <span class="reason" id={reason}>
          {disabledBecause}
        </span>
      ) : null}
    </span>
  )
}
