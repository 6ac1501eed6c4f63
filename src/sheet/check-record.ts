/** What the schemas of rewires and jobs cannot see. Moves are checked against the wiring that they meet, not here. */
import { type Checker, checkSpecs, partOf } from './checker.ts'
import { itemsOf, type Raw, under } from './raw.ts'

export function checkRewire(check: Checker): void {
  check.onShelf(under(check.root, 'set'), 'set')
  checkMoves(check, under(check.root, 'moves'))
}

export function checkJob(check: Checker): void {
  check.onShelf(under(under(check.root, 'instrument'), 'set'), 'set')
  check.onShelf(under(check.root, 'line'), 'line')
  checkMoves(check, under(under(check.root, 'found'), 'moves'))
  checkMoves(check, under(check.root, 'moves'))
}

function checkMoves(check: Checker, moves: Raw | undefined): void {
  for (const move of itemsOf(moves)) {
    const part = under(move, 'with')
    if (part !== undefined) checkSpecs(check, [partOf('with', part.place, part)])
  }
}
