/** What flows in this condition: a few figures, what they come to, and how heavily the pictures draw them. */
import type { VNode } from 'preact'
import { formatQuantity } from '../../../../index.ts'
import { FigureTable } from '../../../kit/index.ts'
import { reversed, side } from '../../../state/work.ts'
import { foundVerdicts, judged } from '../state/judgement.ts'
import { now } from '../state/now.ts'
import { conditionNow } from './conditions.tsx'
import { answerWords, bellWords, heaviest } from './said.ts'

export function Flowing(): VNode | null {
  const here = now.value
  if (here === undefined) return null
  const { shown, figures } = here
  const places = Object.keys(shown.condition.sets)
  const only = places.length === 1 ? places[0] : undefined
  const most = heaviest(shown)
  const sort =
    shown.frequency === null
      ? 'direct current'
      : `alternating current at ${formatQuantity(shown.frequency, 'Hz')}`
  return (
    <section class="bench-flowing" aria-labelledby="bench-flowing-title">
      <h2 id="bench-flowing-title">What flows</h2>
      <p class="hint">
        {most > 0
          ? `The pictures show ${sort}: the heavier the line, the more flows; the heaviest carries ${formatQuantity(most, 'A', 3)}.`
          : `The pictures show ${sort}: nothing flows.`}
        {shown.approximate === undefined ? '' : ` Approximate: ${shown.approximate}.`}
      </p>
      {figures.length === 0 ? null : (
        <FigureTable says="Figures in this condition" figures={figures} place={only} />
      )}
      <Said place={only} />
    </section>
  )
}

/** What a person at the set would hear of it. */
function Said({ place }: { readonly place: string | undefined }): VNode | null {
  const { hook, line } = conditionNow()
  const verdicts = side.value === 'found' ? foundVerdicts.value : (judged.value?.quick.verdicts ?? [])
  const isLifted = hook === 'off-hook'
  const words =
    line === 'ringing' && isLifted
      ? answerWords(verdicts)
      : bellWords(now.value?.figures ?? [], verdicts, place)
  const pair = reversed.value ? ' Here the pair is reversed at the plug.' : ''
  if (words.length === 0) {
    return pair === '' || isLifted || line !== 'idle' ? null : (
      <p class="bench-said">
        To see whether the bell rings with the pair this way, choose “ringing arrives”.
      </p>
    )
  }
  return (
    <p class="bench-said">
      {words.join(' ')}
      {isLifted && pair !== '' ? ' The pair as it stands.' : pair}
    </p>
  )
}
