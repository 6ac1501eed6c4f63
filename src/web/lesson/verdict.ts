/** Whether what was expected came true, by the figures. */
import { isSamePath } from './rig/path.ts'
import type { Found, Step } from './steps/step.ts'

/** Undefined where nothing was expected. */
export function heldIn(step: Step, expected: string | undefined, found: Found): boolean | undefined {
  if (expected === undefined) return undefined
  const answer = step.answer(found)
  return step.asks === 'path' ? isSamePath(expected.split(' '), answer.split(' ')) : expected === answer
}

/** What was expected and what was found, in one or two sentences. */
export function saidOf(step: Step, expected: string | undefined, found: Found): string {
  const words = (value: string): string => {
    const parts = step.asks === 'path' ? value.split(' ') : [value]
    return parts.map((one) => step.choices.find((each) => each.value === one)?.says ?? one).join(', ')
  }
  const was = `Solved: ${words(step.answer(found))}.`
  return expected === undefined ? was : `You expected: ${words(expected)}. ${was}`
}
