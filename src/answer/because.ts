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
    return withMoves(after, (one) => one !== k, checks)
  })
  const without = checks.map((check) => otherwise(trials, check, now.get(check)))
  const undecided = checks.filter((_, k) => without[k]?.length === 0)
  const enough = enoughFor(after, undecided, (trial, check) => comesOut(trial, check, found, proposed), tell)
  return checks.map((check, k) => {
    const deciding = without[k] ?? []
    const left = deciding.flatMap((move) => trials[move - 1] ?? [])
    const { moves, says } = enough.get(check) ?? {
      moves: deciding,
      says: sentence(check, deciding, left, after),
    }
    return { check, moves, says, ...wordsOf(check, found, proposed) }
  })
}

/** Numbers of the moves with which left out a check comes out otherwise. */
function otherwise(trials: readonly (Trial | undefined)[], check: string, now: string | undefined): number[] {
  return trials.flatMap((trial, k) =>
    trial !== undefined && trial.outcomes.get(check)?.states !== now ? [k + 1] : [],
  )
}

/** Whether a check comes out as proposed: all its states alike, or its gravest where that is what changes. */
function comesOut(
  { outcomes }: Trial,
  check: string,
  found: readonly Verdict[],
  proposed: readonly Verdict[],
): boolean {
  const outcome = outcomes.get(check)
  if (outcome?.states === stateByCheck(proposed).get(check)) return true
  const [before, after] = [gravestOf(check, found)?.state, gravestOf(check, proposed)?.state]
  return before !== after && outcome?.worst === after
}

/** Of more moves than this no pairs are tried. */
const MOST_PAIRED = 8

/** Moves that are enough by themselves, where no single one that is left out decides: each alone, else two together. */
interface Enough {
  readonly moves: readonly number[]
  readonly says: string
}

/** What is enough, for each check that no single move decides. */
function enoughFor(
  after: Standing,
  checks: readonly string[],
  isThere: (trial: Trial, check: string) => boolean,
  tell: Tell,
): ReadonlyMap<string, Enough> {
  const numbers = after.moves.map((_, k) => k + 1)
  const enough = new Map<string, Enough>()
  if (checks.length === 0 || numbers.length < 2) return enough
  const kept = (moves: readonly number[], of: readonly string[]): readonly string[] => {
    tell(`keeping ${moves.length === 1 ? 'move' : 'moves'} ${listed(moves)} of ${numbers.length}`)
    const trial = withMoves(after, (k) => moves.includes(k + 1), of)
    return trial === undefined || trial.leaning.length > 0 ? [] : of.filter((check) => isThere(trial, check))
  }
  const alone = numbers.map((move) => kept([move], checks))
  for (const check of checks) {
    const moves = numbers.filter((_, k) => alone[k]?.includes(check))
    if (moves.length > 0) enough.set(check, { moves, says: aloneSentence(moves) })
  }
  if (numbers.length > MOST_PAIRED) return enough
  for (const pair of numbers.flatMap((p) => numbers.filter((q) => q > p).map((q) => [p, q] as const))) {
    const open = checks.filter((check) => !enough.has(check))
    if (open.length === 0) break
    const says = `Moves ${listed(pair)} together do it, and so do the others without one of them.`
    for (const check of kept(pair, open)) enough.set(check, { moves: pair, says })
  }
  return enough
}

function aloneSentence(moves: readonly number[]): string {
  return moves.length === 1
    ? `Move ${listed(moves)} does it by itself, and so do the others together.`
    : `Moves ${listed(moves)}: each alone does it.`
}

interface Outcome {
  readonly states: string | undefined
  readonly worst: VerdictState | undefined
}

/** A rewire without one of its moves, and without those that lean on it. */
interface Trial {
  readonly outcomes: ReadonlyMap<string, Outcome>
  /** Numbers of the moves that do not apply without those that are left out. */
  readonly leaning: readonly number[]
}

/** The changed checks with some of the moves, without those that lean on the rest; undefined where no rewire is known. */
function withMoves(
  after: Standing,
  isKept: (k: number) => boolean,
  checks: readonly string[],
): Trial | undefined {
  const { rewiring, installation, places } = after
  const [place = ''] = places
  const standing = installation.sets[place]
  if (rewiring === undefined || standing === undefined) return undefined
  const moves = rewiring.moves.filter((_, k) => isKept(k))
  const { set, problems } = applyMoves(rewiring.from, moves, rewiring.unit)
  const refused = new Set(problems.map(({ place: at }) => at))
  const leaning = rewiring.moves.flatMap(({ place: at }, k) =>
    at !== undefined && isKept(k) && refused.has(at) ? [k + 1] : [],
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
  if (moves.length === 0)
    return 'Several moves do it together, and more of them than it takes: with any one left out, or any one alone, it does not come out otherwise.'
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
