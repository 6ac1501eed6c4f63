/** The ends of parts: which names they meet, and which names too few of them meet. */
import { PARTS } from '../parts/index.ts'
import type { Problem } from '../problem.ts'
import type { Checker, SheetPart } from './checker.ts'
import { entriesOf, type Raw, type RawScalar, textOf } from './raw.ts'
import { ticked } from './wording.ts'

/** Keys behind which a part has an end: `from`, `to a`, and the corners of a bridge. */
const END_KEY = /^(from|to|first|second|plus|minus)( |$)/

/** The words of a part that are its ends, also of a part that its schema refuses. */
export function endsOf({ raw, spec }: SheetPart): readonly RawScalar[] {
  const words = scalarsUnder(raw, (key) => END_KEY.test(key))
  if (spec === undefined) return words
  const plans = PARTS.get(spec.kind)?.branches(spec) ?? []
  const names = new Set(plans.flatMap(({ from, to }) => [from, to]))
  return words.filter(({ text }) => names.has(text))
}

/** Every scalar below a value that stands behind such a key. */
function scalarsUnder(raw: Raw, wanted: (key: string) => boolean): RawScalar[] {
  return [...entriesOf(raw)].flatMap(([key, { value }]) => {
    if (value.shape === 'scalar') return wanted(key) && textOf(value) !== undefined ? [value] : []
    return scalarsUnder(value, wanted)
  })
}

/** How many ends carry each name. */
export function meetings(ends: readonly RawScalar[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const { text } of ends) counts.set(text, (counts.get(text) ?? 0) + 1)
  return counts
}

/** A joint that fewer than two ends meet joins nothing. */
export function checkJoints(check: Checker, joints: readonly RawScalar[], ends: readonly RawScalar[]): void {
  const counts = meetings(ends)
  for (const joint of joints) {
    if (check.word(joint) === undefined) continue
    const count = counts.get(joint.text) ?? 0
    if (count >= 2) continue
    const found = `the joint ${ticked(joint.text)}, which ${count === 0 ? 'no end meets' : 'only one end meets'}`
    check.report(
      'end-dangling',
      joint.place,
      found,
      'at least two ends',
      'let a part end here, or delete the joint',
    )
  }
}

/** An end in a circuit that no other end meets: legal physics, most likely a slip. */
export function danglingEnd(end: RawScalar): Problem {
  return {
    code: 'end-dangling',
    severity: 'warning',
    place: end.place,
    found: `the end ${ticked(end.text)}, which no other end meets`,
    expected: 'an end that another part meets too',
    mend: 'look whether the name is spelt as at the other part',
  }
}
