/** Unsaved work of closed tabs, offered once: take it up or let it go. */
import type { VNode } from 'preact'
import { drop, left, takeUp } from '../keep/unsaved.ts'
import { Button, Notice } from '../kit/index.ts'
import { isKept, present } from '../state/work.ts'

export function Leftovers(): VNode | null {
  const [first] = left.value
  if (first === undefined) return null
  const { work, at } = first
  const count = work.moves.length
  const blocked = present.value !== undefined && !isKept.value
  return (
    <Notice title="Unsaved work from a closed tab">
      <p>
        {work.title ?? work.name ?? work.set}, {count} {count === 1 ? 'move' : 'moves'}, last changed{' '}
        {new Date(at).toLocaleString('en')}.
      </p>
      <p class="buttons">
        <Button
          says="Open it"
          sort="main"
          onPress={() => takeUp(first)}
          disabledBecause={blocked ? 'Save what lies on the bench first, under Files.' : undefined}
        />
        <Button says="Let it go" onPress={() => drop(first)} />
      </p>
    </Notice>
  )
}
