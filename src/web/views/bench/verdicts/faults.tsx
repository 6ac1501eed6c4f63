/** Faults by name, which take a little longer than the verdicts: their mends are tried first. */
import type { VNode } from 'preact'
import { conditionWords, figureName, figureText } from '../../../../index.ts'
import { Busy, Button } from '../../../kit/index.ts'
import { attemptAll } from '../state/attempt.ts'
import { judged, whole } from '../state/judgement.ts'
import { faultKey } from '../state/shown-path.ts'
import { ShowPath } from './show-path.tsx'

/** Id of the heading of the verdicts, which takes the focus. */
export const VERDICTS_TITLE = 'bench-verdicts-title'

type Fault = NonNullable<typeof whole.value>['answer']['faults'][number]

export function Faults(): VNode | null {
  const here = whole.value
  const isOld = here === undefined || here.of !== judged.value?.of || here.by !== judged.value.by
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
  const { title, says, condition, consequences, mend, moves = [], path, explains } = fault
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
        {consequences.length === 0 ? null : (
          <div>
            <dt>What follows</dt>
            {consequences.map(({ figure, mended }) => (
              <dd key={`${figure.id} ${figure.subject} ${figure.frequency ?? ''}`}>
                {figureName(figure)}: {figureText(figure)}
                {mended === undefined ? '' : `; mended ${figureText(mended)}`}
              </dd>
            ))}
          </div>
        )}
        {explains.length === 0 ? null : (
          <div>
            <dt>Explains</dt>
            <dd>{explains.join(', ')}</dd>
          </div>
        )}
      </dl>
      <div class="buttons">
        {moves.length === 0 ? null : (
          <Button
            says={moves.length === 1 ? 'Make this move' : `Make these ${moves.length} moves`}
            label={`${moves.length === 1 ? 'Make this move' : `Make these ${moves.length} moves`}: ${mend}`}
            sort="main"
            onPress={() => void mendBy(moves)}
          />
        )}
        <ShowPath of={faultKey(fault)} path={path} />
      </div>
    </details>
  )
}

/** Makes the moves of a mend. The fault may go with them, and its button: the focus goes on at the heading of the verdicts. */
async function mendBy(moves: NonNullable<Fault['moves']>): Promise<void> {
  if (await attemptAll(moves)) document.getElementById(VERDICTS_TITLE)?.focus()
}
