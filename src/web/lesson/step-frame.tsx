/** A step: the text, what is expected, the house to operate, its figures, and what came of it. */
import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { announce, Busy, Cautions, Notice, Picture } from '../kit/index.ts'
import { Expect } from './expect.tsx'
import { Operate } from './operate.tsx'
import { housePicture } from './picture/house-picture.ts'
import { note } from './progress.ts'
import type { HouseReading } from './rig/reading.ts'
import { solvedHouse } from './rig/solved.ts'
import { RigTable } from './rig-table.tsx'
import type { Found, State, Step } from './steps/step.ts'
import { heldIn, saidOf } from './verdict.ts'

const sameState = (one: State, other: State): boolean => JSON.stringify(one) === JSON.stringify(other)

export function StepFrame({ step }: { readonly step: Step }): VNode {
  const [state, setState] = useState(step.begin)
  const [expected, setExpected] = useState<string>()
  const [pointed, setPointed] = useState<readonly string[]>([])
  const [tried, setTried] = useState(false)
  const begin = useHouse(step, step.begin)
  const now = useHouse(step, state)
  const found = useFound(step, tried)
  const failed = begin.failed ?? now.failed ?? found.failed
  const why = expected === undefined && !tried ? 'Say first what you expect, or have it shown' : undefined
  const result = tried ? found.found : undefined
  useEffect(() => {
    if (result === undefined) return
    const held = heldIn(step, expected, result)
    note(step.id, { ...(held === undefined ? {} : { held }), learned: step.learned(result) })
    announce(`${saidOf(step, expected, result)} ${step.why(result).join(' ')}`)
  }, [result, expected])
  const operate = (next: State): void => {
    setState(next)
    if (!sameState(next, step.begin)) setTried(true)
  }
  const reading = now.reading
  useEffect(() => {
    if (reading === undefined || sameState(state, step.begin)) return
    const few = reading.bells.map(
      ({ place, current, rings }) =>
        `${place} ${Math.round(current * 1e5) / 100} milliamperes, ${rings ? 'rings' : 'silent'}`,
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
            setState(step.shown)
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

const problem = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** The reading of a house; while a new one is solved the old one is gone. */
function useHouse(step: Step, state: State): { reading?: HouseReading; failed?: string } {
  const key = JSON.stringify(state)
  const [got, setGot] = useState<{ key?: string; reading?: HouseReading; failed?: string }>({})
  useEffect(() => {
    let wanted = true
    solvedHouse(step.house(state)).then(
      (reading) => wanted && setGot({ key, reading }),
      (error: unknown) => wanted && setGot({ key, failed: problem(error) }),
    )
    return () => {
      wanted = false
    }
  }, [key])
  // the last picture stays until the new one is solved, which is soon; another house would mislead
  return got.key === key ? got : {}
}

/** All houses that decide the question, one after the other. */
function useFound(step: Step, wanted: boolean): { found?: Found; failed?: string; tells?: string } {
  const [got, setGot] = useState<{ found?: Found; failed?: string; tells?: string }>({})
  useEffect(() => {
    if (!wanted) return
    let on = true
    const all = async (): Promise<Found> => {
      const found: Record<string, HouseReading> = {}
      const needs = Object.entries(step.needs)
      for (const [k, [name, state]] of needs.entries()) {
        if (!on) return found
        setGot({ tells: `Solving house ${k + 1} of ${needs.length}…` })
        found[name] = await solvedHouse(step.house(state))
      }
      return found
    }
    all().then(
      (found) => on && setGot({ found }),
      (error: unknown) => on && setGot({ failed: problem(error) }),
    )
    return () => {
      on = false
    }
  }, [wanted])
  return got
}
