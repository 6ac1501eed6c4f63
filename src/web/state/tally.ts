/** How many checks fail and are marginal of what lies on the bench: seen at the head of the page wherever it is scrolled to. */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Counts } from '../../index.ts'
import { present, type Work } from './work.ts'

/** The newest count, and of which document it is. */
export const counted: Signal<{ readonly of: Work; readonly counts: Counts } | undefined> = signal(undefined)

/** The count of the document as it is now; undefined until it is judged. */
export const tally: ReadonlySignal<Counts | undefined> = computed(() => {
  const { value: here } = counted
  return here !== undefined && here.of === present.value ? here.counts : undefined
})
