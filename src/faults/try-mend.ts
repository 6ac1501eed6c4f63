/** A set or what it stands in, changed on trial: a mend is tried before it is named. */
import { CHECKS } from '../checks/catalogue.ts'
import type { CheckContext } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import type { StandingSet } from '../netlist/compile.ts'
import { describeMove } from '../rewire/describe-move.ts'
import { applyMoves } from '../rewire/moves.ts'
import type { Move, PremisesSheet, SetSheet } from '../sheet/model.ts'
import { failing } from './named-fault.ts'

/** A mend that was tried: the context after it. */
export interface Tried {
  readonly moves: readonly Move[]
  readonly after: CheckContext
}

/** How the examined set stands: its sheet, its socket, which way round. */
export function standingOf({ installation, place }: CheckContext): StandingSet {
  const found = installation.sets[place.place]
  if (found === undefined) throw new RangeError(`no set stands at ${place.place}`)
  return found
}

/** The examined set standing otherwise. */
export function restood(context: CheckContext, change: Partial<StandingSet>): CheckContext {
  const { installation, place } = context
  const sets = { ...installation.sets, [place.place]: { ...standingOf(context), ...change } }
  return context.trial({ ...installation, sets })
}

/** The same sets in other premises. */
export function inPremises(context: CheckContext, premises: PremisesSheet): CheckContext {
  return context.trial({ ...context.installation, premises })
}

/** The examined set after moves; undefined where the wiring does not allow one of them. */
export function moved(context: CheckContext, moves: readonly Move[]): Tried | undefined {
  const set = setAfter(context, moves)
  return set === undefined ? undefined : { moves, after: restood(context, { set }) }
}

function setAfter(context: CheckContext, moves: readonly Move[]): SetSheet | undefined {
  const sheets = Object.values(context.installation.sets).map(({ set }) => set)
  const unit = (name: string): SetSheet['units'][string] | undefined =>
    sheets.find(({ units }) => Object.hasOwn(units, name))?.units[name]
  const { set, problems } = applyMoves(standingOf(context).set, moves, unit)
  return problems.length === 0 ? set : undefined
}

/** The verdicts of some checks, of the examined set. */
export function judged(context: CheckContext, checks: readonly string[]): readonly Verdict[] {
  return CHECKS.filter(({ id }) => checks.includes(id)).flatMap((rule) => rule.run(context))
}

/** What fails of some checks, each as one word, so that before and after can be compared. */
export function troubles(verdicts: readonly Verdict[], checks: readonly string[]): ReadonlySet<string> {
  return new Set(failing(verdicts, ...checks).map(({ check, subject }) => `${check} ${subject}`))
}

/**
 * Whether a trial fails in less than before, and in nothing that did not fail before. What failed is asked first: where
 * that stays, nothing else need be.
 */
export function mends(before: readonly Verdict[], after: CheckContext, checks: readonly string[]): boolean {
  const old = troubles(before, checks)
  const failed = new Set(failing(before, ...checks).map(({ check }) => check))
  const [asked, rest] = [checks.filter((id) => failed.has(id)), checks.filter((id) => !failed.has(id))]
  const now = troubles(judged(after, asked), asked)
  if (now.size >= old.size || [...now].some((one) => !old.has(one))) return false
  return troubles(judged(after, rest), rest).size === 0
}

/** The first of several lists of moves that mends. */
export function firstThatMends(
  context: CheckContext,
  before: readonly Verdict[],
  lists: Iterable<readonly Move[]>,
  checks: readonly string[],
  also: (after: CheckContext) => boolean = () => true,
): Tried | undefined {
  for (const moves of lists) {
    const tried = moved(context, moves)
    if (tried !== undefined && mends(before, tried.after, checks) && also(tried.after)) return tried
  }
  return undefined
}

/** Moves inside a set as a person at the bench makes them. */
export function inWords(moves: readonly Move[]): string {
  return `with the set unplugged, ${moves.map(describeMove).join(', then ')}`
}
