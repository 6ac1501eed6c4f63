/** One polite live region for the whole page: what changes by itself is said there. */
import { type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'

const said: Signal<{ readonly text: string; readonly turn: number }> = signal({ text: '', turn: 0 })

/** Says a short sentence to those who listen to the page; the same one twice is said twice. */
export function announce(text: string): void {
  said.value = { text, turn: said.peek().turn + 1 }
}

/** Where it is said; the shell shows it once. */
export function LiveRegion(): VNode {
  const { text, turn } = said.value
  return (
    <div class="unseen" aria-live="polite" role="status">
      {text === '' ? null : <p key={turn}>{text}</p>}
    </div>
  )
}
