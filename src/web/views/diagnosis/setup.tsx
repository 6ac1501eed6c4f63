/** Before the first question: what one is told about the set, and what may be asked. */
import type { VNode } from 'preact'
import { useState } from 'preact/hooks'
import { Button } from '../../kit/index.ts'
import type { Told } from './dialogue.ts'
import { Known } from './known.tsx'

export interface SetupProps {
  /** What one may begin with; undefined while the book is being worked out. */
  readonly complaints: readonly { readonly id: string; readonly says: string }[] | undefined
  readonly told: Told
  readonly waits: boolean
  readonly onBegin: (told: Told) => void
}

const ALLOWED = [
  {
    key: 'inside',
    says: 'The case may be opened',
    hint: 'otherwise only what is found from outside is asked',
  },
  {
    key: 'live',
    says: 'Readings on a live line may be asked for',
    hint: 'only where nothing safer tells enough, and never without its cautions',
  },
  { key: 'pairs', says: 'Look for two faults at once as well', hint: 'takes longer' },
] as const

export function Setup({ complaints, told, waits, onBegin }: SetupProps): VNode {
  const [now, setNow] = useState(told)
  const toggle = (id: string, isOn: boolean): void =>
    setNow({ ...now, symptoms: isOn ? [...now.symptoms, id] : now.symptoms.filter((one) => one !== id) })
  return (
    <form
      class="setup"
      onSubmit={(event) => {
        event.preventDefault()
        if (!waits) onBegin(now)
      }}
    >
      <fieldset class="ticks">
        <legend>What is the complaint?</legend>
        <p class="hint">Tick what you know. None is fine too: then everything is asked.</p>
        <div class="complaints">
          {complaints?.map(({ id, says }) => (
            <label key={id} class="tick">
              <input
                type="checkbox"
                checked={now.symptoms.includes(id)}
                onChange={(event) => toggle(id, event.currentTarget.checked)}
              />
              <span>{says}</span>
            </label>
          ))}
        </div>
        {complaints?.length === 0 ? <p>This set has no symptoms that one could begin with.</p> : null}
      </fieldset>
      <Known
        readings={now.readings ?? []}
        observed={now.observed ?? []}
        onChange={(known) => setNow({ ...now, ...known })}
      />
      <fieldset class="ticks">
        <legend>What may be done?</legend>
        {ALLOWED.map(({ key, says, hint }) => (
          <label key={key} class="tick">
            <input
              type="checkbox"
              checked={now[key]}
              onChange={(event) => setNow({ ...now, [key]: event.currentTarget.checked })}
            />
            <span>
              {says} <span class="hint">({hint})</span>
            </span>
          </label>
        ))}
      </fieldset>
      <Button
        sort="main"
        says="Begin to ask"
        onPress={() => onBegin(now)}
        disabledBecause={waits ? 'The faults of this set are still being worked out' : undefined}
      />
    </form>
  )
}
