/** What each bell gets, at the start and now, with bars; and what the line says to it. */
import type { VNode } from 'preact'
import { Bar } from '../kit/bar.tsx'
import { Scroller } from '../kit/scroller.tsx'
import type { BellReading, HouseReading } from './rig/reading.ts'
import { loadText, milli, soundText } from './words.ts'

export interface RigTableProps {
  readonly begin: HouseReading | undefined
  readonly now: HouseReading
}

export function RigTable({ begin, now }: RigTableProps): VNode {
  const most = Math.max(...now.bells.map(({ current, need }) => Math.max(current, need)), 1e-6)
  const first = begin ?? now
  return (
    <Scroller says="What each bell gets">
      <table class="lesson-figures">
        <caption>Solved now, with the line ringing</caption>
        <thead>
          <tr>
            <th scope="col">Bell</th>
            <th scope="col" class="amount">
              At first
            </th>
            <th scope="col" class="amount">
              Now
            </th>
            <th scope="col" class="amount">
              Rings from
            </th>
          </tr>
        </thead>
        <tbody>
          {now.bells.map((bell) => (
            <BellRow
              key={bell.place}
              bell={bell}
              most={most}
              before={first.bells.find(({ place }) => place === bell.place)}
            />
          ))}
        </tbody>
      </table>
      <dl class="lesson-line">
        <div>
          <dt>Sum of the ringing loads</dt>
          <dd>
            {loadText(now.load.sum)} of {loadText(now.load.allowed)} allowed
            {now.load.sum > now.load.allowed ? ': too much' : ''}
          </dd>
        </div>
        <div>
          <dt>Through the capacitor of the socket</dt>
          <dd>{milli(now.capacitor)}</dd>
        </div>
        <div>
          <dt>Direct current of the line, all on-hook</dt>
          <dd>
            {milli(now.leakage.value)} of {milli(now.leakage.allowed)} allowed
            {now.leakage.value > now.leakage.allowed
              ? ': too much, so something in the house is wired wrongly'
              : ''}
          </dd>
        </div>
      </dl>
    </Scroller>
  )
}

interface RowProps {
  readonly bell: BellReading
  readonly before: BellReading | undefined
  readonly most: number
}

function BellRow({ bell, before, most }: RowProps): VNode {
  return (
    <tr>
      <th scope="row">{bell.place}</th>
      <td class="amount">{before === undefined ? 'not there' : milli(before.current)}</td>
      <td class="amount">
        <span class="lesson-now">{milli(bell.current)}</span>{' '}
        <span class="lesson-does">{soundText(bell)}</span>
        <Bar share={bell.current / most} mark={bell.need / most} state={bell.rings ? 'holds' : 'fails'} />
      </td>
      <td class="amount">{milli(bell.need)}</td>
    </tr>
  )
}
