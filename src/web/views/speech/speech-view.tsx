/** Speech: how loud the set sends and receives over frequency, as found beside as proposed. */
import './speech.css'
import { type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import { conditionWords, drawCurves, type Figure, type Verdict } from '../../../index.ts'
import { announce, Busy, Button, Notice, Picture, VerdictItem } from '../../kit/index.ts'
import { Scroller } from '../../kit/scroller.tsx'
import { shelf, shelfState } from '../../state/shelf.ts'
import { onBench, present, type Work } from '../../state/work.ts'
import { bench } from '../../talk/solver.ts'
import { copyText, type Sides, type SpeechTable, speechTables } from './rows.ts'

interface Heard extends Sides {
  readonly verdicts: readonly Verdict[]
  /** Those of the set as found, where moves were made. */
  readonly before?: readonly Verdict[]
}

const heard: Signal<Heard | undefined> = signal(undefined)
const broke: Signal<string | undefined> = signal(undefined)
let turn = 0

async function hear(lies: Work): Promise<void> {
  turn += 1
  const mine = turn
  broke.value = undefined
  try {
    const on = onBench(lies)
    const found = { ...on, moves: [] }
    const isMoved = on.moves.length > 0
    const [figures, judged, proposed, before] = await Promise.all([
      bench.ask('speech', { bench: on, side: 'found' }),
      bench.ask('judge', { bench: on }),
      isMoved ? bench.ask('speech', { bench: on, side: 'proposed' }) : undefined,
      isMoved ? bench.ask('judge', { bench: found }) : undefined,
    ])
    if (mine !== turn) return
    heard.value = {
      found: figures,
      verdicts: ofSpeech(judged.verdicts),
      ...(proposed === undefined ? {} : { proposed }),
      ...(before === undefined ? {} : { before: ofSpeech(before.verdicts) }),
    }
  } catch (error) {
    if (mine === turn) broke.value = error instanceof Error ? error.message : String(error)
  }
}

const ofSpeech = (verdicts: readonly Verdict[]): readonly Verdict[] =>
  verdicts.filter(({ check }) => check.startsWith('speech.'))

export function SpeechView(): VNode {
  const lies = present.value
  useEffect(() => {
    if (lies !== undefined && shelfState.value === 'ready') void hear(lies)
  }, [lies, shelf.value])
  const now = heard.value
  return (
    <div class="speech">
      <h1 tabIndex={-1}>Speech</h1>
      {lies === undefined ? (
        <p>No set lies on the bench yet. Open one there first.</p>
      ) : (
        <p class="lead">
          {lies.title ?? lies.set}
          {lies.moves.length === 0 ? ', as its sheet says' : ', as found and as proposed'}
        </p>
      )}
      {broke.value === undefined ? null : (
        <Notice sort="wrong" title="The curves cannot be worked out" urgent>
          <p>{broke.value}</p>
        </Notice>
      )}
      {lies !== undefined && now === undefined && broke.value === undefined ? (
        <Busy tells="Working out speech from 200 Hz to 4 kHz…" />
      ) : null}
      {lies === undefined || now === undefined ? null : <Curves now={now} />}
    </div>
  )
}

function Curves({ now }: { readonly now: Heard }): VNode {
  const tables = speechTables(now, (figure: Figure) => conditionWords(figure.condition))
  if (tables.length === 0) return <p>Nothing speaks here: the set has no handset, or it stands on no line.</p>
  return (
    <>
      <section aria-labelledby="speech-curves">
        <h2 id="speech-curves">Curves</h2>
        <Scroller says="Curves of speech">
          <Picture
            mark={drawCurves(now.proposed ?? now.found, {
              ...(now.proposed === undefined ? {} : { found: now.found }),
              title: 'Speech by frequency; the tables below say the same in figures',
            })}
          />
        </Scroller>
      </section>
      <Good />
      <section aria-labelledby="speech-verdicts">
        <h2 id="speech-verdicts">Verdicts</h2>
        {now.before === undefined ? null : <h3>As proposed</h3>}
        <Verdicts verdicts={now.verdicts} />
        {now.before === undefined ? null : (
          <details class="folded">
            <summary>As found</summary>
            <Verdicts verdicts={now.before} />
          </details>
        )}
      </section>
      <section aria-labelledby="speech-figures">
        <h2 id="speech-figures">The figures</h2>
        <Button says="Copy all tables" onPress={() => void copied(tables)} />
        {tables.map((one) => (
          <details key={one.title} class="folded">
            <summary>{one.title}</summary>
            <Table one={one} />
          </details>
        ))}
      </section>
    </>
  )
}

async function copied(tables: readonly SpeechTable[]): Promise<void> {
  try {
    await navigator.clipboard.writeText(copyText(tables))
    announce('Copied.')
  } catch {
    announce('The browser does not let this page copy. Open a table and mark its text.')
  }
}

function Good(): VNode {
  return (
    <section class="good" aria-labelledby="speech-good">
      <h2 id="speech-good">What is good</h2>
      <dl class="evidence">
        <div>
          <dt>Send</dt>
          <dd>More is better: the current that your voice puts on the line, for 1 V in the transmitter.</dd>
        </div>
        <div>
          <dt>Receive</dt>
          <dd>More is better: the current in the receiver, for 1 V that comes over the line.</dd>
        </div>
        <div>
          <dt>Sidetone</dt>
          <dd>Less is better: how much of your own voice you hear.</dd>
        </div>
        <div>
          <dt>Return loss</dt>
          <dd>
            More is better: the nearer the set is to that network. 0 dB is as bad as an open pair. Below 0 dB
            more comes back than arrives, since two reactances resonate.
          </dd>
        </div>
      </dl>
    </section>
  )
}

function Verdicts({ verdicts }: { readonly verdicts: readonly Verdict[] }): VNode {
  if (verdicts.length === 0) return <p class="soft">Nothing of speech is judged here.</p>
  return (
    <>
      {verdicts.map((one, k) => (
        <VerdictItem key={`${one.check} ${one.subject} ${k}`} verdict={one} />
      ))}
    </>
  )
}

function Table({ one }: { readonly one: SpeechTable }): VNode {
  const { title, frequencies, columns } = one
  return (
    <Scroller says={title}>
      <table>
        <thead>
          <tr>
            <th scope="col">Hz</th>
            {columns.map(({ heading }) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {frequencies.map((hz) => (
            <tr key={hz}>
              <th scope="row">{hz}</th>
              {columns.map(({ heading, cells }) => (
                <td key={heading} class="amount">
                  {cells.get(hz) ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  )
}
