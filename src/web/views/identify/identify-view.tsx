/** Which set is it? A dialogue of looks and readings, and the known sets ranked by what was found. */
import '../diagnosis/diagnosis.css'
import './identify.css'
import type { VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import { type Board, type IdentifiedSet, identifyVerdict } from '../../../index.ts'
import { Busy, Button, Cautions, Notice } from '../../kit/index.ts'
import { shelfState } from '../../state/shelf.ts'
import { change, onBench, present, type Work } from '../../state/work.ts'
import { bench } from '../../talk/solver.ts'
import { putOnBench } from '../premises/put-on-bench.ts'
import { Candidates } from './candidates.tsx'
import {
  add,
  again,
  answer,
  broke,
  busy,
  inquiry,
  refused,
  reply,
  resume,
  takeBack,
  withRewires,
} from './inquiry.ts'
import { OwnReadingForm } from './own-reading.tsx'
import { Question } from './question.tsx'
import { Reasons } from './reasons.tsx'
import { slotMoves } from './slot-moves.ts'

export function IdentifyView(): VNode {
  useEffect(() => {
    if (shelfState.value === 'ready') void resume()
  }, [shelfState.value])
  const now = answer.value
  const { steps, rewires } = inquiry.value
  const waits = busy.value !== undefined
  const nothing = 'There is no answer to take back'
  const off = waits ? 'Still working out the last answer' : undefined
  return (
    <div class="diagnosis identify">
      <h1 tabIndex={-1}>Which set is it?</h1>
      <p class="lead">
        Say what you see and what your meter reads between terminals, with the cords off. It is compared with
        every set in reach.
      </p>
      <Cautions about={['opening', 'ringing', 'burst', 'line-side', 'codes']} />
      {now === undefined ? null : (
        <p class="verdict-line so-far" aria-live="polite">
          {identifyVerdict(now)}
        </p>
      )}
      {broke.value === undefined ? null : (
        <Notice sort="wrong" title="Something of ours broke" urgent>
          <p>{broke.value}</p>
        </Notice>
      )}
      <div class="asking">
        <div class="dialogue">
          <section class="question" aria-labelledby="question-title">
            {now?.next === undefined ? (
              <h2 id="question-title">{now === undefined ? 'The first question' : 'Nothing more to ask'}</h2>
            ) : (
              <Question
                next={now.next}
                count={steps.length + 1}
                waits={waits}
                refused={refused.value}
                onAnswer={(line) => {
                  if (now.next !== undefined) void reply(now.next, line)
                }}
              />
            )}
            <div class="answers aside">
              {now?.next === undefined ? null : (
                <Button
                  sort="quiet"
                  says="I have not looked, or cannot"
                  onPress={() => void add({ found: 'skipped', written: now.next?.id ?? '' })}
                  disabledBecause={off}
                />
              )}
              <Button
                sort="quiet"
                says="Take the last answer back"
                onPress={() => void takeBack()}
                disabledBecause={steps.length === 0 ? nothing : off}
              />
              <Button
                sort="quiet"
                says="Begin again"
                onPress={() => void again()}
                disabledBecause={steps.length === 0 ? 'Nothing was answered yet' : off}
              />
            </div>
            {waits ? <Busy tells={busy.value} /> : null}
          </section>
          <details class="folded">
            <summary>Add a reading of your own</summary>
            <OwnReadingForm
              waits={waits}
              refused={refused.value}
              onAdd={(written) => add({ found: 'reading', written })}
            />
          </details>
          <label class="tick">
            <input
              type="checkbox"
              checked={rewires}
              onChange={(event) => void withRewires(event.currentTarget.checked)}
            />
            <span>Compare with rewired sets too</span>
          </label>
        </div>
        {now === undefined ? null : (
          <div class="results">
            <Candidates answer={now} onOpen={(found) => void open(found)} />
            <Reasons answer={now} />
          </div>
        )}
      </div>
    </div>
  )
}

async function open(found: IdentifiedSet): Promise<void> {
  const { set, rewire } = found
  const problems = await putOnBench(rewire === undefined ? 'set' : 'rewire', rewire ?? set)
  refused.value = problems
  const now = present.value
  if (problems.length > 0 || now === undefined) return
  // what was found is not as its sheet delivers it: the hand's move says so, and can be undone
  const moves = slotMoves(found, (await boardOf(now)).slots)
  if (moves.length > 0) change((one) => ({ ...one, moves: [...one.moves, ...moves] }))
}

async function boardOf(now: Work): Promise<Board> {
  const { board } = await bench.ask('judge', { bench: onBench(now) })
  return board
}
