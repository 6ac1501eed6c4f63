/** A verdict: its line, and behind it all that speaks for it. */
import type { VNode } from 'preact'
import {
  type Condition,
  conditionWords,
  figureName,
  figureText,
  limitText,
  shortId,
  subjectText,
  type Verdict,
} from '../../index.ts'
import { StateMark } from './state-mark.tsx'

export interface VerdictProps {
  readonly verdict: Verdict
  /** The place that ids leave out; the only one that the condition speaks of when absent. */
  readonly place?: string | undefined
}

function placeOf({ sets }: Condition): string | undefined {
  const [only, ...others] = Object.keys(sets)
  return others.length === 0 ? only : undefined
}

/** State, check, subject and condition, in one line. */
export function VerdictLine({ verdict, place }: VerdictProps): VNode {
  const { state, check, subject, condition } = verdict
  const about = [subjectText(subject, place ?? placeOf(condition)), conditionWords(condition)]
  return (
    <span class="verdict-line">
      <StateMark state={state} /> <span class="check">{check}</span>{' '}
      <span class="about">{about.filter((one) => one !== '').join(' · ')}</span>
    </span>
  )
}

export interface VerdictDetailsProps extends VerdictProps {
  /** Its sentence stands beside it already. */
  readonly said?: boolean
}

/** What was found, in which condition, along which terminals, the figure, its limit and source, and the mend. */
export function VerdictDetails({ verdict, place, said }: VerdictDetailsProps): VNode {
  const { says, condition, path, figure, limit, margin, consequences = [] } = verdict
  const here = place ?? placeOf(condition)
  const rows: [string, string][] = [['Condition', conditionWords(condition)]]
  if (path.length > 0) rows.push(['Path', path.map((id) => shortId(id, here)).join(' – ')])
  if (figure !== null) {
    const subject = subjectText(figure.subject, here)
    const name = subject === '' ? figureName(figure) : `${figureName(figure)} (${subject})`
    rows.push(['Figure', `${name}: ${figureText(figure)}`])
    if (figure.approximate !== undefined) rows.push(['Approximate', figure.approximate])
  }
  if (limit !== null) rows.push(['Limit', limitText(limit)])
  if (margin !== null) rows.push(['Margin', marginText(margin)])
  if ('remark' in verdict && verdict.remark !== undefined) rows.push(['Remark', verdict.remark])
  for (const { figure: now, mended } of consequences) {
    const name = `${figureName(now)} (${subjectText(now.subject, here)})`
    const after = mended === undefined ? '' : `; mended ${figureText(mended)}`
    rows.push(['What follows', `${name}: ${figureText(now)}${after}`])
  }
  if ('mend' in verdict) rows.push(['Mend', verdict.mend])
  return (
    <div class="verdict-details">
      {said === true ? null : <p class="says">{says}</p>}
      <dl class="evidence">
        {rows.map(([name, text], at) => (
          <div key={`${name} ${at}`} class={name === 'Mend' ? 'mend' : undefined}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </div>
  )
}

/** A verdict that opens: the line, and the details below it. */
export function VerdictItem({ verdict, place, open }: VerdictProps & { readonly open?: boolean }): VNode {
  return (
    <details class={`verdict ${verdict.state}`} open={open}>
      <summary>
        <VerdictLine verdict={verdict} place={place} />
      </summary>
      <VerdictDetails verdict={verdict} place={place} />
    </details>
  )
}

/** A margin, a fraction of its limit, in words. */
export function marginText(margin: number): string {
  const times = 1 + margin
  if (times > MOST_TIMES) return `more than ${MOST_TIMES} times the limit`
  if (times >= 2) return `${times.toFixed(times < 10 ? 1 : 0)} times the limit`
  const percent = 100 * Math.abs(margin)
  const shown = percent >= 10 || percent === 0 ? percent.toFixed(0) : percent.toFixed(1)
  return `${shown} % of the limit ${margin < 0 ? 'beyond it' : 'to spare'}`
}

/** Beyond so many times its limit nothing is told by the number. */
const MOST_TIMES = 1000
