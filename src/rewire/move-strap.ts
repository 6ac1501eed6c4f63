/** Straps fitted, lifted and cut. */
import type { Place } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { Hold, SetSheet } from '../sheet/model.ts'
import { oneOf, ticked } from '../sheet/wording.ts'
import { entryOf, forgotten, movedTo, withEntry, withoutEntry } from './entries.ts'
import { type Outcome, refused } from './outcome.ts'
import { hasTerminal, unknownTerminal } from './terminals.ts'

/** How each hold is said. */
const HELD: Readonly<Record<Hold, string>> = {
  screw: 'held by screws',
  solder: 'held by solder',
  board: 'part of the board',
}

/** Fits a strap between two different terminals that no strap joins yet. */
export function fitStrap(set: SetSheet, name: string, hold: Hold, place: Place | undefined): Outcome {
  const ends = endsOf(name)
  const unknown = ends.find((end) => !hasTerminal(set, end))
  if (unknown !== undefined) return unknownTerminal(set, unknown)
  if (ends[0] === ends[1]) return refused(`the strap ${ticked(name)}`, 'two different terminals')
  const standing = standingName(set, name)
  if (standing !== undefined) {
    const mend = 'leave this move out'
    return refused(`the strap ${ticked(standing)}, already fitted`, 'two terminals without a strap', mend)
  }
  const straps = withEntry(set.straps, name, { hold })
  return { set: { ...set, straps, places: movedTo(set.places, `straps.${name}`, place) } }
}

/** Takes away a strap that is held by screws. */
export function liftStrap(set: SetSheet, name: string): Outcome {
  const standing = standingName(set, name)
  const strap = entryOf(set.straps, standing ?? '')
  if (standing === undefined || strap === undefined) return noStrap(set, name, 'lift strap')
  if (strap.hold === 'screw') return without(set, standing)
  const found = `the strap ${ticked(standing)}, ${HELD[strap.hold]}`
  return refused(found, 'a strap that is held by screws', `write \`cut: ${standing}\``)
}

/** Cuts a strap that cannot be lifted. */
export function cutStrap(set: SetSheet, name: string): Outcome {
  const standing = standingName(set, name)
  const strap = entryOf(set.straps, standing ?? '')
  if (standing === undefined || strap === undefined) return noStrap(set, name, 'cut')
  if (strap.hold !== 'screw') return without(set, standing)
  const found = `the strap ${ticked(standing)}, ${HELD.screw}`
  return refused(found, 'a strap that only a cut takes away', `write \`lift strap: ${standing}\``)
}

function endsOf(name: string): readonly [string, string] {
  const [from = '', to = ''] = name.split('-')
  return [from, to]
}

/** The name under which a strap stands, whichever end is named first. */
function standingName({ straps }: SetSheet, name: string): string | undefined {
  const [from, to] = endsOf(name)
  return [name, `${to}-${from}`].find((one) => Object.hasOwn(straps, one))
}

function without(set: SetSheet, name: string): Outcome {
  const straps = withoutEntry(set.straps, name)
  return { set: { ...set, straps, places: forgotten(set.places, `straps.${name}`) } }
}

function noStrap(set: SetSheet, name: string, action: string): Outcome {
  const unknown = endsOf(name).find((end) => !hasTerminal(set, end))
  if (unknown !== undefined) return unknownTerminal(set, unknown)
  const names = Object.keys(set.straps)
  const meant = nearest(name, names)
  return refused(
    `the strap ${ticked(name)}, which is not there`,
    `a strap of ${ticked(set.name)}: ${oneOf(names, 'it has none')}`,
    meant === undefined ? 'leave this move out' : `write \`${action}: ${meant}\`, or leave this move out`,
  )
}
