/** Find the fault: a dialogue that asks for what tells most, and ranks the causes by what was found. */
import './diagnosis.css'
import { type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import { Busy, Button, Cautions, Dialog, Notice, Problems } from '../../kit/index.ts'
import { shelfState } from '../../state/shelf.ts'
import { onBench, present, side } from '../../state/work.ts'
import { Causes } from './causes.tsx'
import {
  act,
  again,
  answered,
  begin,
  broke,
  busy,
  type Case,
  current,
  refused,
  resume,
  said,
  take,
} from './dialogue.ts'
import { Found } from './found.tsx'
import { Question } from './question.tsx'
import { Setup } from './setup.tsx'
import { isSameBench } from './words.ts'

/** Whether somebody is being asked if the answers may go. */
const asksAgain: Signal<boolean> = signal(false)

export function DiagnosisView(): VNode {
  const now = current.value
  const lies = present.value
  useEffect(() => {
    if (shelfState.value !== 'ready') return
    if (lies !== undefined && now === undefined) void take(onBench(lies), side.value, lies.title ?? lies.set)
    else void resume()
  }, [lies, now, shelfState.value])
  const isOther = now !== undefined && lies !== undefined && !isSameBench(onBench(lies), now.bench)
  return (
    <div class="diagnosis">
      <h1 tabIndex={-1}>Find the fault</h1>
      {now === undefined ? (
        lies === undefined ? (
          <p>No set lies on the bench yet. Open one there first; its faults are worked out from its sheet.</p>
        ) : (
          <Busy />
        )
      ) : (
        <>
          <p class="lead">
            {now.name}
            {now.bench.moves.length === 0
              ? ', as its sheet says'
              : now.side === 'found'
                ? ', as found'
                : ', with the moves made on the bench'}
            {now.bench.at === undefined ? '' : `, standing at ${now.bench.at}`}
          </p>
          {isOther ? <Other bench={now} /> : null}
          <Going now={now} />
        </>
      )}
      {asksAgain.value ? <Again /> : null}
    </div>
  )
}

/** The bench holds something else by now. */
function Other({ bench }: { readonly bench: Case }): VNode {
  const lies = present.value
  return (
    <Notice title="The bench has changed">
      <p>This diagnosis is still about {bench.name} as it lay there when it began.</p>
      {lies === undefined ? null : (
        <Button
          says={`Begin with ${lies.title ?? lies.set} as it is now`}
          onPress={() => void take(onBench(lies), side.value, lies.title ?? lies.set)}
        />
      )}
    </Notice>
  )
}

function Going({ now }: { readonly now: Case }): VNode {
  const answer = said.value
  const waits = busy.value !== undefined
  const result = answer?.result
  return (
    <>
      {broke.value === undefined ? null : (
        <Notice sort="wrong" title="Something of ours broke" urgent>
          <p>{broke.value}</p>
        </Notice>
      )}
      {now.begun ? (
        <div class="asking">
          <div class="dialogue">
            {answer?.question === undefined || result === undefined ? null : (
              <Question
                question={answer.question}
                place={result.place}
                count={1 + (now.state === undefined ? 0 : answered(now.state))}
                waits={waits}
                refused={refused.value}
                canUndo={now.state !== undefined && answered(now.state) > 0}
                onAnswer={(written) => void act({ do: 'answer', test: answer.question?.test ?? '', written })}
                onSkip={() => void act({ do: 'skip', test: answer.question?.test ?? '' })}
                onUndo={() => void act({ do: 'undo' })}
              />
            )}
            {result !== undefined && answer?.question === undefined ? <Ended now={now} /> : null}
            {waits ? <Busy tells={busy.value} /> : null}
            <Cautions about={['opening', 'ringing', 'burst']} />
            <Button
              sort="quiet"
              says="Begin again"
              onPress={() => {
                if (now.state !== undefined && answered(now.state) > 0) asksAgain.value = true
                else void again()
              }}
            />
          </div>
          {result === undefined ? null : (
            <div class="results" aria-live="off">
              <Causes result={result} />
              <Found result={result} />
            </div>
          )}
        </div>
      ) : (
        <>
          <Cautions />
          <Problems problems={refused.value} />
          {waits ? <Busy tells={busy.value} /> : null}
          <Setup
            key={now.name}
            complaints={result?.complaints}
            told={now.told}
            waits={waits || result === undefined}
            onBegin={(told) => void begin(told)}
          />
        </>
      )}
    </>
  )
}

/** Nothing is asked any more. */
function Ended({ now }: { readonly now: Case }): VNode {
  const isSure = said.value?.result.decided === 'sure'
  return (
    <section class="question ended" aria-labelledby="ended-title">
      <h2 id="ended-title">{isSure ? 'Found' : 'Nothing more to ask'}</h2>
      <p>
        {isSure
          ? 'One cause, or one group of them, leads so clearly that no question would change it. Look at it, mend it, and try the set again.'
          : 'No question that may be asked tells more. What was not allowed may still part what is left.'}
      </p>
      <Cautions about={['opening', 'ringing']} />
      <Button
        sort="quiet"
        says="Take the last answer back"
        onPress={() => void act({ do: 'undo' })}
        disabledBecause={
          now.state !== undefined && answered(now.state) > 0 ? undefined : 'There is no answer to take back'
        }
      />
    </section>
  )
}

function Again(): VNode {
  return (
    <Dialog
      title="Begin again?"
      closeSays="Keep the answers"
      onClose={() => {
        asksAgain.value = false
      }}
    >
      <p>The answers given so far are dropped. The complaints stay ticked.</p>
      <Button
        sort="grave"
        says="Drop them and begin again"
        onPress={() => {
          asksAgain.value = false
          void again()
        }}
      />
    </Dialog>
  )
}
