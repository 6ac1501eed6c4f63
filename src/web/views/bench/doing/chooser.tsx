/** One name of several, and the button that acts on it: every move by list, for those who do not point. */
import type { VNode } from 'preact'
import { useId, useState } from 'preact/hooks'
import { Button } from '../../../kit/index.ts'

export interface ChooserProps {
  /** What is chosen: `Terminal`. */
  readonly says: string
  readonly options: readonly { readonly value: string; readonly says: string }[]
  /** Words of the button, with what is chosen. */
  readonly does: (value: string) => string
  readonly onDo: (value: string) => void
}

export function Chooser({ says, options, does, onDo }: ChooserProps): VNode | null {
  const id = useId()
  const [chosen, setChosen] = useState('')
  const [first] = options
  if (first === undefined) return null
  const value = options.some((one) => one.value === chosen) ? chosen : first.value
  return (
    <div class="bench-chooser">
      <label for={id}>{says}</label>
      <select id={id} value={value} onChange={(event) => setChosen(event.currentTarget.value)}>
        {options.map((one) => (
          <option key={one.value} value={one.value}>
            {one.says}
          </option>
        ))}
      </select>
      <Button says={does(value)} onPress={() => onDo(value)} />
    </div>
  )
}
