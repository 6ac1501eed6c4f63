/** Faults by name, which take a little longer than the verdicts: their mends are tried first. */
import type { VNode } from 'preact'
import { conditionWords, figureName, figureText } from '../../../../index.ts'
import { Busy } from '../../../kit/index.ts'
import { judged, whole } from '../state/judgement.ts'
import { ShowPath } from './show-path.tsx'

type Fault = NonNullable<typeof whole.value>['answer']['faults'][number]

export function Faults(): VNode | null {
  const here = whole.value
  const isOld = here === undefined || here.of !== judged.value?.of
  if (isOld) return <Busy tells="Looking for faults by name…" />
  const { faults } = here.answer
  return (
    <div class="bench-faults" data-faults={faults.length}>
      {faults.length === 0 ? (
        <p>No fault by name.</p>
      ) : (
        <>
          <h3>Faults by name</h3>
          <ul class="bench-list">
            {faults.map((one, k) => (
              <li key={`${one.fault} ${one.subject} ${k}`}>
                <One fault={one} />
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  )
}

function One({ fault }: { readonly fault: Fault }): VNode {
  const { title, says, condition, consequences, mend, path, explains } = fault
  return (
    <details class="verdict fails bench-fault" data-fault={fault.fault} open>
      <summary>
        <strong>{title.slice(0, 1).toUpperCase() + title.slice(1)}</strong>
      </summary>
      <p class="says">{says}</p>
      <dl class="evidence">
        <div class="mend">
          <dt>Mend</dt>
          <dd>{mend}</dd>
        </div>
        <div>
          <dt>Condition</dt>
          <dd>{conditionWords(condition)}</dd>
        </div>
        {consequences.map(({ figure, mended }) => (
          <div key={`${figure.id} ${figure.subject} ${figure.frequency ?? ''}`}>
            <dt>What follows</dt>
            <dd>
              {figureName(figure)}: {figureText(figure)}
              {mended === undefined ? '' : `; mended ${figureText(mended)}`}
            </dd>
          </div>
        ))}
        {explains.length === 0 ? null : (
          <div>
            <dt>Explains</dt>
            <dd>{explains.join(', ')}</dd>
          </div>
        )}
      </dl>
      <ShowPath path={path} />
    </details>
  )
}
