/**
 * Direct current through laws that bend: Newton's method. Each step states every law as its tangent about the last
 * point and solves the linear network that results; parts hold back steps that their law makes incredible.
 * Where that does not come to rest, help is given on the way and taken away again: first conductances beside the
 * bent parts, then sources raised gradually. Neither is in any answer.
 */
import { branchAt, type Netlist } from '../../netlist/netlist.ts'
import { ProblemError, refuse } from '../../problem.ts'
import { type Laws, type Point, workingAt } from '../laws.ts'
import { branchesOf, type Linear, solveLinear } from '../linear.ts'
import type { Question } from '../question.ts'

/** Steps of one attempt (design 5). */
const STEPS = 60
/** Every unknown at rest: change below this share of itself, and below this much, V or A. */
const RELATIVE = 1e-9
const ABSOLUTE = 1e-12
/** A current this share of the absolute tolerance, in amperes, is one of leakage. */
const LEAKING = 1e-3
/** Steps after which a step that leads astray is taken by half. */
const PATIENCE = 8
/** Conductances beside bent parts on the way, siemens, and then none. */
const HELPS: readonly number[] = [1e-2, 1e-4, 1e-6, 1e-8, 1e-10, 1e-12, 0]
/** Shares to which the sources are raised, and the smallest step by which they are. */
const FIRST_RISE = 1 / 16
const LEAST_RISE = 1 / 65536

/** Where an attempt came to: the linear network in which all laws agree, or none. */
interface Attempt {
  readonly linear?: Linear
  /** What every branch carried last. */
  readonly point: Point
  readonly worst?: Off
}

/** The branch furthest off its law, in tolerances, and by which share. */
interface Off {
  readonly branch: number
  readonly tolerances: number
  readonly share: number
}

/** What is changed in the laws on the way. */
interface Help {
  readonly beside: number
  readonly raised: number
}

const NO_HELP: Help = { beside: 0, raised: 1 }

/** The solved network and the point about which its laws are stated. */
export interface Working {
  readonly linear: Linear
  readonly point: Point
}

/** A point at which nothing flows. */
export function atRest(count: number): Point {
  return { voltage: new Float64Array(count), current: new Float64Array(count) }
}

/**
 * Finds where all laws agree, from rest or from `start`. Laws are left filled about the point found.
 * @throws ProblemError `no-convergence` naming the part furthest off its law.
 */
export function newton(net: Netlist, laws: Laws, question: Question, start?: Point): Working {
  const rest = atRest(laws.count)
  const first = attempt(net, laws, question, start ?? rest, NO_HELP)
  if (first.linear !== undefined) return { linear: first.linear, point: first.point }
  const helped = withConductances(net, laws, question, rest)
  if (helped.linear !== undefined) return { linear: helped.linear, point: helped.point }
  const raised = withRisingSources(net, laws, question, rest)
  if (raised.linear !== undefined) return { linear: raised.linear, point: raised.point }
  const worst = raised.worst ?? helped.worst ?? first.worst
  return refuseUnsettled(net, worst)
}

function withConductances(net: Netlist, laws: Laws, question: Question, rest: Point): Attempt {
  let last: Attempt = { point: rest }
  for (const beside of HELPS) last = attempt(net, laws, question, last.point, { beside, raised: 1 })
  return last
}

function withRisingSources(net: Netlist, laws: Laws, question: Question, rest: Point): Attempt {
  let point = rest
  let reached = 0
  let rise = FIRST_RISE
  for (;;) {
    const raised = Math.min(1, reached + rise)
    const next = attempt(net, laws, question, point, { beside: 0, raised })
    if (next.linear !== undefined) {
      if (raised === 1) return next
      point = next.point
      reached = raised
      rise *= 2
      continue
    }
    rise /= 4
    if (rise < LEAST_RISE) return next
  }
}

/** Steps from point to point until all is at rest; `linear` is absent where it does not come to rest. */
function attempt(net: Netlist, laws: Laws, asked: Question, start: Point, help: Help): Attempt {
  const question = help.raised === 1 ? asked : withScaledProbes(asked, help.raised)
  const fill = (about: Point): void => {
    laws.fill(net, question, { direct: about })
    applyHelp(laws, help)
  }
  let point = start
  let before: Linear | undefined
  let worst: Off | undefined
  for (let step = 0; step < STEPS; step += 1) {
    fill(point)
    const linear = solveOrStop(net, laws, question)
    if (linear === undefined) break
    const carried = carriedBy(laws, linear, point)
    const next = settle(net, laws, carried, point)
    fill(carried)
    const off = furthestOff(laws, carried)
    if (off.tolerances <= 1 && atRestSince(before, linear) && same(laws, next, carried)) {
      fill(point) // the laws in which `linear` was solved
      return { linear, point: carried, worst: off }
    }
    const astray = step > PATIENCE && worst !== undefined && off.tolerances >= worst.tolerances
    point = astray ? halfway(point, next) : next
    worst = off
    before = linear
  }
  return worst === undefined ? { point } : { point, worst }
}

/** A solve on the way that may meet a network without a solution; the next kind of help may not. */
function solveOrStop(net: Netlist, laws: Laws, question: Question): Linear | undefined {
  try {
    return solveLinear(net, laws, question)
  } catch (error) {
    if (error instanceof ProblemError) return undefined
    throw error
  }
}

function withScaledProbes(question: Question, share: number): Question {
  const probes = (question.probes ?? []).map((one) => ({ ...one, re: one.re * share }))
  return { ...question, probes }
}

/** Puts conductances beside the bent parts and takes the sources down to their share. */
function applyHelp(laws: Laws, { beside, raised }: Help): void {
  if (beside === 0 && raised === 1) return
  const bent = new Set(laws.bent.direct)
  if (raised !== 1) {
    for (let k = 0; k < laws.count; k += 1) if (!bent.has(k)) laws.offset[2 * k]! *= raised
  }
  if (beside === 0) return
  for (const k of bent) if (laws.equations[k] === 0) laws.slope[2 * k]! += beside
}

/** What every branch carries; the voltage between two islands is not determined and stays what it was. */
function carriedBy(laws: Laws, linear: Linear, before: Point): Point {
  const { falls, currents } = branchesOf(laws, linear, false)
  const carried = atRest(laws.count)
  const { island } = linear.topology
  for (const k of laws.bent.direct) {
    const apart = island[laws.from[k]!] !== island[laws.to[k]!]
    carried.voltage[k] = apart ? before.voltage[k]! : falls[2 * k]!
    carried.current[k] = currents[2 * k]!
  }
  return carried
}

/** The next point: what is carried, held back by the parts whose law asks for it. */
function settle(net: Netlist, laws: Laws, carried: Point, before: Point): Point {
  const next = { voltage: carried.voltage.slice(), current: carried.current.slice() }
  for (const k of laws.bent.direct) {
    const { part, ordinal } = branchAt(net, k)
    const held = part.law.settle?.(part.spec, ordinal, workingAt(carried, k), workingAt(before, k))
    if (held === undefined) continue
    next.voltage[k] = held.voltage
    next.current[k] = held.current
  }
  return next
}

/** The bent branch furthest off its law, in shares of what its terms are; the laws stand about `carried`. */
function furthestOff(laws: Laws, { voltage, current }: Point): Off {
  let worst: Off = { branch: -1, tolerances: 0, share: 0 }
  for (const k of laws.bent.direct) {
    const terms =
      laws.equations[k] === 1
        ? [laws.a[k]! * voltage[k]!, -laws.slope[2 * k]! * current[k]!, -laws.offset[2 * k]!]
        : [current[k]!, -laws.slope[2 * k]! * voltage[k]!, -laws.offset[2 * k]!]
    const sum = Math.abs(terms.reduce((total, term) => total + term, 0))
    const size = terms.reduce((total, term) => total + Math.abs(term), 0)
    const tolerances = sum / (RELATIVE * size + ABSOLUTE * (laws.equations[k] === 1 ? 1 : LEAKING))
    if (tolerances > worst.tolerances || Number.isNaN(tolerances))
      worst = {
        branch: k,
        tolerances: Number.isNaN(tolerances) ? Number.POSITIVE_INFINITY : tolerances,
        share: size === 0 ? 0 : sum / size,
      }
  }
  return worst
}

/** Whether no unknown has changed since the step before. */
function atRestSince(before: Linear | undefined, linear: Linear): boolean {
  if (before === undefined || before.refined.value.length !== linear.refined.value.length) return false
  if (before.topology.gauges.join() !== linear.topology.gauges.join()) return false
  const old = before.refined.value
  return linear.refined.value.every((x, k) => Math.abs(x - old[k]!) <= RELATIVE * Math.abs(x) + ABSOLUTE)
}

function same(laws: Laws, p: Point, q: Point): boolean {
  return laws.bent.direct.every((k) => p.voltage[k] === q.voltage[k] && p.current[k] === q.current[k])
}

function halfway(p: Point, q: Point): Point {
  return {
    voltage: p.voltage.map((value, k) => (value + q.voltage[k]!) / 2),
    current: p.current.map((value, k) => (value + q.current[k]!) / 2),
  }
}

function refuseUnsettled(net: Netlist, worst: Off | undefined): never {
  const branch = worst === undefined || worst.branch < 0 ? undefined : branchAt(net, worst.branch)
  const off = worst === undefined ? '' : `, off its law by ${percent(worst.share)} of what it carries`
  refuse({
    code: 'no-convergence',
    found: branch === undefined ? 'no direct-current point' : `${branch.id}${off}`,
    expected: `a direct-current point in which every part agrees with its law, within ${STEPS} steps`,
    mend: 'look at the values of that part and of the sources that drive it',
    ...(branch?.part.origin === undefined ? {} : { place: branch.part.origin }),
  })
}

function percent(share: number): string {
  return share >= 0.01 ? `${Math.round(100 * share)} %` : 'less than 1 %'
}
