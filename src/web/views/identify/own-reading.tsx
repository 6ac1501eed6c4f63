/** A reading that nobody asked for: between which terminals, in which condition, and what the meter showed. */
import type { VNode } from 'preact'
import { useState } from 'preact/hooks'
import type { Problem } from '../../../index.ts'
import { Choice, Field } from '../../kit/index.ts'
import { problemText } from '../diagnosis/problem-text.ts'
import { type OwnReading, readingWritten } from './steps.ts'

export interface OwnReadingProps {
  readonly waits: boolean
  readonly refused: readonly Problem[]
  /** Resolves to whether it was understood. */
  readonly onAdd: (written: string) => Promise<boolean>
}

const EMPTY: OwnReading = { red: '', black: '', condition: 'on-hook', shown: '' }
const CONDITIONS = [
  { value: 'on-hook', says: 'Handset down' },
  { value: 'off-hook', says: 'Handset up' },
  { value: 'off-hook/make', says: 'Handset up, dial held off normal' },
] as const

export function OwnReadingForm({ waits, refused, onAdd }: OwnReadingProps): VNode {
  const [now, setNow] = useState(EMPTY)
  const [isMine, setMine] = useState(false)
  return (
    <form
      class="own-reading"
      onSubmit={(event) => {
        event.preventDefault()
        if (waits) return
        setMine(true)
        void onAdd(readingWritten(now)).then((isTaken) => {
          if (!isTaken) return
          setMine(false)
          setNow({ ...EMPTY, condition: now.condition })
        })
      }}
    >
      <div class="pair">
        <Field
          says="Red lead on"
          value={now.red}
          onInput={(red) => setNow({ ...now, red })}
          hint="Such as A5"
        />
        <Field
          says="Black lead on"
          value={now.black}
          onInput={(black) => setNow({ ...now, black })}
          hint="Such as C1"
        />
      </div>
      <Choice
        says="The set is"
        options={CONDITIONS}
        chosen={now.condition as (typeof CONDITIONS)[number]['value']}
        onChoose={(condition) => setNow({ ...now, condition })}
      />
      <Field
        says="It shows"
        value={now.shown}
        onInput={(shown) => setNow({ ...now, shown })}
        hint="Such as 0.2 Ω, 3k3, open or no such terminal"
        error={isMine && refused.length > 0 ? refused.map(problemText).join(' ') : undefined}
      />
      <div class="answers">
        <button class="button" type="submit" aria-disabled={waits ? true : undefined}>
          Add this reading
        </button>
      </div>
    </form>
  )
}
