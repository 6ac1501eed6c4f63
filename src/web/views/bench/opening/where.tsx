/** Where the set on the bench stands: on a line, in premises, or nowhere. */
import type { VNode } from 'preact'
import { useId } from 'preact/hooks'
import { shelf } from '../../../state/shelf.ts'
import { change, present } from '../../../state/work.ts'
import { judged } from '../state/judgement.ts'

export function WhereItStands(): VNode {
  const id = useId()
  const names = shelf.value.flatMap(({ sheet: sort, name }) =>
    sort === 'line'
      ? [{ value: `line/${name}`, says: `line ${name}` }]
      : sort === 'premises'
        ? [{ value: `premises/${name}`, says: `premises ${name}` }]
        : [],
  )
  const now = present.value
  const stands = judged.value?.quick.stands
  const line = stands?.line == null ? '' : `, line ${stands.line}`
  return (
    <div class="bench-where">
      <label for={id}>Where it stands</label>
      <select
        id={id}
        value={now?.on ?? ''}
        onChange={(event) => {
          const { value } = event.currentTarget
          change(({ on: _on, at: _at, in: _in, ...rest }) => (value === '' ? rest : { ...rest, on: value }))
        }}
      >
        <option value="">as usual: in the workshop</option>
        {names.map(({ value, says }) => (
          <option key={value} value={value}>
            {says}
          </option>
        ))}
        {now?.on === undefined || names.some(({ value }) => value === now.on) ? null : (
          <option value={now.on}>{now.on}</option>
        )}
      </select>
      {stands?.premises == null ? null : (
        <span class="hint">
          {stands.premises}
          {line}
        </span>
      )}
    </div>
  )
}
