/** The condition that a request means, of one set or of several by place. */
import {
  type Condition,
  type LineState,
  ON_HOOK,
  type SetCondition,
  shareOf,
  type WrittenCondition,
} from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { conditionOfRequest } from './find.ts'

/** Conditions of one set that are asked for most. */
export const USUAL_CONDITIONS: readonly string[] = [
  'on-hook',
  'on-hook/ringing',
  'off-hook',
  'off-hook/ringing',
  'off-hook/speech',
  'off-hook/make',
  'off-hook/break',
  'off-hook/key',
]

/**
 * Reads `off-hook/speech`, which is said of `place`, or `kitchen=off-hook,yard=off-hook/make`, each of its own place.
 * All other sets rest as they do; the line's state is one for all.
 * @throws ProblemError `request-wrong` for an unknown word or place, a place named twice, two states of the line
 */
export function conditionIn(
  net: Netlist,
  place: string,
  asked: string | undefined,
  absent: string,
): Condition {
  const places = net.places.map((one) => one.place)
  const resting = places.map((one) => [one, net.rest[one] ?? ON_HOOK] as const)
  const sets: Record<string, SetCondition> = Object.fromEntries(resting)
  const named = new Set<string>()
  let line: LineState = 'idle'
  for (const part of (asked ?? absent).split(',')) {
    const [at, words] = part.includes('=') ? partOf(part, places) : [place, part]
    if (named.has(at)) refuseTwice(at)
    named.add(at)
    const { line: state, ...one }: WrittenCondition = conditionOfRequest(words, absent)
    if (state !== 'idle' && line !== 'idle' && state !== line) refuseLines(line, state)
    if (state !== 'idle') line = state
    sets[at] = one
  }
  return { line, sets }
}

/** As requests repeat it: one set's as it is written, several by place. */
export function conditionAsAsked(condition: Condition): Condition | WrittenCondition {
  const [only, ...others] = Object.keys(condition.sets)
  return only !== undefined && others.length === 0 ? shareOf(condition, only) : condition
}

function partOf(part: string, places: readonly string[]): readonly [string, string] {
  const [place = '', ...words] = part.split('=')
  const at = place.trim()
  if (places.includes(at)) return [at, words.join('=')]
  const near = nearest(at, places)
  refuse({
    code: 'request-wrong',
    found: `the place \`${at}\` in a condition`,
    expected: `a place where a set stands: ${places.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

function refuseTwice(place: string): never {
  refuse({
    code: 'request-wrong',
    found: `two conditions of ${place === '' ? 'one set' : `\`${place}\``}`,
    expected: 'one for each place',
    mend: 'for example `kitchen=off-hook,yard=off-hook/make`',
  })
}

function refuseLines(one: LineState, other: LineState): never {
  refuse({
    code: 'request-wrong',
    found: `a line that is in two states, ${one} and ${other}`,
    expected: 'one state of the line, which is the same for all sets',
  })
}
