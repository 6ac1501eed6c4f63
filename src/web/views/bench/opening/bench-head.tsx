/** What lies on the bench, where it stands, and how another set comes to lie there. */
import type { VNode } from 'preact'
import { useState } from 'preact/hooks'
import { Button, Dialog } from '../../../kit/index.ts'
import { go, route, routeHash } from '../../../shell/route.ts'
import { isKept, type Work, work } from '../../../state/work.ts'
import { WhereItStands } from './where.tsx'

export function BenchHead({ now }: { readonly now: Work }): VNode {
  const [isAsking, setAsking] = useState(false)
  const { name = now.set, title, moves } = now
  return (
    <header class="bench-head">
      <div class="bench-name">
        <h1>{name}</h1>
        {title === undefined ? null : <p class="bench-title">{title}</p>}
        {name === now.set ? null : <p class="bench-title">a rewire of the set {now.set}</p>}
      </div>
      <WhereItStands />
      {isKept.value ? null : (
        <a class="bench-save" href={routeHash({ ...route.value, view: 'files', more: {} })}>
          Save
        </a>
      )}
      <Button says="Lay another set here" onPress={() => (isKept.peek() ? clearAway() : setAsking(true))} />
      {isAsking ? (
        <Dialog title="Moves that are not saved" closeSays="Keep it here" onClose={() => setAsking(false)}>
          <p>
            {moves.length === 1 ? 'One move lies' : `${moves.length} moves lie`} on {name} and{' '}
            {moves.length === 1 ? 'is' : 'are'} not saved. If another set is laid here, they are gone.
          </p>
          <p class="buttons">
            <Button
              says="Save them first, under Files"
              sort="main"
              onPress={() => {
                setAsking(false)
                go('files')
              }}
            />
            <Button says="Lay another set here, let them go" sort="grave" onPress={clearAway} />
          </p>
        </Dialog>
      ) : null}
    </header>
  )
}

function clearAway(): void {
  work.value = undefined
  go('bench')
}
