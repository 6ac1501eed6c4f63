/** What the learner expects, asked before anything is tried. */
import type { VNode } from 'preact'
import { announce, Button, Choice } from '../kit/index.ts'
import type { Step } from './steps/step.ts'

export interface ExpectProps {
  readonly step: Step
  readonly expected: string | undefined
  /** A path that is being pointed out is not yet an expectation until it is said to be whole. */
  readonly pointed: readonly string[]
  readonly onPoint: (elements: readonly string[]) => void
  readonly onExpect: (expected: string) => void
  readonly onShow: () => void
}

export function Expect(props: ExpectProps): VNode {
  const { step, expected, onExpect, onShow } = props
  return (
    <section class="lesson-part" aria-labelledby="lesson-expect">
      <h3 id="lesson-expect">1. What do you expect?</h3>
      {step.asks === 'path' ? (
        <PathAsked {...props} />
      ) : (
        <Choice says={step.question} options={step.choices} chosen={expected} onChoose={onExpect} />
      )}
      <p class="buttons">
        <Button says="I do not know: show me" sort="quiet" onPress={onShow} />
      </p>
    </section>
  )
}

function PathAsked({ step, pointed, onPoint, onExpect }: ExpectProps): VNode {
  const says = (value: string): string => step.choices.find((one) => one.value === value)?.says ?? value
  const empty = pointed.length === 0 ? 'Nothing is pointed out yet' : undefined
  return (
    <fieldset class="choice">
      <legend>{step.question}</legend>
      <div class="lesson-buttons">
        {step.choices.map(({ value, says: words }) => (
          <Button
            key={value}
            says={words}
            disabledBecause={pointed.includes(value) ? `place ${pointed.indexOf(value) + 1}` : undefined}
            onPress={() => {
              onPoint([...pointed, value])
              announce(`${words} is place ${pointed.length + 1}.`)
            }}
          />
        ))}
      </div>
      {pointed.length === 0 ? null : (
        <ol class="lesson-path">
          {pointed.map((value) => (
            <li key={value}>{says(value)}</li>
          ))}
        </ol>
      )}
      <div class="lesson-buttons">
        <Button
          says="That is the way"
          sort="main"
          disabledBecause={empty}
          onPress={() => onExpect(pointed.join(' '))}
        />
        <Button
          says="Take back the last"
          disabledBecause={empty}
          onPress={() => onPoint(pointed.slice(0, -1))}
        />
      </div>
    </fieldset>
  )
}
