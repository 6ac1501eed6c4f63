/**
 * Where laws hang on the solution itself: Newton's method, and the search for the size of alternating voltages, in the
 * small system alone. The linear rest of the network is in the columns, so that a step costs a small solve.
 */
import { branchAt } from '../../../netlist/netlist.ts'
import { ProblemError } from '../../../problem.ts'
import type { Point } from '../../laws.ts'
import type { Base, Source } from './base.ts'
import type { Hanging } from './hanging.ts'
import type { Row } from './row.ts'
import { LEAST_PIVOT, type SmallSystem } from './small-system.ts'

/** Steps from the unchanged point, and after them from rest. */
const STEPS = 10
const STEPS_FROM_REST = 60
/** At rest: a change below this share of itself and below this much, V or A; the error left is its square. */
const RELATIVE = 1e-10
const ABSOLUTE = 1e-13
/** The same on the way, where help stands beside the parts. */
const ROUGHLY = 10

/** A sum below this share of its terms is their rounding. */
const NOTHING = 1e-14
/** Volts that the rounding of no current may come to. */
const ROUNDED = 1e-11

/** Steps of the search for sizes, and when it has come to rest: a tenth of what `swing.ts` allows, so that both agree to nine digits. */
const SWINGS = 300
const SWING_RELATIVE = 1e-11
const SWING_ABSOLUTE = 1e-13
const LEAST_SHARE = 1 / 256

/** A variant whose hanging rows are searched for; see `network-table.ts`. */
export interface Searched {
  readonly base: Base
  readonly system: SmallSystem
  /** Rows of the changes, after them those of hanging parts; `active` are those that count in the matrix. */
  count: number
  readonly active: readonly Row[]
  readonly hanging: readonly Hanging[]
  /** The point, by branch. */
  readonly voltage: Float64Array
  readonly current: Float64Array
  take(row: Row): boolean
  tie(): boolean
  fill(): number
  solve(source: Source, s: number, fine: boolean): void
}

/** States the hanging rows of the variant at hand where all agree; false where they do not within the steps. */
export function settleRows(table: Searched): boolean {
  const [source] = table.base.sources
  if (source === undefined) return false
  const fixed = table.count
  try {
    if (table.base.stating === 'swing') return swing(table, source, fixed)
    return newton(table, source, fixed)
  } catch (error) {
    if (error instanceof ProblemError || error instanceof RangeError) return false
    throw error
  }
}

/** Rows of the changes and of the hanging parts, as they are stated now; false where their matrix says nothing. */
function restate(table: Searched, fixed: number): boolean {
  table.count = fixed
  for (const one of table.hanging) for (const row of one.rows) if (!row.isSame) table.take(row)
  if (!table.tie()) return false
  return table.fill() >= LEAST_PIVOT || table.active.length === 0
}

/** Siemens beside bent parts that share the voltage out between level ones, as in `newton.ts`; then none. */
const SHARING: readonly number[] = [1e-6, 1e-9, 1e-12, 0]

/** From the unchanged point; where that does not lead to rest, from rest as a search of its own would. */
function newton(table: Searched, source: Source, fixed: number): boolean {
  start(table, table.base.about.direct)
  if (attempt(table, source, fixed, 0, STEPS) && !isParted(table)) return true
  start(table, undefined)
  if (!attempt(table, source, fixed, 0, STEPS_FROM_REST)) return false
  // a part whose tangent is level may be stuck where it started: only help shows whether it is open
  if (!isParted(table)) return true
  for (const beside of SHARING) {
    if (!attempt(table, source, fixed, beside, STEPS_FROM_REST) && beside === 0) return false
  }
  return true
}

function start({ voltage, current }: Searched, point: Point | undefined): void {
  if (point === undefined) {
    voltage.fill(0)
    current.fill(0)
    return
  }
  voltage.set(point.voltage.subarray(0, voltage.length))
  current.set(point.current.subarray(0, current.length))
}

/** Steps from point to point until all is at rest. */
function attempt(table: Searched, source: Source, fixed: number, beside: number, most: number): boolean {
  for (let step = 0; step < most; step += 1) {
    for (const one of table.hanging) {
      one.place(table.voltage, table.current)
      one.state(beside)
    }
    if (!restate(table, fixed)) return false
    table.solve(source, 0, false)
    if (carry(table, source, beside)) return true
  }
  return false
}

/**
 * Whether some part that bends stands between two islands, since its tangent is level there; what did so before the
 * changes has been looked into then.
 */
function isParted(table: Searched): boolean {
  const { before } = table.base.ties
  return table.hanging.some((one) =>
    one.case.laws.bent.direct.some((k) => {
      const row = one.rows[k]!
      return before[row.p] === before[row.q] && isApart(table, row)
    }),
  )
}

/** Takes what every bent branch carries as the next point, held back by its law; true where nothing moves any more. */
function carry(table: Searched, source: Source, beside: number): boolean {
  let rests = true
  for (const one of table.hanging) {
    for (const k of one.case.laws.bent.direct) if (!carryOne(table, source, one, k, beside)) rests = false
  }
  return rests
}

const carried = { voltage: 0, current: 0 }
const before = { voltage: 0, current: 0 }

function carryOne(table: Searched, source: Source, one: Hanging, k: number, beside: number): boolean {
  const row = one.rows[k]!
  const branch = one.first + k
  before.voltage = table.voltage[branch]!
  before.current = table.current[branch]!
  const through = lookAt(table, source, row.i, 0, 0)
  const across = lookAt(table, source, row.p, row.q, 0)
  // the rounding of a current that is none, through many ohms, is no voltage
  const none = through === 0 && row.a !== 0 && Math.abs(across - row.eRe / row.a) < ROUNDED
  const fall = none ? row.eRe / row.a : across
  // what the help beside it carries is none of the part's own
  carried.current = through - beside * fall
  // between two islands the voltage is not determined and stays what it was
  carried.voltage = isApart(table, row) ? before.voltage : fall - one.case.within[k]! * carried.current
  const { part, ordinal } = branchAt(table.base.net, branch)
  const spec = one.case.question.instead?.[0]?.spec ?? part.spec
  const held = part.law.settle?.(spec, ordinal, carried, before) ?? carried
  table.voltage[branch] = held.voltage
  table.current[branch] = held.current
  if (held !== carried) return false
  const slack = beside === 0 ? 1 : ROUGHLY
  return isNear(carried.voltage, before.voltage, slack) && isNear(carried.current, before.current, slack)
}

function isApart({ base: { ties } }: Searched, { p, q }: Row): boolean {
  const island = ties.moved ? ties.island : ties.before
  return island[p] !== island[q]
}

function isNear(now: number, then: number, slack: number): boolean {
  return Math.abs(now - then) <= slack * (RELATIVE * Math.abs(now) + ABSOLUTE)
}

/** x(p) − x(q) of the variant, without tails; `part` 0 for re, 1 for im. */
function lookAt(
  { active, system, base }: Searched,
  { x }: Source,
  p: number,
  q: number,
  part: 0 | 1,
): number {
  const at = 2 * p + part
  const to = 2 * q + part
  let sum = x.value[at]! - x.value[to]! + (x.tail[at]! - x.tail[to]!)
  let terms = Math.abs(sum)
  const { g } = system
  for (let j = 0; j < active.length; j += 1) {
    const { value, tail } = base.columns.at(active[j]!.column)
    const own = value[at]! - value[to]! + (tail[at]! - tail[to]!)
    const other = value[at ^ 1]! - value[to ^ 1]! + (tail[at ^ 1]! - tail[to ^ 1]!)
    const re = own * g[2 * j]!
    const im = other * g[2 * j + 1]!
    sum += part === 0 ? re - im : re + im
    terms += Math.abs(re) + Math.abs(im)
  }
  // a law that is level at nothing is not level at the rounding of nothing
  return Math.abs(sum) < NOTHING * terms ? 0 : sum
}

/** Sizes of alternating voltage at which all agree, from none, as `settleSwing` finds them. */
function swing(table: Searched, source: Source, fixed: number): boolean {
  let share = 1
  let last = Number.POSITIVE_INFINITY
  for (const one of table.hanging) {
    one.case.swing.fill(0)
    one.place(table.voltage, table.current)
  }
  for (let step = 0; step < SWINGS; step += 1) {
    for (const one of table.hanging) if (step === 0 || one.case.laws.bent.swing.length > 0) one.state()
    if (!restate(table, fixed)) return false
    table.solve(source, 0, false)
    let change = 0
    for (const one of table.hanging) change = Math.max(change, measure(table, source, one, 0))
    if (change <= 1) return true
    if (change > 0.9 * last) share = Math.max(LEAST_SHARE, share / 2)
    last = change
    for (const one of table.hanging) measure(table, source, one, share)
  }
  return false
}

/** How far the sizes of a part are from what they were taken for, in tolerances; moves them by a share of that. */
function measure(table: Searched, source: Source, one: Hanging, share: number): number {
  let change = 0
  for (const k of one.case.laws.bent.swing) {
    const { p, q } = one.rows[k]!
    const size = Math.hypot(lookAt(table, source, p, q, 0), lookAt(table, source, p, q, 1))
    const apart = size - one.case.swing[k]!
    change = Math.max(change, Math.abs(apart) / (SWING_RELATIVE * size + SWING_ABSOLUTE))
    one.case.swing[k]! += share * apart
  }
  return change
}
