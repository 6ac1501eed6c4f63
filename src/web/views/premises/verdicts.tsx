/** What is wrong, and every verdict by the set that it is about. */
import type { VNode } from 'preact'
import { type CheckAnswer, type Stands, subjectText } from '../../../index.ts'
import { VerdictItem } from '../../kit/index.ts'
import { countsText, verdictGroups } from './rows.ts'

interface VerdictsProps {
  readonly answer: CheckAnswer
  readonly stands: Stands
}

export function Verdicts({ answer, stands }: VerdictsProps): VNode {
  const groups = verdictGroups(answer, stands)
  return (
    <section class="verdicts" aria-labelledby="verdicts-title">
      <h2 id="verdicts-title">Verdicts</h2>
      {answer.faults.length === 0 ? null : (
        <ul class="faults">
          {answer.faults.map((one) => (
            <li key={`${one.fault} ${one.subject}`}>
              <p>
                <strong>{one.title}</strong> ({one.subject})
              </p>
              <p>{subjectText(one.says, undefined)}</p>
              <dl class="evidence">
                <div class="mend">
                  <dt>Mend</dt>
                  <dd>{one.mend}</dd>
                </div>
              </dl>
            </li>
          ))}
        </ul>
      )}
      {groups.map(({ place, verdicts }) => {
        const grave = verdicts.filter(({ state }) => state === 'fails' || state === 'marginal')
        const others = verdicts.filter((one) => !grave.includes(one))
        return (
          <section key={place ?? ''} class="of-place">
            <h3>
              {place ?? 'The line and all of them'} <span class="soft">{countsText(verdicts)}</span>
            </h3>
            {grave.map((one, k) => (
              <VerdictItem
                key={`${one.check} ${one.subject} ${k}`}
                verdict={one}
                place={place}
                open={k === 0}
              />
            ))}
            {others.length === 0 ? null : (
              <details class="folded">
                <summary>{countsText(others)}</summary>
                {others.map((one, k) => (
                  <VerdictItem key={`${one.check} ${one.subject} ${k}`} verdict={one} place={place} />
                ))}
              </details>
            )}
          </section>
        )
      })}
    </section>
  )
}
