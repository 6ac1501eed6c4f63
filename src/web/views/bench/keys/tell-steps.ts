/** Whoever listens hears what a step back or forward has come to; moves tell it themselves. */
import { effect } from '@preact/signals'
import { announce } from '../../../kit/index.ts'
import { type Work, work } from '../../../state/work.ts'
import { judged } from '../state/judgement.ts'

/** Tells of every step once it is judged, until it is ended. */
export function tellSteps(): () => void {
  let before = work.peek()
  let due: { readonly word: string; readonly of: Work } | undefined
  const ends = [
    effect(() => {
      const now = work.value
      const isBack = now !== undefined && before?.past?.value === now.present
      const isForward = now !== undefined && before?.future?.value === now.present
      due = isBack || isForward ? { word: isBack ? 'Taken back' : 'Made again', of: now.present } : undefined
      before = now
    }),
    effect(() => {
      const here = judged.value
      if (here === undefined || due === undefined || here.of !== due.of) return
      const { fails, marginal } = here.quick.counts
      announce(`${due.word}: one step. Now ${fails} fail${fails === 1 ? 's' : ''}, ${marginal} marginal.`)
      due = undefined
    }),
  ]
  return () => {
    for (const end of ends) end()
  }
}
