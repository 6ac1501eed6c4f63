/** The path of the ringing current in the words of the lesson. */
import type { FollowAnswer } from '../../../index.ts'

/** What a learner may point at, as the ids of branches show it. */
const ELEMENTS: readonly (readonly [pattern: RegExp, element: string])[] = [
  [/^box\/cable\.a$/, 'a-wire'],
  [/^box\/cable\.b$/, 'b-wire'],
  [/^box\/capacitor$/, 'capacitor'],
  [/^box\/resistor$/, 'resistor'],
  [/\/line\.ringing$/, 'third-wire'],
  [/\/bell(\.\w+)?$/, 'bell'],
  [/\/coil(\.\w+)?$/, 'speech-coil'],
  [/^earth|\/line\.spare$/, 'earth'],
]

/** Elements in the order in which the current passes them, each once. */
export function elementsOf({ steps }: Pick<FollowAnswer, 'steps'>): readonly string[] {
  const found = steps.flatMap(({ branch }) => {
    const element = branch === undefined ? undefined : ELEMENTS.find(([pattern]) => pattern.test(branch))
    return element === undefined ? [] : [element[1]]
  })
  return [...new Set(found)]
}

/** The same path from either end: an alternating current goes both ways in turn. */
export function isSamePath(one: readonly string[], other: readonly string[]): boolean {
  const text = other.join(' ')
  return one.join(' ') === text || [...one].reverse().join(' ') === text
}
