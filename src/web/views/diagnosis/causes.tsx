/** Causes in groups, the most probable first: how probable, what to look at, what mends it. */
import type { VNode } from 'preact'
import {
  type DiagnoseAnswer,
  diagnosisShare,
  type PossibleCause,
  type PossibleGroup,
  subjectText,
} from '../../../index.ts'
import { Bar } from '../../kit/bar.tsx'
import { alike, DECIDED, isNone, likelihoodText, othersShare, sharesOf, untold } from './words.ts'

/** So many groups stand open; the others fold. */
const SHOWN = 4
/** So many looks of the leading group are told at once. */
const LOOKS = 4

export function Causes({ result }: { readonly result: DiagnoseAnswer }): VNode {
  const { groups, none, decided, place } = result
  const rather = isNone(result)
  const shown = groups.slice(0, SHOWN)
  const rest = groups.slice(SHOWN)
  const others = othersShare(result)
  return (
    <section class="causes" aria-labelledby="causes-title">
      <h2 id="causes-title">{rather ? 'No cause that is known fits well' : DECIDED[decided]}</h2>
      {rather ? <NoneOfThese result={result} /> : null}
      <ol class="groups">
        {shown.map((group, k) => (
          <Group key={keyOf(group)} group={group} place={place} leads={k === 0 && !rather} />
        ))}
      </ol>
      {rest.length === 0 ? null : (
        <details class="folded">
          <summary>
            {rest.length} less probable, together {diagnosisShare(sharesOf(rest))}
          </summary>
          <ol class="groups" start={SHOWN + 1}>
            {rest.map((group) => (
              <Group key={keyOf(group)} group={group} place={place} leads={false} />
            ))}
          </ol>
        </details>
      )}
      {others === 0 ? null : (
        <p class="share-line">
          <Bar share={others} /> <span class="amount">{diagnosisShare(others)}</span> others, each under a
          thousandth
        </p>
      )}
      <p class="share-line none">
        <Bar share={none} /> <span class="amount">{diagnosisShare(none)}</span> none of these
      </p>
      <p class="soft">{countsText(result)}</p>
    </section>
  )
}

const keyOf = ({ causes }: PossibleGroup): string => causes[0]?.faults.join(' ') ?? ''

interface GroupProps {
  readonly group: PossibleGroup
  readonly place: string
  readonly leads: boolean
}

function Group({ group, place, leads }: GroupProps): VNode {
  const { probability, causes, size, apart } = group
  const [first] = causes
  const looks = alike(causes)
  const title = first === undefined ? '' : subjectText(first.says, place)
  return (
    <li class={leads ? 'group leads' : 'group'}>
      <p class="share-line">
        <Bar share={probability} /> <span class="amount">{diagnosisShare(probability)}</span>{' '}
        <span class="likely">{likelihoodText(probability)}</span>
      </p>
      <p class="cause">
        {size > 1 ? `One of ${size} that no allowed question tells apart: ` : ''}
        <strong>{title}</strong>
        {size > 1 ? ', or one like it' : ''}
      </p>
      {leads ? (
        <Looks looks={looks.slice(0, LOOKS)} place={place} isMany={size > 1} />
      ) : (
        <details>
          <summary>What to look at, and what mends it</summary>
          <Looks looks={looks} place={place} isMany={size > 1} />
        </details>
      )}
      {leads && looks.length > LOOKS ? (
        <details>
          <summary>{looks.length - LOOKS} more to look at</summary>
          <Looks looks={looks.slice(LOOKS)} place={place} isMany={true} />
        </details>
      ) : null}
      {untold(group) > 0 ? <p class="soft">and {untold(group)} more like these</p> : null}
      {apart === undefined ? null : (
        <p class="soft">Told apart by what was not allowed: {subjectText(apart.asks, place)}</p>
      )}
    </li>
  )
}

interface LooksProps {
  readonly looks: readonly (readonly PossibleCause[])[]
  readonly place: string
  readonly isMany: boolean
}

function Looks({ looks, place, isMany }: LooksProps): VNode {
  return (
    <ul class="looks">
      {looks.map((same) => {
        const [first] = same
        if (first === undefined) return null
        return (
          <li key={first.faults.join(' ')}>
            {isMany ? <p>{same.map(({ says }) => subjectText(says, place)).join('; or ')}</p> : null}
            <dl class="evidence">
              <div>
                <dt>Look</dt>
                <dd>{subjectText(first.sign, place)}</dd>
              </div>
              <div class="mend">
                <dt>Mend</dt>
                <dd>{subjectText(first.mend, place)}</dd>
              </div>
            </dl>
          </li>
        )
      })}
    </ul>
  )
}

function NoneOfThese({ result }: { readonly result: DiagnoseAnswer }): VNode {
  return (
    <p>
      Ask and read again what speaks against the first cause below.
      {result.request.pairs === true ? '' : ' Begin again with two faults at once.'} Whether the set is wired
      as its sheet says is what “Which set is it?” finds out.
    </p>
  )
}

function countsText({ counts, instrument }: DiagnoseAnswer): string {
  const pairs = counts.pairs === undefined ? '' : ` and ${counts.pairs} pairs of them`
  return `${counts.faults} faults${pairs} compared, by ${counts.tests} tests with the instrument ${instrument}.`
}
