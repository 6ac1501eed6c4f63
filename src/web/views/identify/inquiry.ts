/**
 * The identification that is going on: everything read and seen, in its order, as plain data in signals of the page. The
 * worker is asked with the whole each time.
 */
import { type Signal, signal } from '@preact/signals'
import type { IdentifyAnswer, IdentifyNext, Problem } from '../../../index.ts'
import { hasKeys, remembered } from '../../state/remembered.ts'
import { AskedWrong } from '../../talk/ask.ts'
import { study } from '../../talk/solver.ts'
import { type Inquiry, NO_INQUIRY, requestOf, type Step, writtenFor } from './steps.ts'

export const inquiry: Signal<Inquiry> = remembered('identify', NO_INQUIRY, (read) =>
  hasKeys(read, 'steps', 'rewires'),
)
export const answer: Signal<IdentifyAnswer | undefined> = signal(undefined)
export const busy: Signal<string | undefined> = signal(undefined)
export const refused: Signal<readonly Problem[]> = signal([])
export const broke: Signal<string | undefined> = signal(undefined)

let turn = 0

/** Asks what is told by an inquiry; takes it over where it was understood. */
async function ask(next: Inquiry): Promise<boolean> {
  turn += 1
  const mine = turn
  busy.value = 'Comparing the known sets…'
  refused.value = []
  broke.value = undefined
  try {
    const came = await study.ask('identify', { request: requestOf(next) }, (text) => {
      if (mine === turn) busy.value = text
    })
    if (mine !== turn) return false
    inquiry.value = next
    answer.value = came
    return true
  } catch (error) {
    if (mine !== turn) return false
    if (error instanceof AskedWrong) refused.value = error.problems
    else broke.value = error instanceof Error ? error.message : String(error)
    return false
  } finally {
    if (mine === turn) busy.value = undefined
  }
}

/** Asks for what stands now, where nothing was answered yet: at the beginning, and after a reload. */
export async function resume(): Promise<void> {
  if (answer.value === undefined && busy.value === undefined) await ask(inquiry.value)
}

/** Answers the question. */
export async function reply(next: IdentifyNext, line: string): Promise<boolean> {
  const written = writtenFor(next, line)
  const isTaken = await add({ found: next.ask === 'reading' ? 'reading' : 'seen', written })
  // whoever was just asked has not written its id
  refused.value = refused.value.map((one) => ({ ...one, found: one.found.replace(written, () => line) }))
  return isTaken
}

/** Adds what was read or seen, or passed over. */
export async function add(step: Step): Promise<boolean> {
  const now = inquiry.value
  return await ask({ ...now, steps: [...now.steps, step] })
}

export async function takeBack(): Promise<void> {
  const now = inquiry.value
  await ask({ ...now, steps: now.steps.slice(0, -1) })
}

export async function again(): Promise<void> {
  await ask({ ...NO_INQUIRY, rewires: inquiry.value.rewires })
}

/** Whether rewired sets are compared with too. */
export async function withRewires(rewires: boolean): Promise<void> {
  await ask({ ...inquiry.value, rewires })
}
