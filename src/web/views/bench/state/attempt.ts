/** Moves are tried before they are made: one that the wiring does not allow changes nothing and is told. */
import { batch, type Signal, signal } from '@preact/signals'
import type { Move, Problem } from '../../../../index.ts'
import { announce } from '../../../kit/index.ts'
import { holding } from '../../../state/after-paint.ts'
import { change, onBench, present, side, type Work } from '../../../state/work.ts'
import { bench } from '../../../talk/solver.ts'
import { judged, problemsOf, tookJudgement } from './judgement.ts'

/** What was not made, and why; gone with the next that is made. */
export const refusal: Signal<readonly Problem[]> = signal([])

/** One after the other: each meets the wiring that the one before has left. */
let queue: Promise<unknown> = Promise.resolve()

/** Tries a move on the newest wiring. */
export function attempt(move: Move): Promise<boolean> {
  return inTurn((now) => tried(now, [...now.moves, move], [now.moves.length]))
}

/** Tries several moves, all or none. */
export function attemptAll(moves: readonly Move[]): Promise<boolean> {
  return inTurn((now) =>
    tried(
      now,
      [...now.moves, ...moves],
      moves.map((_, k) => now.moves.length + k),
    ),
  )
}

/** Takes one move out of the list; those behind it are tried again, and those that cannot stand without it go too. */
export function takeBack(index: number): Promise<boolean> {
  return inTurn(async (now) => {
    const words = judged.peek()?.quick.moves ?? []
    let left = now.moves.filter((_, k) => k !== index)
    let names = words.filter((_, k) => k !== index)
    const gone: string[] = []
    for (;;) {
      const quick = await bench.ask('judge', { bench: onBench({ ...now, moves: left }) })
      const refused = new Set(quick.refusedMoves)
      if (refused.size === 0) {
        const also = gone.length === 0 ? '' : `; with it went what needs it: ${gone.join('; ')}`
        settle(now, left, quick, `Taken back: ${words[index] ?? 'the move'}${also}.`)
        return true
      }
      gone.push(...names.filter((_, k) => refused.has(k)))
      left = left.filter((_, k) => !refused.has(k))
      names = names.filter((_, k) => !refused.has(k))
    }
  })
}

async function inTurn(act: (now: Work) => Promise<boolean>): Promise<boolean> {
  const turn = queue.then(async () => {
    const now = present.peek()
    if (now === undefined) return false
    try {
      return await holding(act(now))
    } catch (thrown) {
      refusal.value = problemsOf(thrown)
      return false
    }
  })
  queue = turn
  return await turn
}

async function tried(now: Work, moves: readonly Move[], added: readonly number[]): Promise<boolean> {
  const quick = await bench.ask('judge', { bench: onBench({ ...now, moves }) })
  const wrong = quick.refused.filter((_, k) => added.includes(quick.refusedMoves[k] ?? -1))
  if (wrong.length > 0) {
    refusal.value = wrong
    announce(`Not made. Found ${wrong[0]?.found}; expected ${wrong[0]?.expected}.`)
    return false
  }
  settle(now, moves, quick, sentence(added.map((k) => quick.moves[k] ?? '').join(', then ')))
  return true
}

function settle(
  now: Work,
  moves: readonly Move[],
  quick: Parameters<typeof tookJudgement>[1],
  says: string,
): void {
  // whoever opened something else meanwhile does not want this move
  if (present.peek() !== now) return
  batch(() => {
    change((one) => ({ ...one, moves }))
    const next = present.peek()
    if (next !== undefined) tookJudgement(next, quick)
    refusal.value = []
    side.value = 'proposed'
  })
  const { fails, marginal } = quick.counts
  announce(`${says} Now ${fails} fail${fails === 1 ? 's' : ''}, ${marginal} marginal.`)
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`
}
