/**
 * While a lead is in the hand, every place where it may land is judged ahead: whoever has taken it up needs a moment to
 * put it down, and the verdicts are then there.
 */
import { effect } from '@preact/signals'
import { type Move, type Thing, thingParts } from '../../../../index.ts'
import { onBench, present, type Work } from '../../../state/work.ts'
import { bench } from '../../../talk/solver.ts'
import { hand, moveTo, offered } from './hand.ts'

/** Judges ahead whenever something is taken up, until it is ended. */
export function watchAhead(): () => void {
  return effect(() => {
    const held = hand.value
    const now = present.value
    if (held === undefined || now === undefined) return
    const moves = [...offered.peek()].flatMap((thing: Thing) => {
      const { sort, name } = thingParts(thing)
      const move = sort === 'terminal' ? moveTo(held, name) : undefined
      return move === undefined ? [] : [move]
    })
    void prepare(now, moves, () => hand.peek() === held && present.peek() === now)
  })
}

/** One after the other, so that what is really asked waits for one at most. */
async function prepare(now: Work, moves: readonly Move[], isWanted: () => boolean): Promise<void> {
  for (const move of moves) {
    if (!isWanted()) return
    try {
      await bench.ask('prepare', { bench: onBench({ ...now, moves: [...now.moves, move] }) })
    } catch {
      // whoever makes this move is told why
    }
  }
}
