/** One side of the bench: the set as found or after moves, and all that can be asked of it. */
import type { CheckContext } from '../../checks/context.ts'
import type { Verdict } from '../../checks/rule.ts'
import type { Figure } from '../../figures/figure.ts'
import type { Board } from '../../picture/board/board.ts'
import { boardOf } from '../../picture/board/board-of.ts'
import type { CircuitShown } from '../../picture/circuit/shown.ts'
import type { Problem } from '../../problem.ts'
import { describeMove } from '../../rewire/describe-move.ts'
import type { Move, SetSheet } from '../../sheet/model.ts'
import type { CheckAnswer, Counts, Outcome } from '../answer.ts'
import { contextsOf, countsOf, judgedBy, outcomeOf, verdictsOf } from '../check-answer.ts'
import { envelope } from '../envelope.ts'
import { speechCurves } from '../speech-curves.ts'
import type { Standing, Where } from '../standing.ts'
import { type Stands, standsOf } from '../stands.ts'
import type { Tell } from '../tell.ts'
import { whereAsked } from '../where-asked.ts'
import { conditionsOf } from './conditions.ts'
import type { Applied } from './moved.ts'
import { type NowAsked, nowOf } from './now-of.ts'

/** The quick half of a judgement: faults by name are not looked for, so that they count as none. */
export interface QuickJudgement {
  readonly verdicts: readonly Verdict[]
  readonly counts: Counts
  readonly outcome: Outcome
}

/** Everything is worked out when it is first asked for, and kept. */
export interface BenchSide {
  /** The moves in words, refused ones among them. */
  readonly moves: readonly string[]
  /** Those of them that the wiring allowed, in order. */
  readonly made: readonly Move[]
  /** Why the others were refused, and which they are, counted from 0. */
  readonly refused: readonly Problem[]
  readonly refusedMoves: readonly number[]
  readonly warnings: readonly Problem[]
  stands(): Stands
  board(): Board
  /** Conditions that the set can be in where it stands. */
  conditions(): readonly string[]
  verdicts(): QuickJudgement
  /** The whole judgement, as `check` gives it; refused moves stand among its problems. */
  check(tell?: Tell): CheckAnswer
  /** The same of all sets that stand there, as `check` of the premises gives it. */
  premises(tell?: Tell): CheckAnswer
  /** What flows, and the figures of that condition. @throws ProblemError for a condition or frequency that is none */
  now(asked: NowAsked): { readonly shown: CircuitShown; readonly figures: readonly Figure[] }
  /** Speech from 200 Hz to 4 kHz. */
  speech(): readonly Figure[]
  /** What checks work with. */
  context(): CheckContext
  readonly standing: Standing
}

/** A side of a set that was found so. */
export function sideOf(
  where: Where,
  found: SetSheet,
  applied: Applied,
  stand: (applied: Applied) => Standing,
): BenchSide {
  const standing = stand(applied)
  const contexts = once(() => contextsOf(standing))
  const judged = once(() => verdictsOf(contexts()))
  const context = (): CheckContext => {
    const [one] = contexts()
    if (one === undefined) throw new RangeError('a set on the bench has no context')
    return one
  }
  const stands = once(() => standsOf(standing))
  const check = kept((tell?: Tell) => {
    const all = judgedBy(standing, contexts(), judged(), tell)
    return checkAnswer(where, standing, all, applied.refused, stands())
  })
  return {
    moves: applied.asked.map(describeMove),
    made: applied.made,
    refused: applied.refused,
    refusedMoves: applied.refusedMoves,
    warnings: standing.warnings,
    standing,
    context,
    stands,
    board: once(() => boardOf(applied.set, found)),
    conditions: once(() => conditionsOf(standing.net, context().place)),
    verdicts: once(() => {
      const verdicts = judged().flat()
      const counts = countsOf({ verdicts, faults: [] })
      return { verdicts, counts, outcome: outcomeOf(counts) }
    }),
    check,
    premises: kept((tell?: Tell) => {
      const { premises, sets } = standing.installation
      const { spot: _, ...rest } = standing
      const all: Standing = { ...rest, name: premises?.name ?? standing.name, places: Object.keys(sets) }
      const together = contextsOf(all)
      const found = judgedBy(all, together, verdictsOf(together, undefined, tell), tell)
      return checkAnswer({ target: '' }, all, found, applied.refused, stands())
    }),
    now: (asked) => nowOf(context(), asked),
    speech: once(() => speechCurves(context()).map((plan) => context().figure(plan))),
  }
}

function checkAnswer(
  where: Where,
  { name, warnings }: Standing,
  judged: ReturnType<typeof judgedBy>,
  refused: readonly Problem[],
  stands: Stands,
): CheckAnswer {
  const counts = countsOf(judged)
  return {
    ...envelope('check', { check: name, ...whereAsked(where) }, [...warnings, ...refused]),
    outcome: outcomeOf(counts),
    counts,
    stands,
    ...judged,
  }
}

/** Worked out when it is first asked for. */
function once<T>(make: () => T): () => T {
  return kept(make)
}

function kept<Asked extends readonly unknown[], T>(make: (...asked: Asked) => T): (...asked: Asked) => T {
  let made: { readonly value: T } | undefined
  return (...asked) => {
    made ??= { value: make(...asked) }
    return made.value
  }
}
