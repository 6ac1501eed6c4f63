/** Who rings and how strongly, and what the line itself bears. */
import type { VNode } from 'preact'
import type { CheckAnswer, Stands } from '../../../index.ts'
import { Bar } from '../../kit/bar.tsx'
import { StateMark } from '../../kit/index.ts'
import { bellRows, lineRows } from './rows.ts'

interface RowsProps {
  readonly answer: CheckAnswer
  readonly stands: Stands
}

export function Rings({ answer, stands }: RowsProps): VNode {
  const rows = bellRows(answer, stands)
  const starved = rows.filter(({ state, gets }) => state === 'fails' && gets !== 'no bell')
  return (
    <section class="rings" aria-labelledby="rings-title">
      <h2 id="rings-title">Who rings, and how strongly</h2>
      <p>
        {starved.length === 0
          ? 'No bell starves with everything plugged in.'
          : `${starved.map(({ place }) => place).join(', ')} ${starved.length === 1 ? 'starves' : 'starve'} with everything plugged in.`}
      </p>
      <ul class="bells">
        {rows.map((row) => (
          <li key={row.bell} class="bell">
            <p class="bell-name">
              <StateMark state={row.state} bare /> <strong>{nameOf(row.bell, row.place, rows)}</strong>{' '}
              {row.says}
            </p>
            <Bar share={row.length} mark={row.mark} state={row.state} />
            <p class="bell-figures">
              {row.gets === 'no bell' ? null : (
                <>
                  gets <span class="amount">{row.gets}</span>
                  {row.needs === '' ? '' : `, needs ${row.needs}`}
                  {row.share === '' ? '' : `; ${row.share} of the current of all bells`}
                  {row.alone === '' ? '' : `; rings alone: ${row.alone}`}
                </>
              )}
            </p>
          </li>
        ))}
      </ul>
      <p class="soft">The upright mark is what the bell needs. All bars are to one scale.</p>
    </section>
  )
}

/** The bell is named where its set has several. */
function nameOf(bell: string, place: string, all: readonly { readonly place: string }[]): string {
  return all.filter((one) => one.place === place).length > 1 ? bell.replace('/', ', ') : place
}

export function Line({ answer, stands }: RowsProps): VNode | null {
  const rows = lineRows(answer, stands)
  if (rows.length === 0) return null
  return (
    <section class="line" aria-labelledby="line-title">
      <h2 id="line-title">The line</h2>
      <ul class="bells">
        {rows.map(({ check, verdict, worst, limit, of, length, mark }) => (
          <li key={check} class="bell">
            <p class="bell-name">
              <StateMark state={verdict.state} /> <strong>{check}</strong>
            </p>
            {length === undefined ? null : <Bar share={length} mark={mark} state={verdict.state} />}
            <p class="bell-figures">
              {of}: <span class="amount">{worst}</span>, {limit}
            </p>
          </li>
        ))}
      </ul>
      <p class="soft">Of each check the worst is shown. The upright mark is the limit.</p>
    </section>
  )
}
