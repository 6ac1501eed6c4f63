/** Cores of cords landed and parked. */
import type { Place } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SetSheet } from '../sheet/model.ts'
import { oneOf, ticked, write } from '../sheet/wording.ts'
import { changedAt, entryOf, withEntry } from './entries.ts'
import { type Outcome, refused } from './outcome.ts'
import { hasTerminal, unknownTerminal } from './terminals.ts'

/** A core on nothing, insulated. */
const PARKED = 'parked'

/** Lands a core, `cord.core`, on a terminal. Where the set means it to land stays as it was: `landings`. */
export function landCore(set: SetSheet, id: string, onto: string, place: Place | undefined): Outcome {
  if (onto !== PARKED && !hasTerminal(set, onto)) {
    const outcome = unknownTerminal(set, onto)
    return 'refusal' in outcome ? { refusal: { ...outcome.refusal, key: 'onto' } } : outcome
  }
  return moveCore(set, id, onto, place)
}

/** Insulates a core and leaves it on nothing. */
export function parkCore(set: SetSheet, id: string, place: Place | undefined): Outcome {
  return moveCore(set, id, PARKED, place)
}

function moveCore(set: SetSheet, id: string, lands: string, place: Place | undefined): Outcome {
  const [cordName = '', coreName = ''] = id.split('.')
  const cord = entryOf(set.cords, cordName)
  const core = entryOf(cord?.cores ?? {}, coreName)
  if (cord === undefined || core === undefined) return unknownCore(set, id)
  const cores = withEntry(cord.cores, coreName, { ...core, lands })
  const cords = withEntry(set.cords, cordName, { ...cord, cores })
  const path = `cords.${cordName}.cores.${coreName}`
  const places = changedAt(set.places, [path, `${path}.lands`], place)
  return { set: { ...set, cords, places } }
}

function unknownCore(set: SetSheet, id: string): Outcome {
  const ids = Object.entries(set.cords).flatMap(([cord, { cores }]) =>
    Object.keys(cores).map((core) => `${cord}.${core}`),
  )
  return refused(
    `the core ${ticked(id)}, which ${ticked(set.name)} does not have`,
    `a core: ${oneOf(ids, 'the set has none')}`,
    write(nearest(id, ids)),
  )
}
