/** What it may be: known sets by their probability, and that it is in no sheet. */
import type { VNode } from 'preact'
import { type IdentifiedSet, type IdentifyAnswer, identifyShare } from '../../../index.ts'
import { Bar } from '../../kit/bar.tsx'
import { Button } from '../../kit/index.ts'

/** So many stand open; the others fold. */
const SHOWN = 5
/** Those that are less probable are not shown beside more probable ones. */
const LEAST = 0.001

export interface CandidatesProps {
  readonly answer: IdentifyAnswer
  readonly onOpen: (set: IdentifiedSet) => void
}

export function Candidates({ answer, onOpen }: CandidatesProps): VNode {
  const { groups, unknown, compared } = answer
  const all = groups.filter(({ probability }, k) => k === 0 || probability >= LEAST)
  const shown = all.slice(0, SHOWN)
  const rest = all.slice(SHOWN)
  return (
    <section class="causes" aria-labelledby="candidates-title">
      <h2 id="candidates-title">What it may be</h2>
      <ol class="groups">
        {shown.map((group, k) => (
          <Candidate key={group.sets[0]?.name} group={group} leads={k === 0} onOpen={onOpen} />
        ))}
      </ol>
      {rest.length === 0 ? null : (
        <details class="folded">
          <summary>{rest.length} less likely</summary>
          <ol class="groups" start={SHOWN + 1}>
            {rest.map((group) => (
              <Candidate key={group.sets[0]?.name} group={group} leads={false} onOpen={onOpen} />
            ))}
          </ol>
        </details>
      )}
      <p class="share-line none">
        <Bar share={unknown.probability} /> <span class="amount">{identifyShare(unknown.probability)}</span>{' '}
        in no sheet
      </p>
      <p class="soft">
        A known one that somebody changed: {identifyShare(unknown.changed)}
        {unknown.like === undefined ? '' : `, most like ${unknown.like}`}. Like none:{' '}
        {identifyShare(unknown.foreign)}. {compared} known sets compared, each state of a slot counted for
        itself.
      </p>
    </section>
  )
}

interface CandidateProps {
  readonly group: IdentifyAnswer['groups'][number]
  readonly leads: boolean
  readonly onOpen: (set: IdentifiedSet) => void
}

function Candidate({ group, leads, onOpen }: CandidateProps): VNode {
  const { sets, probability } = group
  return (
    <li class={leads ? 'group leads' : 'group'}>
      <p class="share-line">
        <Bar share={probability} /> <span class="amount">{identifyShare(probability)}</span>{' '}
        <strong>{sets.map(({ name }) => name).join(' or ')}</strong>
      </p>
      {leads ? (
        <div class="answers">
          {sets.map((one) => (
            <Button
              key={one.name}
              sort="quiet"
              says={`Put ${one.name} on the bench`}
              onPress={() => onOpen(one)}
            />
          ))}
        </div>
      ) : null}
    </li>
  )
}
