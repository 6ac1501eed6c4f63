/** The end: each step's line with its solved number. */
import type { VNode } from 'preact'
import { Button, Notice } from '../kit/index.ts'
import { beginAnew, progress } from './progress.ts'
import { STEPS } from './steps/steps.ts'

export function Finish({ onStep }: { readonly onStep: (at: number) => void }): VNode {
  const known = progress.value
  const left = STEPS.filter(({ id }) => known[id] === undefined).length
  const held = STEPS.filter(({ id }) => known[id]?.held === true).length
  return (
    <section class="lesson-end">
      <p>
        {left === 0
          ? `You have tried all ${STEPS.length} steps; ${held} came out as you expected. Each number below was solved when you tried it.`
          : `${STEPS.length - left} of ${STEPS.length} steps are tried. Each number below was solved when you tried it.`}
      </p>
      <ol>
        {STEPS.map(({ id, title }, k) => (
          <li key={id}>
            <h3>{title}</h3>
            {known[id] === undefined ? (
              <Button says={`Try step ${k + 1}`} onPress={() => onStep(k + 1)} />
            ) : (
              <p>{known[id].learned}</p>
            )}
          </li>
        ))}
      </ol>
      <Notice>
        <p>
          The bell cannot be heard here yet: its strikes need the course of the current in time, which this
          version does not solve.
        </p>
      </Notice>
      <p class="buttons">
        <Button
          says="Begin anew"
          onPress={() => {
            beginAnew()
            onStep(1)
          }}
        />
      </p>
    </section>
  )
}
