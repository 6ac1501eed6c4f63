/** What a sheet carries beyond its own words: its file, its places, and what its bases tell. */
import type { Place } from '../problem.ts'
import { type Chain, landingsOf, withoutBases } from './bases.ts'
import type { Move, PlacedMove, Sheet, UnitSheet } from './model.ts'
import { placesOf, type RawMap } from './raw.ts'

/** Makes the sheet of a validated body. */
export function finish(
  body: object,
  file: string,
  merged: RawMap,
  chain: Chain,
  units: ReadonlyMap<string, UnitSheet>,
): Sheet {
  const places = placesOf(withoutBases(merged))
  const head = { ...(body as Sheet), file, places }
  switch (head.sheet) {
    case 'set': {
      const {
        'based on': _,
        without: __,
        ...own
      } = head as typeof head & { 'based on'?: string; without?: string[] }
      const named = Object.assign(Object.create(null), Object.fromEntries(units))
      return { ...own, bases: chain.names, landings: landingsOf(chain), units: named }
    }
    case 'rewire':
      return { ...head, moves: placed(head.moves, 'moves', places) }
    case 'job': {
      const found = { ...head.found, moves: placed(head.found.moves, 'found.moves', places) }
      return { ...head, found, moves: placed(head.moves, 'moves', places) }
    }
    default:
      return head
  }
}

function placed(moves: readonly Move[], path: string, places: ReadonlyMap<string, Place>): PlacedMove[] {
  return moves.map((move, index) => {
    const place = places.get(`${path}.${index}`)
    return place === undefined ? move : { ...move, place }
  })
}
