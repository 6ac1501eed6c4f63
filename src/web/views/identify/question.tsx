/** What to look at or to read next, and what may be answered. */
import type { VNode } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import {
  type IdentifyNext,
  identifyAnswers,
  identifyOutcome,
  identifyWhere,
  type Problem,
  tellsText,
} from '../../../index.ts'
import { Button, Field } from '../../kit/index.ts'
import { problemText } from '../diagnosis/problem-text.ts'

export interface QuestionProps {
  readonly next: IdentifyNext
  readonly count: number
  readonly waits: boolean
  readonly refused: readonly Problem[]
  readonly onAnswer: (line: string) => void
}

/** So many names of an outcome are written out. */
const NAMED = 4

export function Question({ next, count, waits, refused, onAnswer }: QuestionProps): VNode {
  const { id, ask, asks, again, bits, effort } = next
  const title = useRef<HTMLHeadingElement>(null)
  const first = useRef(true)
  useEffect(() => {
    if (!first.current) title.current?.focus()
    first.current = false
  }, [id, again])
  const answers = identifyAnswers(next)
  const off = waits ? 'Still working out the last answer' : undefined
  return (
    <>
      <h2 id="question-title" ref={title} tabIndex={-1}>
        <span class="count">Question {count}</span> {asks}
        {again ? ' Read it once more: what was read does not fit.' : ''}
      </h2>
      <p class="how">
        {ask === 'reading'
          ? `${identifyWhere(next)} A lead goes to a screw, never to a core.`
          : 'Look at the set, unplugged. Answer only what you have seen yourself.'}
      </p>
      <p class="soft">
        About {effort} {effort === 1 ? 'minute' : 'minutes'}; expected to tell {tellsText(bits)}
      </p>
      {answers.length > 0 ? (
        <fieldset class="answers">
          <legend class="unseen">Your answer</legend>
          {answers.map((one) => (
            <Button
              key={one}
              says={`${one.slice(0, 1).toUpperCase()}${one.slice(1)}`}
              onPress={() => onAnswer(one)}
              disabledBecause={off}
            />
          ))}
        </fieldset>
      ) : (
        <Written key={id} next={next} refused={refused} off={off} onAnswer={onAnswer} />
      )}
      <details class="folded">
        <summary>Which sets each answer would speak for</summary>
        <ul class="outcomes">
          {next.outcomes.map((one) => (
            <li key={identifyOutcome(one)}>
              <strong>{identifyOutcome(one)}</strong>: {one.sets.slice(0, NAMED).join(', ')}
              {one.sets.length > NAMED ? ` and ${one.sets.length - NAMED} more` : ''}
            </li>
          ))}
          <li>
            <strong>anything else</strong>: a set that is in no sheet, or a mistake
          </li>
        </ul>
      </details>
    </>
  )
}

interface WrittenProps {
  readonly next: IdentifyNext
  readonly refused: readonly Problem[]
  readonly off: string | undefined
  readonly onAnswer: (line: string) => void
}

/** What the meter shows, or how many there are. */
function Written({ next, refused, off, onAnswer }: WrittenProps): VNode {
  const [value, setValue] = useState('')
  const isReading = next.ask === 'reading'
  const send = (line: string): void => {
    if (off === undefined) onAnswer(line)
  }
  const known = next.answers.filter((one) => /^\d+$/.test(one)).join(', ')
  return (
    <form
      class="shown"
      onSubmit={(event) => {
        event.preventDefault()
        send(value)
      }}
    >
      <Field
        says={isReading ? 'The meter shows' : 'How many'}
        value={value}
        onInput={setValue}
        hint={isReading ? 'Such as 0.2 Ω, 3k3 or open; a bare number is ohms' : `Known sets have ${known}`}
        error={refused.length === 0 ? undefined : refused.map(problemText).join(' ')}
      />
      <div class="answers">
        <button class="button main" type="submit" aria-disabled={off === undefined ? undefined : true}>
          Note it
        </button>
        {isReading ? (
          <>
            <Button says="It shows open" onPress={() => send('open')} disabledBecause={off} />
            <Button says="No such terminal" onPress={() => send('no such terminal')} disabledBecause={off} />
          </>
        ) : null}
      </div>
    </form>
  )
}
