/** The next question: how to find it out, with what care, and what may be answered. */
import type { VNode } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import {
  conditionWords,
  DIAGNOSIS_EXAMPLES,
  diagnosisOutcome,
  diagnosisPoint,
  diagnosisShare,
  type NextQuestion,
  type Problem,
  subjectText,
  tellsText,
} from '../../../index.ts'
import { Bar } from '../../kit/bar.tsx'
import { Button, Field } from '../../kit/index.ts'
import { problemText } from './problem-text.ts'
import { minutesText, missingText, siteText } from './words.ts'

export interface QuestionProps {
  readonly question: NextQuestion
  readonly place: string
  readonly count: number
  /** Something is being worked out: answers wait. */
  readonly waits: boolean
  readonly refused: readonly Problem[]
  readonly canUndo: boolean
  readonly onAnswer: (written: string) => void
  readonly onSkip: () => void
  readonly onUndo: () => void
}

export function Question(props: QuestionProps): VNode {
  const { question, place, count, waits, refused, canUndo, onAnswer, onSkip, onUndo } = props
  const { test, asks, how, cautions, effort, bits, condition, outcomes } = question
  const title = useRef<HTMLHeadingElement>(null)
  const first = useRef(true)
  // an answer's button goes with its question: whoever used it goes on at the next one
  useEffect(() => {
    if (!first.current) title.current?.focus()
    first.current = false
  }, [test])
  const isWorded = outcomes.some(({ answer }) => answer !== undefined)
  const off = waits ? 'Still working out the last answer' : undefined
  return (
    <section class={question.live ? 'question live' : 'question'} aria-labelledby="question-title">
      <h2 id="question-title" ref={title} tabIndex={-1}>
        <span class="count">Question {count}</span> {subjectText(asks, place)}
      </h2>
      {cautions.length === 0 ? null : (
        <aside class="cautions" aria-label="Cautions">
          <ul>
            {cautions.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </aside>
      )}
      {how === '' ? null : <p class="how">{subjectText(how, place)}</p>}
      <p class="soft">
        {[conditionWords(condition), siteText(question), minutesText(effort)].join(' · ')}; expected to tell{' '}
        {tellsText(bits)}
      </p>
      {isWorded ? (
        <fieldset class="answers">
          <legend class="unseen">Your answer</legend>
          {outcomes.map(({ answer = '', says = answer }) => (
            <Button
              key={answer}
              says={sentence(says)}
              onPress={() => onAnswer(answer)}
              disabledBecause={off}
            />
          ))}
        </fieldset>
      ) : (
        <Shown key={test} question={question} refused={refused} off={off} onAnswer={onAnswer} />
      )}
      <div class="answers aside">
        <Button sort="quiet" says="I cannot do this" onPress={onSkip} disabledBecause={off} />
        <Button
          sort="quiet"
          says="Take the last answer back"
          onPress={onUndo}
          disabledBecause={canUndo ? off : 'There is no answer to take back'}
        />
      </div>
      <details class="folded">
        <summary>What each answer would point at</summary>
        <Outcomes question={question} place={place} />
      </details>
    </section>
  )
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`
}

interface ShownProps {
  readonly question: NextQuestion
  readonly refused: readonly Problem[]
  readonly off: string | undefined
  readonly onAnswer: (written: string) => void
}

/** What the meter shows, with its unit. */
function Shown({ question, refused, off, onAnswer }: ShownProps): VNode {
  const [value, setValue] = useState('')
  const [missing, setMissing] = useState<string>()
  const { unit } = question
  const send = (written: string): void => {
    if (off === undefined) onAnswer(written)
  }
  return (
    <form
      class="shown"
      onSubmit={(event) => {
        event.preventDefault()
        const why = missingText(value, DIAGNOSIS_EXAMPLES[unit])
        setMissing(why)
        if (why === undefined) send(value)
      }}
    >
      <Field
        says="The meter shows"
        value={value}
        onInput={(next) => {
          setValue(next)
          setMissing(undefined)
        }}
        hint={`Such as ${DIAGNOSIS_EXAMPLES[unit]}`}
        error={missing ?? (refused.length === 0 ? undefined : refused.map(problemText).join(' '))}
      />
      <div class="answers">
        <button class="button main" type="submit" aria-disabled={off === undefined ? undefined : true}>
          Note it
        </button>
        {unit === 'Ω' || unit === 'F' ? (
          <Button says="It shows open" onPress={() => send('open')} disabledBecause={off} />
        ) : null}
      </div>
    </form>
  )
}

function Outcomes({ question, place }: { readonly question: NextQuestion; readonly place: string }): VNode {
  return (
    <ul class="outcomes">
      {question.outcomes.map((one) => (
        <li key={diagnosisOutcome(one, question)}>
          <p class="share-line">
            <Bar share={one.probability} /> <span class="amount">{diagnosisShare(one.probability)}</span>{' '}
            <strong>{diagnosisOutcome(one, question)}</strong>
          </p>
          <ul class="points">
            {one.points.map((each) => (
              <li key={each.says}>{diagnosisPoint(each, place)}</li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  )
}
