/** A step: the text, what is expected, the house to operate, its figures, and what came of it. */
import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { announce, Busy, Cautions, Notice, Picture } from '../kit/index.ts'
import { Expect } from './expect.tsx'
import { Operate } from './operate.tsx'
import { housePicture } from './picture/house-picture.ts'
import { noteWhen, type Tried } from './progress.ts'
import { RigTable } from './rig-table.tsx'
import { useFound, useHouse } from './solving.ts'
import { solvedStep } from './steps/solved-step.ts'
import { type Found, type State, type Step, shownState } from './steps/step.ts'
import { heldIn, saidOf } from './verdict.ts'
import { soundText } from './words.ts'

const sameState = (one: State, other: State): boolean => JSON.stringify(one) === JSON.stringify(other)

export function StepFrame({ step }: { readonly step: Step }): VNode {
  const [state, setState] = useState(step.begin)
  const [expected, setExpected] = useState<string>()
  const [pointed, setPointed] = useState<readonly string[]>([])
  const [tried, setTried] = useState(false)
  const begin = useHouse(step, step.begin)
  const now = useHouse(step, state)
  const found = useFound(step, begin.reading !== undefined, tried)
  const [showing, setShowing] = useState(false)
  const failed = begin.failed ?? now.failed ?? found.failed
  const why = expected === undefined && !tried ? 'Say first what you expect, or have it shown' : undefined
  const result = tried ? found.found : undefined
  useEffect(() => {
    // noted even when the learner goes on before all is solved
    if (tried) noteWhen(step.id, triedOf(step, expected))
  }, [tried, expected])
  useEffect(() => {
    if (result === undefined || !showing) return
    setState(shownState(step, result))
    setShowing(false)
  }, [result, showing])
  useEffect(() => {
    if (result === undefined) return
    announce(`${saidOf(step, expected, result)} ${step.why(result).join(' ')}`)
  }, [result, expected])
  const operate = (next: State): void => {
    setState(next)
    setShowing(false)
    if (!sameState(next, step.begin)) setTried(true)
  }
  const reading = now.reading
  useEffect(() => {
    if (reading === undefined || sameState(state, step.begin)) return
    const few = reading.bells.map(
      (bell) => `${bell.place} ${Math.round(bell.current * 1e5) / 100} milliamperes, ${soundText(bell)}`,
    )
    if (found.found !== undefined) announce(few.join('; '))
  }, [reading])
  return (
    <article class="lesson-step">
      <div class="lesson-text">
        {step.text.map((one) => (
          <p key={one}>{one}</p>
        ))}
        <Expect
          step={step}
          expected={expected}
          pointed={pointed}
          onPoint={setPointed}
          onExpect={(one) => {
            setExpected(one)
            // a path needs nothing to be moved: pointing it out is the trial
            if (step.asks === 'path') setTried(true)
          }}
          onShow={() => {
            // what needs no figures is shown at once
            if (typeof step.shown === 'function') setShowing(true)
            else setState(step.shown)
            setTried(true)
          }}
        />
        <section class="lesson-part" aria-labelledby="lesson-try">
          <h3 id="lesson-try">2. Try it</h3>
          <Operate step={step} state={state} disabledBecause={why} onSet={operate} />
          <Cautions about={step.care} />
        </section>
      </div>
      <div class="lesson-rig">
        <Picture mark={housePicture(step.house(state), reading)} />
        {reading === undefined ? (
          <Busy tells="Solving the house…" />
        ) : (
          <RigTable begin={begin.reading} now={reading} />
        )}
      </div>
      <div class="lesson-came">
        {failed === undefined ? null : (
          <Notice sort="wrong" urgent>
            <p>{failed}</p>
          </Notice>
        )}
        {tried ? (
          <section class="lesson-part" aria-labelledby="lesson-result">
            <h3 id="lesson-result">3. What came of it</h3>
            {result === undefined ? (
              <Busy tells={found.tells} />
            ) : (
              <Result step={step} expected={expected} found={result} />
            )}
          </section>
        ) : null}
      </div>
    </article>
  )
}

interface ResultProps {
  readonly step: Step
  readonly expected: string | undefined
  readonly found: Found
}

function Result({ step, expected, found }: ResultProps): VNode {
  const held = heldIn(step, expected, found)
  return (
    <>
      <Notice
        sort={held === true ? 'good' : 'plain'}
        title={
          held === undefined
            ? 'Shown'
            : held
              ? 'As you expected'
              : 'Not as you expected, and that is how one learns'
        }
      >
        <p>{saidOf(step, expected, found)}</p>
      </Notice>
      <ul class="lesson-why">
        {step.why(found).map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </>
  )
}

/** What a step leaves to be kept, once its houses are solved. */
async function triedOf(step: Step, expected: string | undefined): Promise<Tried> {
  const found = await solvedStep(step)
  const held = heldIn(step, expected, found)
  return { ...(held === undefined ? {} : { held }), learned: step.learned(found) }
}
