/** A set after moves, and which of them its wiring refused. */
import type { Problem } from '../../problem.ts'
import { applyMoves } from '../../rewire/moves.ts'
import type { Move, PlacedMove, SetSheet, UnitSheet } from '../../sheet/model.ts'

/** The set after the moves that were made; a refused one changes nothing. */
export interface Applied {
  readonly set: SetSheet
  readonly made: readonly PlacedMove[]
  readonly asked: readonly PlacedMove[]
  readonly refused: readonly Problem[]
  /** Which of the moves were refused, counted from 0; as many as there are problems. */
  readonly refusedMoves: readonly number[]
}

/** Makes moves one by one, each on the wiring that those before it left. */
export function moved(
  set: SetSheet,
  moves: readonly Move[],
  unit: (name: string) => UnitSheet | undefined,
): Applied {
  let now = set
  const made: PlacedMove[] = []
  const refused: Problem[] = []
  const refusedMoves: number[] = []
  moves.forEach((move, k) => {
    const { set: next, problems } = applyMoves(now, [move], unit)
    now = next
    if (problems.length === 0) made.push(move)
    for (const problem of problems) {
      refused.push(problem)
      refusedMoves.push(k)
    }
  })
  return { set: now, made, asked: moves, refused, refusedMoves }
}
