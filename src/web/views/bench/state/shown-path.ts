/** The way that a verdict or a fault speaks of, marked in both pictures when asked for. */
import { batch, effect, type Signal, signal } from '@preact/signals'
import type { CheckAnswer, Verdict } from '../../../../index.ts'
import { judged, whole } from './judgement.ts'

export const shownPath: Signal<readonly string[]> = signal([])
/** Whose way that is; empty when none is shown. */
export const shownOf: Signal<string> = signal('')

type Fault = CheckAnswer['faults'][number]

/** One that says something else from now on is another. */
export function verdictKey({ check, subject, condition, state }: Verdict): string {
  return JSON.stringify(['verdict', check, subject, condition, state])
}

export function faultKey({ fault, subject }: Fault): string {
  return JSON.stringify(['fault', fault, subject])
}

export function showPath(of: string, path: readonly string[]): void {
  batch(() => {
    shownOf.value = of
    shownPath.value = path
  })
}

/** Shows no way any more. */
export function showNoPath(): void {
  if (shownOf.peek() !== '') showPath('', [])
}

/** What is shown goes with what it was shown for, and follows it where its way becomes another; until it is ended. */
export function watchShownPath(): () => void {
  return effect(() => {
    const here = judged.value
    const all = whole.value
    const of = shownOf.peek()
    if (of === '' || here === undefined) return
    const isWhole = all?.of === here.of && all.by === here.by
    const isFault = of.startsWith('["fault"')
    // faults by name come later than the verdicts
    if (isFault && !isWhole) return
    const path = isFault
      ? all?.answer.faults.find((one) => faultKey(one) === of)?.path
      : here.quick.verdicts.find((one) => verdictKey(one) === of)?.path
    if (path === undefined || path.length === 0) showNoPath()
    else if (JSON.stringify(path) !== JSON.stringify(shownPath.peek())) showPath(of, path)
  })
}

/** Ids without their place, as the terminal picture knows them. */
export function withoutPlace(ids: readonly string[]): readonly string[] {
  return ids.map((id) => id.slice(id.indexOf('/') + 1))
}
