/** What a solve came to: voltages, currents, islands, and how well the numbers came out. */
import type { Point } from './laws.ts'
import type { Question } from './question.ts'

/** A complex number; im is 0 for direct current. */
export interface Complex {
  readonly re: number
  readonly im: number
}

/** The answer to one question. */
export interface Solution {
  readonly question: Question
  /** Node voltages against the reference of their island, interleaved re, im, V. */
  readonly voltages: Float64Array
  /** What the voltages lost in rounding, so that differences of large voltages stay exact. */
  readonly voltageTails: Float64Array
  /** Branch currents, interleaved re, im, A; added straps after the netlist's branches. */
  readonly currents: Float64Array
  /** Island of each node. */
  readonly island: Int32Array
  /** Branches in loops of zero-ohm links, whose current is shared as equal resistances would share it. */
  readonly shared: readonly number[]
  /** Scaled residual of the solve; about 1 when healthy. */
  readonly residual: number
  /** A probe stands between two islands, so that no current can flow in it. */
  readonly probeOpen: boolean
  /** Reasons why the solution is approximate, each with the branches that stand in. */
  readonly standIns: ReadonlyMap<string, readonly number[]>
  /** Direct-current point of the parts whose law bends; absent where none does. */
  readonly point?: Point
  /** Alternating voltage across every branch, V rms, where a law hangs on it. */
  readonly swing?: Float64Array
  /** Ohms of the bent parts that were taken as the line finds them, by branch. */
  readonly chords?: ReadonlyMap<number, number>
  /** Where a node or branch of the whole netlist is in these arrays, when they hold a portion of it; −1 for the rest. */
  readonly portion?: { readonly toNode: Int32Array; readonly toBranch: Int32Array }
}

/** The island of a node; undefined for one that is left out. */
export function islandAt({ island, portion }: Solution, node: number): number | undefined {
  return island[portion === undefined ? node : (portion.toNode[node] ?? -1)]
}

/** The voltage from `q` to `p`, V(p) − V(q); undefined between two islands. */
export function voltageBetween(solution: Solution, p: number, q: number): Complex | undefined {
  const { voltages, voltageTails: tails, island, portion } = solution
  if (portion !== undefined) {
    p = portion.toNode[p] ?? -1
    q = portion.toNode[q] ?? -1
  }
  if (island[p] === undefined || island[p] !== island[q]) return undefined
  return {
    re: voltages[2 * p]! - voltages[2 * q]! + (tails[2 * p]! - tails[2 * q]!),
    im: voltages[2 * p + 1]! - voltages[2 * q + 1]! + (tails[2 * p + 1]! - tails[2 * q + 1]!),
  }
}

/** The current through a branch, positive from its `from` to its `to`. */
export function currentIn(solution: Solution, branch: number): Complex {
  const { currents, portion } = solution
  const k = portion === undefined ? branch : (portion.toBranch[branch] ?? -1)
  const re = currents[2 * k]
  const im = currents[2 * k + 1]
  if (re === undefined || im === undefined) throw new RangeError(`no branch has the index ${branch}`)
  return { re, im }
}

/** Size of a complex number. */
export function sizeOf({ re, im }: Complex): number {
  return Math.hypot(re, im)
}
