/** Whether the window is so narrow that one picture is shown at a time; bench.css breaks at the same width. */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals'

const query = matchMedia('(max-width: 59.99rem)')
const state: Signal<boolean> = signal(query.matches)

query.addEventListener('change', () => {
  state.value = query.matches
})

export const narrow: ReadonlySignal<boolean> = state
