/** The verdicts of what lies on the bench, within a frame of a move; faults by name follow. */
import { computed, type ReadonlySignal } from '@preact/signals'
import type { VNode } from 'preact'
import type { Verdict } from '../../../../index.ts'
import { Notice, Problems, StateMark, VerdictDetails, VerdictLine } from '../../../kit/index.ts'
import { shelfState, shelfWord } from '../../../state/shelf.ts'
import { foundVerdicts, judged, trouble } from '../state/judgement.ts'
import { verdictKey } from '../state/shown-path.ts'
import { becameWords, grouped, type State, statesOf } from './compared.ts'
import { Faults, VERDICTS_TITLE } from './faults.tsx'
import { ShowPath } from './show-path.tsx'

const before: ReadonlySignal<ReadonlyMap<string, State>> = computed(() => statesOf(foundVerdicts.value))

/** How the groups are named. */
const NAMES: Readonly<Record<State, string>> = {
  fails: 'Fails',
  marginal: 'Marginal',
  unknown: 'Not known',
  holds: 'Holds',
}

export function Verdicts(): VNode {
  const here = judged.value
  const counts = here?.quick.counts
  return (
    <section
      class="bench-verdicts"
      aria-labelledby={VERDICTS_TITLE}
      data-judged={here?.turn ?? 0}
      data-outcome={here?.quick.outcome ?? 'none'}
    >
      <h2 id={VERDICTS_TITLE} tabIndex={-1}>
        What follows
      </h2>
      <p class="hint">Of the wiring, as it stands: handset, line and pair as each check needs them.</p>
      {shelfState.value === 'broken' ? <Notice sort="wrong">{shelfWord.value}</Notice> : null}
      <Problems problems={trouble.value} />
      {counts === undefined ? (
        <p>Not judged yet.</p>
      ) : (
        <p class="bench-counts">
          {(['fails', 'marginal', 'unknown', 'holds'] as const).map((state) => (
            <span key={state} class="bench-count">
              <StateMark state={state} bare /> {counts[state]} {NAMES[state].toLowerCase()}
            </span>
          ))}
        </p>
      )}
      <Faults />
      {grouped(here?.quick.verdicts ?? []).map(({ state, all }) => (
        <Group key={state} state={state} all={all} />
      ))}
    </section>
  )
}

function Group({ state, all }: { readonly state: State; readonly all: readonly Verdict[] }): VNode {
  const list = (
    <ul class="bench-list">
      {all.map((one, k) => (
        <li key={`${one.check} ${one.subject} ${k}`}>
          <One verdict={one} />
        </li>
      ))}
    </ul>
  )
  if (state === 'fails' || state === 'marginal') {
    return (
      <>
        <h3>{NAMES[state]}</h3>
        {list}
      </>
    )
  }
  return (
    <details class="bench-holds">
      <summary>
        <h3>
          {NAMES[state]}: {all.length}
        </h3>
      </summary>
      {list}
    </details>
  )
}

function One({ verdict }: { readonly verdict: Verdict }): VNode {
  const became = becameWords(verdict, before.value)
  return (
    <details class={`verdict ${verdict.state}`} data-check={verdict.check} data-state={verdict.state}>
      <summary>
        <VerdictLine verdict={verdict} />
        {became === undefined ? null : <strong class="bench-became"> {became}</strong>}
        {verdict.state === 'holds' ? null : <span class="bench-says">{verdict.says}</span>}
      </summary>
      <VerdictDetails verdict={verdict} said={verdict.state !== 'holds'} />
      <ShowPath of={verdictKey(verdict)} path={verdict.path} />
    </details>
  )
}
