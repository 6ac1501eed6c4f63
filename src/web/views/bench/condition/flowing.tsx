/** What flows in this condition: a few figures, and how heavily the pictures draw them. */
import type { VNode } from 'preact'
import { formatQuantity } from '../../../../index.ts'
import { FigureTable } from '../../../kit/index.ts'
import { now } from '../state/now.ts'

export function Flowing(): VNode | null {
  const here = now.value
  if (here === undefined) return null
  const { shown, figures } = here
  const places = Object.keys(shown.condition.sets)
  const only = places.length === 1 ? places[0] : undefined
  const most = Math.max(0, ...Object.values(shown.carries).map(({ size }) => size))
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
    </section>
  )
}
