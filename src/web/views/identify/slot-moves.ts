/** What a hand does to a slot so that a set from its sheet is the one that was found. Pure. */
import type { BoardSlot, IdentifiedSet, Move } from '../../../index.ts'

/** The moves that pull the unit which the sheet has and plug the one that was found; none where they agree. */
export function slotMoves(
  { unit }: Pick<IdentifiedSet, 'unit'>,
  slots: readonly Pick<BoardSlot, 'name' | 'fitted'>[],
): readonly Move[] {
  // a set that has no slot says nothing of a unit
  const [slot] = slots
  if (unit === undefined || slot === undefined || unit === (slot.fitted ?? null)) return []
  const { name, fitted } = slot
  return [
    ...(fitted === undefined ? [] : [{ do: 'pull unit', what: name } as const]),
    ...(unit === null ? [] : [{ do: 'plug unit', what: unit, in: name } as const]),
  ]
}
