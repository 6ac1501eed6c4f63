/** A set after moves at the bench, each checked against the wiring that it meets. */
import type { Place, Problem } from '../problem.ts'
import type { PlacedMove, SetSheet, UnitSheet } from '../sheet/model.ts'
import { landCore, parkCore } from './move-core.ts'
import { bridgePart, fitPart, liftPart } from './move-part.ts'
import { cutStrap, fitStrap, liftStrap } from './move-strap.ts'
import { plugUnit, pullUnit } from './move-unit.ts'
import type { Outcome } from './outcome.ts'

/** The set after the moves that the wiring allows, and a problem `move-refused` for each of the others. */
export interface Rewired {
  readonly set: SetSheet
  readonly problems: readonly Problem[]
}

/**
 * Applies moves in their order. A refused move changes nothing, and those behind it are tried all the same.
 * The set that is handed in stays as it is; of the new one, `places` point at the moves for what they changed,
 * while `landings` and `bases` still say what the set's sheets mean.
 *
 * @param unit reads a unit by its name; undefined when there is none or when it has mistakes
 * @param places where the keys of the moves are written, `moves.2.onto`; a refusal is placed at the move when absent
 */
export function applyMoves(
  set: SetSheet,
  moves: readonly PlacedMove[],
  unit: (name: string) => UnitSheet | undefined,
  places?: ReadonlyMap<string, Place>,
): Rewired {
  let changed = set
  const problems: Problem[] = []
  for (const [index, move] of moves.entries()) {
    const outcome = applyMove(changed, move, unit)
    if ('set' in outcome) changed = outcome.set
    else {
      const { key, ...refusal } = outcome.refusal
      const place = (key === undefined ? undefined : places?.get(`moves.${index}.${key}`)) ?? move.place
      const at = place === undefined ? {} : { place }
      problems.push({ code: 'move-refused', severity: 'error', ...at, ...refusal })
    }
  }
  return { set: changed, problems }
}

function applyMove(set: SetSheet, move: PlacedMove, unit: (name: string) => UnitSheet | undefined): Outcome {
  const { what, place } = move
  switch (move.do) {
    case 'fit strap':
      return fitStrap(set, what, move.hold ?? 'screw', place)
    case 'lift strap':
      return liftStrap(set, what)
    case 'cut':
      return cutStrap(set, what)
    case 'land core':
      return landCore(set, what, move.onto, place)
    case 'park core':
      return parkCore(set, what, place)
    case 'fit part':
      return fitPart(set, what, move.with, place)
    case 'lift part':
      return liftPart(set, what)
    case 'bridge':
      return bridgePart(set, what, place)
    case 'plug unit':
      return plugUnit(set, what, move.in, unit(what), place)
    case 'pull unit':
      return pullUnit(set, what, place)
  }
}
