/** What was found out so far, and how it speaks. */
import type { VNode } from 'preact'
import { type DiagnoseAnswer, diagnosisSeen, diagnosisSpeaks, subjectText } from '../../../index.ts'

export function Found({ result }: { readonly result: DiagnoseAnswer }): VNode | null {
  const { evidence, skipped, place } = result
  if (evidence.length + skipped.length === 0) return null
  return (
    <section class="found" aria-labelledby="found-title">
      <h2 id="found-title">Found out so far</h2>
      <ol class="findings">
        {evidence.map((one) => (
          <li key={one.test} class={`finding ${one.speaks}`}>
            <p class="asked">{subjectText(one.asks, place)}</p>
            <p class="seen">
              <strong>{diagnosisSeen(one.observed)}</strong>
            </p>
            <dl class="evidence">
              <div>
                <dt>First cause</dt>
                <dd>{one.leading === null ? 'not known' : diagnosisSeen(one.leading)}</dd>
              </div>
              <div>
                <dt>Sound set</dt>
                <dd>{one.sound === null ? 'not known' : diagnosisSeen(one.sound)}</dd>
              </div>
              <div>
                <dt>Speaks</dt>
                <dd>{diagnosisSpeaks(one)}</dd>
              </div>
            </dl>
          </li>
        ))}
      </ol>
      {skipped.length === 0 ? null : (
        <p class="soft">Passed over: {skipped.map(({ asks }) => subjectText(asks, place)).join('; ')}</p>
      )}
    </section>
  )
}
