/** What the schemas of units and circuits cannot see. */

import { checkJoints, danglingEnd, endsOf, meetings } from './check-ends.ts'
import type { Checker } from './checker.ts'
import { checkSpecs, partsOf } from './checker.ts'
import { scalarsOf, under } from './raw.ts'

/** A unit's ends are its pins, its joints and `earth`. */
export function checkUnit(check: Checker): void {
  const pins = scalarsOf(under(check.root, 'pins'))
  const joints = scalarsOf(under(check.root, 'joints'))
  const parts = partsOf(under(check.root, 'parts'))
  check.once([...pins, ...joints], 'pin or joint')
  checkSpecs(check, parts)
  const ends = parts.flatMap(endsOf)
  const known = [...pins, ...joints].map(({ text }) => text)
  for (const end of ends) check.known(end, [...known, 'earth'], 'end')
  checkJoints(check, joints, ends)
}

/** A circuit's ends are free names; one that no other end meets is a warning. */
export function checkCircuit(check: Checker): void {
  const parts = partsOf(under(check.root, 'parts'))
  checkSpecs(check, parts)
  const ends = parts.flatMap(endsOf)
  const counts = meetings(ends)
  for (const end of ends) {
    if (end.text === 'earth' || counts.get(end.text) !== 1 || check.word(end) === undefined) continue
    check.problems.push(danglingEnd(end))
  }
}
