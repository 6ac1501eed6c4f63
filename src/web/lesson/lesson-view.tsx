/** The lesson "How the third wire drives the bell": a step at a time, and what was learned at the end. */
import './lesson.css'
import type { VNode } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Button } from '../kit/index.ts'
import { go, route } from '../shell/route.ts'
import { Finish } from './finish.tsx'
import { progress } from './progress.ts'
import { StepFrame } from './step-frame.tsx'
import { STEPS } from './steps/steps.ts'

/** The page behind the last step is the end of the lesson. */
const END = STEPS.length + 1

function stepAsked(written: string | undefined): number {
  const asked = Number(written ?? '1')
  return Number.isInteger(asked) && asked >= 1 && asked <= END ? asked : 1
}

function show(at: number): void {
  go('lesson', { step: String(at) })
}

export function LessonView(): VNode {
  const at = stepAsked(route.value.more.step)
  const step = STEPS[at - 1]
  const heading = useRef<HTMLHeadingElement>(null)
  const before = useRef(at)
  useEffect(() => {
    // going on takes the reader to the new heading; coming to the lesson does not
    if (before.current !== at) {
      heading.current?.focus()
      window.scrollTo(0, 0)
    }
    before.current = at
  }, [at])
  return (
    <div class="lesson">
      <h1>How the third wire drives the bell</h1>
      <nav aria-label="Steps of the lesson">
        <ol class="lesson-steps">
          {STEPS.map(({ id, title }, k) => (
            <li key={id}>
              <button
                type="button"
                class="button quiet"
                aria-current={k + 1 === at ? 'step' : undefined}
                aria-label={`Step ${k + 1}: ${title}${progress.value[id] === undefined ? '' : ', done'}`}
                onClick={() => show(k + 1)}
              >
                {k + 1}
                {progress.value[id] === undefined ? '' : ' ✓'}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <h2 ref={heading} tabIndex={-1}>
        {step === undefined ? 'What you have learned' : `Step ${at} of ${STEPS.length}: ${step.title}`}
      </h2>
      {step === undefined ? <Finish onStep={show} /> : <StepFrame key={step.id} step={step} />}
      <p class="lesson-ways">
        {at > 1 ? <Button says="Back" onPress={() => show(at - 1)} /> : null}
        {at < END ? (
          <Button
            says={at === STEPS.length ? 'To the end' : 'Next step'}
            sort="main"
            onPress={() => show(at + 1)}
          />
        ) : null}
      </p>
    </div>
  )
}
