/** Why a check comes out otherwise after a rewire: the rewire is judged again with each of its moves left out. */
import type { Verdict, VerdictState } from '../checks/rule.ts'
import { compile } from '../netlist/compile.ts'
import { applyMoves } from '../rewire/moves.ts'
import type { Because, BecauseSide } from './answer.ts'
import { contextsOf, verdictsOf } from './check-answer.ts'
import type { Standing } from './standing.ts'
import { QUIET, type Tell } from './tell.ts'

const GRAVITY: readonly VerdictState[] = ['fails', 'marginal', 'unknown', 'holds']

/** The states of each check, of all its subjects in their order. */
export function stateByCheck(verdicts: readonly Verdict[]): ReadonlyMap<string, string> {
  const states = new Map<string, string>()
  for (const { check, state } of verdicts)
    states.set(check, states.has(check) ? `${states.get(check)},${state}` : state)
  return states
}

/** Each changed check with its words on both sides and the moves that do it. */
export function becauseOf(
  checks: readonly string[],
  found: readonly Verdict[],
  proposed: readonly Verdict[],
  after: Standing,
  tell: Tell = QUIET,
): readonly Because[] {
  if (checks.length === 0) return []
  const now = stateByCheck(proposed)
  const trials = after.moves.map((_, k) => {
    tell(`leaving out move ${k + 1} of ${after.moves.length}`)
    return withoutMove(after, k, checks)
  })
  return checks.map((check) => {
    const deciding = trials.flatMap((trial, k) =>
      trial !== undefined && trial.outcomes.get(check)?.states !== now.get(check) ? [k + 1] : [],
    )
    const without = deciding.flatMap((move) => trials[move - 1] ?? [])
    return {
      check,
      moves: deciding,
      says: sentence(check, deciding, without, after),
      ...wordsOf(check, found, proposed),
    }
  })
}

interface Outcome {
  readonly states: string | undefined
  readonly worst: VerdictState | undefined
}

/** A rewire without one of its moves, and without those that lean on it. */
interface Trial {
  readonly outcomes: ReadonlyMap<string, Outcome>
  /** Numbers of the moves that do not apply without it. */
  readonly leaning: readonly number[]
}

/** The changed checks without one move and those that lean on it; undefined where no rewire is known. */
function withoutMove(after: Standing, left: number, checks: readonly string[]): Trial | undefined {
  const { rewiring, installation, places } = after
  const [place = ''] = places
  const standing = installation.sets[place]
  if (rewiring === undefined || standing === undefined) return undefined
  const moves = rewiring.moves.filter((_, k) => k !== left)
  const { set, problems } = applyMoves(rewiring.from, moves, rewiring.unit)
  const refused = new Set(problems.map(({ place: at }) => at))
  const leaning = rewiring.moves.flatMap(({ place: at }, k) =>
    at !== undefined && k !== left && refused.has(at) ? [k + 1] : [],
  )
  const other = { ...installation, sets: { ...installation.sets, [place]: { ...standing, set } } }
  const contexts = contextsOf({ ...after, installation: other, net: compile(other) })
  const verdicts = verdictsOf(contexts, (check) => checks.includes(check)).flat()
  const states = stateByCheck(verdicts)
  const outcomes = new Map(
    checks.map((check) => [check, { states: states.get(check), worst: gravestOf(check, verdicts)?.state }]),
  )
  return { outcomes, leaning }
}

/** The words of both sides, about the same subject where it speaks for both. */
function wordsOf(
  check: string,
  found: readonly Verdict[],
  proposed: readonly Verdict[],
): Pick<Because, 'found' | 'proposed'> {
  const [before, after] = [gravestOf(check, found), gravestOf(check, proposed)]
  const isGraver =
    after !== undefined &&
    (before === undefined || GRAVITY.indexOf(after.state) < GRAVITY.indexOf(before.state))
  const about = (isGraver ? after : before)?.subject
  return {
    found: shown(gravestOf(check, found, about)),
    proposed: shown(gravestOf(check, proposed, about)),
  }
}

/** The gravest verdict of a check; of several that are as grave the one about `subject`. */
function gravestOf(check: string, verdicts: readonly Verdict[], subject?: string): Verdict | undefined {
  const mine = verdicts.filter((one) => one.check === check)
  const state = GRAVITY.find((grave) => mine.some((one) => one.state === grave))
  const gravest = mine.filter((one) => one.state === state)
  return gravest.find((one) => one.subject === subject) ?? gravest[0]
}

function shown(verdict: Verdict | undefined): BecauseSide | null {
  return verdict === undefined ? null : { state: verdict.state, says: verdict.says }
}

const WOULD: Readonly<Record<VerdictState, string>> = {
  fails: 'fail',
  marginal: 'be marginal',
  unknown: 'not be known',
  holds: 'hold',
}

/** `3`, `3 and 5`, `3, 4 and 5`. */
function listed(moves: readonly number[]): string {
  const last = moves.at(-1) ?? ''
  return moves.length < 2 ? `${last}` : `${moves.slice(0, -1).join(', ')} and ${last}`
}

function sentence(
  check: string,
  moves: readonly number[],
  without: readonly Trial[],
  { moves: all }: Standing,
): string {
  if (all.length === 0) return 'No rewire leads from one side to the other.'
  if (moves.length === 0) return 'No single move decides it: with any one left out it comes out the same.'
  const outcomes = without.map(({ outcomes }) => outcomes.get(check)?.worst)
  const [worst] = outcomes
  const same = outcomes.every((one) => one === worst)
  const would =
    same && worst !== undefined ? `the check would ${WOULD[worst]}` : 'the check would come out otherwise'
  const leaning = [...new Set(without.flatMap((one) => one.leaning))].filter((one) => !moves.includes(one))
  const too = leaning.length === 0 ? '' : `, which takes ${listed(leaning)} with it,`
  return moves.length === 1
    ? `Move ${listed(moves)} does it: without it${too} ${would}.`
    : `Moves ${listed(moves)} do it together: without any one of them${too} ${would}.`
}
