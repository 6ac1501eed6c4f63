/** Makes the tables of updates of one solved network (see `small-update.ts`). */
import type { Refined } from '../refine.ts'
import { type BranchLaw, type Candidate, lawAt } from './candidate.ts'
import {
  addTimes,
  columnOfEquation,
  columnOfNodes,
  currentIn,
  type Fine,
  fallIn,
  fine,
  type Kept,
} from './columns.ts'
import type { Tables } from './small-update.ts'

/** What is read of every variant: a voltage between two nodes or the current of a branch. */
export type Reading = { readonly voltage: readonly [number, number] } | { readonly current: number }

/** A candidate that a table can hold. */
type Held = Extract<Candidate, { does: 'law' | 'link' }>

/** Tables for these candidates; those that are none or fresh have rows of nothing. */
export function makeTables(
  kept: Kept,
  solution: Refined,
  candidates: readonly Candidate[],
  readings: readonly Reading[],
): Tables {
  const n = candidates.length
  const m = readings.length
  const tables = {
    changes: n,
    readings: m,
    base: new Float64Array(2 * m),
    reached: new Float64Array(2 * n * m),
    small: new Float64Array(2 * n * n),
    driven: new Float64Array(2 * n),
    sizes: new Float64Array(n),
    own: new Int32Array(n).fill(-1),
    ownLaw: new Float64Array(6 * n),
    ownFall: new Float64Array(2 * n * n),
    sort: Uint8Array.from(readings, (one) => ('voltage' in one ? 0 : 1)),
    largest: new Float64Array(2),
    last: new Float64Array(4),
  }
  readings.forEach((one, t) => {
    put(tables.base, t, readIn(kept, solution, one, true))
    const size = Math.abs(tables.base[2 * t]!) + Math.abs(tables.base[2 * t + 1]!)
    const sort = tables.sort[t]!
    if (size > tables.largest[sort]!) tables.largest[sort] = size
  })
  const columns = columnsOf(kept, candidates)
  candidates.forEach((one, c) => {
    if (one.does !== 'law' && one.does !== 'link') return
    const rule = rowOf(kept, one)
    put(tables.driven, c, driven(kept, rule, solution))
    tables.own[c] = rule.admittance
      ? readings.findIndex((r) => 'current' in r && r.current === rule.branch)
      : -1
    putOwn(kept, rule, solution, tables.ownLaw, c)
    columns.forEach((column, d) => {
      if (column === undefined) return
      const entry = applied(kept, rule, column, c === d)
      put(tables.small, c * n + d, entry)
      put(tables.ownFall, c * n + d, fallIn(kept, column, rule.from, rule.to))
      if (c === d) tables.sizes[c] = sizeOf(rule, entry)
    })
  })
  columns.forEach((column, c) => {
    if (column === undefined) return
    readings.forEach((one, t) => {
      put(tables.reached, c * m + t, readIn(kept, column, one, false))
    })
  })
  return tables
}

/** One column a candidate; changes of the same branch share it. */
function columnsOf(kept: Kept, candidates: readonly Candidate[]): readonly (Refined | undefined)[] {
  const known = new Map<string, Refined>()
  return candidates.map((one) => {
    if (one.does !== 'law' && one.does !== 'link') return undefined
    const { branch, admittance, from, to } = endsOf(kept, one)
    const key = branch === undefined ? `${from}-${to}` : String(branch)
    const column =
      known.get(key) ?? (admittance ? columnOfNodes(kept, from, to) : columnOfEquation(kept, branch ?? -1))
    known.set(key, column)
    return column
  })
}

/** A row of M before it is applied: by which law, between which nodes. */
interface Row {
  readonly branch: number | undefined
  /** The change is of an admittance or adds a link, so that u is a pair of nodes. */
  readonly admittance: boolean
  readonly from: number
  readonly to: number
  /** p: what stands in the diagonal of M besides w ᵀX; 0 for equations, whose row is the new law itself. */
  readonly diagonal: number
  readonly now: BranchLaw
  readonly before: BranchLaw | undefined
}

function endsOf({ laws }: Kept, one: Held): Pick<Row, 'branch' | 'admittance' | 'from' | 'to'> {
  if (one.does === 'link') return { branch: undefined, admittance: true, from: one.from, to: one.to }
  const { branch } = one
  return { branch, admittance: laws.equations[branch] === 0, from: laws.from[branch]!, to: laws.to[branch]! }
}

const NOTHING: BranchLaw = { a: 0, slope: [0, 0], offset: [0, 0], mutuals: [] }

function rowOf(kept: Kept, one: Held): Row {
  const ends = endsOf(kept, one)
  if (one.does === 'link') {
    // i·r − v = 0 with i into `from`: w is the voltage itself, and r stands in the diagonal
    return { ...ends, diagonal: one.ohms, now: { ...NOTHING, slope: [1, 0] }, before: NOTHING }
  }
  const before = lawAt(kept.laws, one.branch)
  return { ...ends, diagonal: ends.admittance ? 1 : 0, now: one.law, before }
}

/** One entry of M: the row's new law, or its change, applied to a column. */
function applied(kept: Kept, row: Row, column: Refined, diagonal: boolean): Fine {
  const fall = fallIn(kept, column, row.from, row.to)
  if (row.admittance) {
    const sum = fine(diagonal ? row.diagonal : 0)
    addTimes(sum, row.now.slope[0] - row.before!.slope[0], row.now.slope[1] - row.before!.slope[1], fall)
    return sum
  }
  return equationOn(kept, row, column, fall)
}

/** a·v − z·i − Σ m·i(other) of the new law. */
function equationOn(kept: Kept, { now, branch = -1 }: Row, x: Refined, fall: Fine): Fine {
  const sum = fine()
  addTimes(sum, now.a, 0, fall)
  addTimes(sum, -now.slope[0], -now.slope[1], currentIn(kept, x, branch))
  for (const { other, re, im } of now.mutuals) addTimes(sum, -re, -im, currentIn(kept, x, other))
  return sum
}

/** r: what drives the change in the unchanged solution. */
function driven(kept: Kept, row: Row, solution: Refined): Fine {
  const fall = fallIn(kept, solution, row.from, row.to)
  const sum = fine()
  if (row.admittance) {
    const { now, before = NOTHING } = row
    addTimes(sum, before.slope[0] - now.slope[0], before.slope[1] - now.slope[1], fall)
    addTimes(sum, before.offset[0] - now.offset[0], before.offset[1] - now.offset[1], fine(1))
    return sum
  }
  addTimes(sum, -1, 0, equationOn(kept, row, solution, fall))
  addTimes(sum, row.now.offset[0], row.now.offset[1], fine(1))
  return sum
}

/** |p| + |w ᵀX|; for an equation p is 1, as its own old law makes of its column. */
function sizeOf(row: Row, { value }: Fine): number {
  const p = row.admittance ? row.diagonal : 1
  return Math.abs(p) + Math.hypot(value[0]! - p, value[1]!)
}

function putOwn(kept: Kept, row: Row, solution: Refined, ownLaw: Float64Array, c: number): void {
  const { slope, offset } = row.now
  const fall = fallIn(kept, solution, row.from, row.to)
  ownLaw.set([...slope, ...offset, fall.value[0]! + fall.tail[0]!, fall.value[1]! + fall.tail[1]!], 6 * c)
}

/** A reading of a solution, or of a column, in which sources are at rest. NaN between two islands. */
function readIn(kept: Kept, x: Refined, one: Reading, sources: boolean): Fine {
  const { laws, topology } = kept
  if ('voltage' in one) {
    const [p, q] = one.voltage
    if (topology.island[p] !== topology.island[q]) return fine(Number.NaN)
    return fallIn(kept, x, p, q)
  }
  const k = one.current
  if (laws.equations[k] === 1) return currentIn(kept, x, k)
  const sum = fine()
  addTimes(sum, laws.slope[2 * k]!, laws.slope[2 * k + 1]!, fallIn(kept, x, laws.from[k]!, laws.to[k]!))
  if (sources) addTimes(sum, laws.offset[2 * k]!, laws.offset[2 * k + 1]!, fine(1))
  return sum
}

function put(into: Float64Array, at: number, { value, tail }: Fine): void {
  into[2 * at] = value[0]! + tail[0]!
  into[2 * at + 1] = value[1]! + tail[1]!
}
