/** By what values a row of a book is moved: each loose value by a standard deviation or by several, and the fault's size. */
import type { Change } from '../figures/variants.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { PLACES, type Unknown } from './loadings.ts'
import type { Severity } from './odds.ts'
import type { ChangeList } from './scorer.ts'
import { graverBy } from './severity.ts'
import { type Drift, drifted } from './tolerances.ts'

/** One value moved by so many standard deviations. */
export interface Move {
  /** Which of a test's steps it is. */
  readonly column: number
  readonly drift: Drift
  readonly deviations: number
  /** The change, by its index, where no fault gives the part other values. */
  readonly plain: number
}

/** A fault's changes with one of them moved, by their indices. */
export interface Moved {
  readonly column: number
  /** Whether it is one standard deviation up, which makes the spread. */
  readonly isUp: boolean
  readonly made: readonly number[]
  /** The loose value; absent where the fault's own size is moved. */
  readonly drift?: Drift
}

/** The moves of every loose value, as `Loadings` orders its steps. */
export function movesOf(net: Netlist, { steady, shaken, straight }: Unknown, list: ChangeList): Move[] {
  const moveOf = (drift: Drift, column: number, deviations: number): Move => ({
    ...{ column, drift, deviations },
    plain: list.add(driftedPart(net, [], drift, deviations)),
  })
  return [
    ...steady.map((drift, k) => moveOf(drift, k, 1)),
    ...shaken.flatMap((drift, k) =>
      PLACES.map((deviations, p) => moveOf(drift, straight + PLACES.length * (1 + k) + p, deviations)),
    ),
  ]
}

/** What all moves make of a fault. */
export function movedWith(
  net: Netlist,
  changes: readonly Change[],
  moves: readonly Move[],
  list: ChangeList,
): Moved[] {
  return moves.map((move) => ({
    column: move.column,
    drift: move.drift,
    isUp: move.deviations === 1,
    made: madeWith(net, changes, move, list),
  }))
}

/** A fault more and less grave than the book has it; none for one that is there or not there. */
export function graverWith(
  net: Netlist,
  changes: readonly Change[],
  { ohms, values, source }: Severity,
  straight: number,
  list: ChangeList,
): Moved[] {
  return PLACES.flatMap((deviations, p) => {
    const size = { ohms: ohms ** deviations, values: deviations * values, source }
    const made = graverBy(net, changes, size)?.map((one) => list.add(one))
    return made === undefined ? [] : [{ column: straight + p, isUp: deviations === 1, made }]
  })
}

/** The part's value drifted, on top of other values that a fault gives that part. */
function driftedPart(net: Netlist, changes: readonly Change[], drift: Drift, deviations: number): Change {
  const { part } = drift
  const given = changes.findLast((one) => 'instead' in one && one.instead.part === part)
  const spec = given !== undefined && 'instead' in given ? given.instead.spec : net.parts[part]?.spec
  if (spec === undefined) throw new RangeError(`no part has the index ${part}`)
  return { instead: { part, spec: drifted(spec, drift, deviations) } }
}

/** A fault's changes together with a drifted value. */
function madeWith(
  net: Netlist,
  changes: readonly Change[],
  { drift, deviations, plain }: Move,
  list: ChangeList,
): readonly number[] {
  const others = changes.filter((one) => !('instead' in one && one.instead.part === drift.part))
  const made = others.map((one) => list.add(one))
  const own =
    others.length === changes.length ? plain : list.add(driftedPart(net, changes, drift, deviations))
  return [...made, own]
}
