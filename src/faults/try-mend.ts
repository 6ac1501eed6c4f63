/** A set or what it stands in, changed on trial: a mend is tried before it is named. */
import { CHECKS } from '../checks/catalogue.ts'
import { type CheckContext, roleBranches } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import type { StandingSet } from '../netlist/compile.ts'
import { describeMove } from '../rewire/describe-move.ts'
import { applyMoves } from '../rewire/moves.ts'
import type { Move, PremisesSheet, SetSheet } from '../sheet/model.ts'
import { resistorMoves } from './bell-resistor.ts'
import { failsThen, failuresWords, newlyFailing } from './judge-whole.ts'
import { failing } from './named-fault.ts'

/** A mend that was tried: the context after it. */
export interface Tried {
  readonly moves: readonly Move[]
  readonly after: CheckContext
  /** What is to be known besides: what else had to be done and why, or what fails then. */
  readonly besides?: string
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
    if (tried !== undefined && mends(before, tried.after, checks) && also(tried.after))
      return completed(context, before, tried)
  }
  return undefined
}

/**
 * A mend that was tried, seen as a whole: where something fails with it that held before, a bell resistor is tried
 * besides; what fails all the same is said.
 */
export function completed(context: CheckContext, before: readonly Verdict[], tried: Tried): Tried {
  const bad = newlyFailing(context, before, tried.after)
  if (bad.length === 0) return tried
  for (const bell of roleBranches(tried.after, 'sounder')) {
    const more = resistorMoves(tried.after, bell)
    const again = more && moved(context, withoutDetours([...tried.moves, ...more]))
    const left = again && newlyFailing(context, before, again.after)
    if (again === undefined || left === undefined || left.length >= bad.length) continue
    const cured = bad.filter(
      ({ check, subject }) => !left.some((one) => one.check === check && one.subject === subject),
    )
    const why = `; without the bell resistor ${failuresWords(cured)} would fail`
    return { ...again, besides: why + failsThen(left) }
  }
  return { ...tried, besides: failsThen(bad) }
}

/** Moves without a strap that is fitted first and taken off again. */
function withoutDetours(moves: readonly Move[]): readonly Move[] {
  const off = moves.find(
    (one, k) =>
      one.do === 'lift strap' &&
      moves.slice(0, k).some((early) => early.do === 'fit strap' && early.what === one.what),
  )
  if (off === undefined) return moves
  return moves.filter((one) => one !== off && !(one.do === 'fit strap' && one.what === off.what))
}

/** A mend in words: its moves as a person at the bench makes them, and what is to be known besides. */
export function mendWords({ moves, besides = '' }: Tried): string {
  return inWords(moves) + besides
}

/** A mend that was tried, as a finding tells it: in words, and as moves. */
export function mendOf(tried: Tried): { readonly mend: string; readonly moves: readonly Move[] } {
  return { mend: mendWords(tried), moves: tried.moves }
}

/** Moves inside a set as a person at the bench makes them. */
export function inWords(moves: readonly Move[]): string {
  return `with the set unplugged, ${moves.map(describeMove).join(', then ')}`
}
