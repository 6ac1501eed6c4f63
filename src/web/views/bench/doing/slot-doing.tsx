import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { BoardSlot } from '../../../../index.ts'
import { Button } from '../../../kit/index.ts'
import { bench } from '../../../talk/solver.ts'
import { attempt } from '../state/attempt.ts'
import { tookTrouble } from '../state/judgement.ts'
import { Chooser } from './chooser.tsx'

export function SlotDoing({ slot }: { readonly slot: BoardSlot }): VNode {
  const { name, fitted, needsUnit, sockets } = slot
  const [units, setUnits] = useState<readonly { readonly value: string; readonly says: string }[]>([])
  useEffect(() => {
    bench
      .ask('list', { what: 'units' })
      .then(({ rows }) =>
        setUnits(
          rows.map((row) => ({
            value: String(row.name),
            says: row.title === '' ? String(row.name) : `${row.name}: ${row.title}`,
          })),
        ),
      )
      .catch(tookTrouble)
  }, [])
  return (
    <>
      <h3>Slot {name}</h3>
      <p>
        {fitted === undefined
          ? `It is empty${needsUnit ? ' and needs a unit' : ''}.`
          : `The unit ${fitted} is in it.`}{' '}
        Its sockets: {sockets.map(({ pin, terminal }) => `${pin} on ${terminal}`).join(', ')}.
      </p>
      <div class="buttons">
        <Button
          says="Pull the unit"
          disabledBecause={fitted === undefined ? 'the slot is empty' : undefined}
          onPress={() => void attempt({ do: 'pull unit', what: name })}
        />
      </div>
      {fitted === undefined ? (
        <Chooser
          says="Unit"
          options={units}
          does={(unit) => `Plug ${unit} in`}
          onDo={(unit) => void attempt({ do: 'plug unit', what: unit, in: name })}
        />
      ) : (
        <p class="hint">Another unit can be plugged in when this one is out.</p>
      )}
    </>
  )
}
