/** A list of sheets of one kind, each of which can be opened. */
import { useSignal } from '@preact/signals'
import type { ComponentChildren, VNode } from 'preact'
import type { Problem, SheetKind } from '../../../index.ts'
import { Button, Dialog, Problems } from '../../kit/index.ts'
import { go } from '../../shell/route.ts'
import { openSheet } from '../../state/shelf.ts'
import { isKept, present } from '../../state/work.ts'
import type { ShelfRow } from '../../talk/protocol.ts'
import { chosen } from '../sheet/sheet-state.ts'

export interface SheetRowProps {
  readonly row: ShelfRow
  /** Further things to do with it. */
  readonly children?: ComponentChildren
}

/** What opening a sheet of a kind is called. */
const OPENS: Partial<Record<SheetKind, string>> = {
  set: 'Begin anew',
  rewire: 'Open',
  premises: 'Show',
}

export function SheetRow({ row, children }: SheetRowProps): VNode {
  const { sheet: sort, name, title, file, own, problems: count } = row
  const asks = useSignal(false)
  const problems = useSignal<readonly Problem[]>([])
  const opens = sort === undefined ? undefined : OPENS[sort]
  const openIt = async (): Promise<void> => {
    asks.value = false
    if (sort === 'premises') return go('premises', { name })
    if (sort !== 'set' && sort !== 'rewire') return
    problems.value = await openSheet(sort, name)
    if (problems.value.length === 0) go('bench')
  }
  return (
    <li class="sheet-row">
      <div class="sheet-name">
        <strong>{title ?? name}</strong>
        <span class="hint">
          {sort === undefined ? 'no kind or name can be read in it' : name}
          {own ? ` · ${file}` : ''}
          {count === 0 ? '' : ` · ${count} ${count === 1 ? 'problem' : 'problems'}`}
        </span>
      </div>
      <div class="buttons">
        {opens === undefined ? null : (
          <Button
            says={opens}
            label={`${opens}: ${title ?? name}`}
            disabledBecause={count === 0 ? undefined : 'Mend its problems first, in the view Sheet.'}
            onPress={() => {
              if (sort !== 'premises' && present.value !== undefined && !isKept.value) asks.value = true
              else void openIt()
            }}
          />
        )}
        {own || count > 0 ? (
          <Button
            says="Text"
            label={`Text of ${title ?? name}`}
            sort="quiet"
            onPress={() => {
              chosen.value = file
              go('sheet')
            }}
          />
        ) : null}
        {children}
      </div>
      <Problems problems={problems.value} />
      {asks.value ? (
        <Dialog
          title="What lies on the bench is not saved"
          closeSays="Go back"
          onClose={() => (asks.value = false)}
        >
          <p>Opening another sheet takes its place, and its steps cannot be taken back then.</p>
          <p class="buttons">
            <Button says="Open all the same" sort="grave" onPress={() => void openIt()} />
          </p>
        </Dialog>
      ) : null}
    </li>
  )
}
