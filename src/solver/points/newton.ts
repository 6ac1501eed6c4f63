/**
 * Direct current through laws that bend: Newton's method. Each step states every law as its tangent about the last
 * point and solves the linear network that results; parts hold back steps that their law makes incredible.
 * Where that does not come to rest, help is given on the way and taken away again: first conductances beside the
 * bent parts, then sources raised gradually. Neither is in any answer.
 */
import { branchAt, type Netlist } from '../../netlist/netlist.ts'
import type { PartSpec } from '../../parts/kind.ts'
import { ProblemError, refuse } from '../../problem.ts'
import { type Laws, type Point, workingAt } from '../laws.ts'
import { branchesOf, type Linear } from '../linear.ts'
import type { Question } from '../question.ts'
import { type Help, Way } from './way.ts'

/** Steps of one attempt (design 5). */
const STEPS = 60
/** Every unknown at rest: change below this share of itself, and below this much, V or A. */
const RELATIVE = 1e-9
const ABSOLUTE = 1e-12
/** A current this share of the absolute tolerance, in amperes, is one of leakage. */
const LEAKING = 1e-3
/** Steps after which a step that leads astray is taken by half. */
const PATIENCE = 8
/** Conductances beside bent parts on the way, siemens, and as many ohms within them; then none. */
const HELPS: readonly number[] = [1e-2, 1e-4, 1e-6, 1e-8, 1e-10, 1e-12, 0]
/** Fewer of them do where only the voltage between level parts is to be shared out. */
const SHARING: readonly number[] = [1e-6, 1e-9, 1e-12, 0]
/** Shares to which the sources are raised, and the smallest step by which they are. */
const FIRST_RISE = 1 / 16
const LEAST_RISE = 1 / 65536

/** Where an attempt came to: the linear network in which all laws agree, or none. */
interface Attempt {
  readonly linear?: Linear
  /** What every branch carried last. */
  readonly point: Point
  /** The point about which the laws of `linear` are stated. */
  readonly about?: Point
  readonly worst?: Off
  /** Some bent part parts two islands only because its tangent is level there: true, or merely stuck. */
  readonly parted?: boolean
  /** Why the linear network of the last step had no solution. */
  readonly error?: ProblemError
}

/** The branch furthest off its law, in tolerances, and by which share. */
interface Off {
  readonly branch: number
  readonly tolerances: number
  readonly share: number
}

const NO_HELP: Help = { beside: 0, raised: 1 }

/** The solved network and the point about which its laws are stated. */
export interface Working {
  readonly linear: Linear
  readonly point: Point
  /** The point of the step before, about which the laws of `linear` are stated. */
  readonly about: Point
}

/** A point at which nothing flows. */
export function atRest(count: number): Point {
  return { voltage: new Float64Array(count), current: new Float64Array(count) }
}

/**
 * Finds where all laws agree, from rest. Laws are left filled about the point found.
 * @throws ProblemError `no-convergence` naming the part furthest off its law; what the linear network is refused for,
 * where every attempt ends on that
 */
export function newton(net: Netlist, laws: Laws, question: Question): Working {
  const rest = atRest(laws.count)
  const first = attempt(net, laws, question, rest, NO_HELP)
  if (first.linear !== undefined && first.parted !== true) return found(first, first.linear)
  const attempts = [first]
  // a part whose tangent is level may be stuck where it started: only help shows whether it is open
  const ways = first.linear === undefined ? [withConductances, withRisingSources] : [sharedOut]
  for (const way of ways) {
    const made = way(net, laws, question, first.linear === undefined ? rest : first.point)
    if (made.linear !== undefined) return found(made, made.linear)
    attempts.push(made)
  }
  if (first.linear !== undefined) return again(net, laws, question, first.point, first.linear)
  const unsettled = attempts.findLast(({ worst, error }) => worst !== undefined && error === undefined)
  const refused = attempts.find(({ error }) => error !== undefined)?.error
  if (unsettled === undefined && refused !== undefined) throw refused
  return refuseUnsettled(net, unsettled?.worst)
}

function found({ point, about = point }: Attempt, linear: Linear): Working {
  return { linear, point, about }
}

/** What the first attempt found, its laws filled once more. */
function again(net: Netlist, laws: Laws, question: Question, point: Point, linear: Linear): Working {
  laws.fill(net, question, { direct: point })
  return { linear, point, about: point }
}

/** Lets a little flow beside level parts, so that they share the voltage, and takes it away again. */
function sharedOut(net: Netlist, laws: Laws, question: Question, start: Point): Attempt {
  return helped(net, laws, question, start, SHARING)
}

function withConductances(net: Netlist, laws: Laws, question: Question, rest: Point): Attempt {
  return helped(net, laws, question, rest, HELPS)
}

function helped(
  net: Netlist,
  laws: Laws,
  question: Question,
  start: Point,
  helps: readonly number[],
): Attempt {
  let last: Attempt = { point: start }
  for (const beside of helps) last = attempt(net, laws, question, last.point, { beside, raised: 1 })
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
  const within = withinOf(question)
  const specs = specsOf(net, question)
  const way = new Way(net, laws, question, help)
  let point = start
  let before: Linear | undefined
  let worst: Off | undefined
  let isFilled = false
  for (let step = 0; step < STEPS; step += 1) {
    if (!isFilled) way.fill(point)
    const solved = solveOrStop(way, point)
    if ('error' in solved) return { point, error: solved.error, ...(worst === undefined ? {} : { worst }) }
    const { linear } = solved
    const { carried } = carriedBy(laws, linear, point, within, help)
    const next = settle(net, laws, specs, carried, point)
    way.fill(carried)
    const off = furthestOff(laws, carried, within, help)
    if (off.tolerances <= 1 && atRestSince(before, linear) && same(laws, next, carried)) {
      const last = way.last(point)
      const { carried: there, parted } = carriedBy(laws, last, point, within, help)
      return { linear: last, point: there, about: point, worst: off, parted }
    }
    const astray = step > PATIENCE && worst !== undefined && off.tolerances >= worst.tolerances
    point = astray ? halfway(point, next) : next
    // mostly nothing is held back, and the laws stand about the next point already
    isFilled = !astray && same(laws, next, carried)
    worst = off
    before = linear
  }
  return worst === undefined ? { point } : { point, worst }
}

/** Ohms that a question puts in series with branches. */
function withinOf({ within = [] }: Question): ReadonlyMap<number, number> {
  const sums = new Map<number, number>()
  for (const { branch, ohms } of within) sums.set(branch, (sums.get(branch) ?? 0) + ohms)
  return sums
}

/** Values that a question gives to parts in place of their own, by the part's first branch. */
function specsOf(net: Netlist, { instead = [] }: Question): ReadonlyMap<number, PartSpec> {
  return new Map(instead.map(({ part, spec }) => [net.parts[part]?.first ?? -1, spec]))
}

/** A solve on the way that may meet a network without a solution; the next kind of help may not. */
function solveOrStop(way: Way, about: Point): { readonly linear: Linear } | { readonly error: ProblemError } {
  try {
    return { linear: way.solve(about) }
  } catch (error) {
    if (error instanceof ProblemError) return { error }
    if (error instanceof RangeError) return { error: outOfRange() }
    throw error
  }
}

/** A law asked so far outside its range that a number was lost. */
function outOfRange(): ProblemError {
  const expected = 'a direct-current point in which every part agrees with its law'
  return new ProblemError([
    { code: 'no-convergence', severity: 'error', found: 'values beyond what a number holds', expected },
  ])
}

function withScaledProbes(question: Question, share: number): Question {
  const probes = (question.probes ?? []).map((one) => ({ ...one, re: one.re * share }))
  return { ...question, probes }
}

/** What every branch carries; the voltage between two islands is not determined and stays what it was. */
function carriedBy(
  laws: Laws,
  linear: Linear,
  before: Point,
  within: ReadonlyMap<number, number>,
  { beside }: Help,
): { readonly carried: Point; readonly parted: boolean } {
  const { falls, currents } = branchesOf(laws, linear, false)
  const carried = atRest(laws.count)
  const { island } = linear.topology
  let parted = false
  for (const k of laws.bent.direct) {
    const apart = island[laws.from[k]!] !== island[laws.to[k]!]
    if (apart) parted = true
    // what the help beside it carries is none of the part's own
    const current = currents[2 * k]! - beside * falls[2 * k]!
    carried.voltage[k] = apart ? before.voltage[k]! : falls[2 * k]! - (within.get(k) ?? 0) * current
    carried.current[k] = current
  }
  return { carried, parted }
}

/** The next point: what is carried, held back by the parts whose law asks for it. */
function settle(
  net: Netlist,
  laws: Laws,
  specs: ReadonlyMap<number, PartSpec>,
  carried: Point,
  before: Point,
): Point {
  const next = { voltage: carried.voltage.slice(), current: carried.current.slice() }
  for (const k of laws.bent.direct) {
    const { part, ordinal } = branchAt(net, k)
    const spec = specs.get(part.first) ?? part.spec
    const held = part.law.settle?.(spec, ordinal, workingAt(carried, k), workingAt(before, k))
    if (held === undefined) continue
    next.voltage[k] = held.voltage
    next.current[k] = held.current
  }
  return next
}

/** The bent branch furthest off its law, in shares of what its terms are; the laws stand about `carried`. */
function furthestOff(
  laws: Laws,
  { voltage, current }: Point,
  within: ReadonlyMap<number, number>,
  { beside }: Help,
): Off {
  let worst: Off = { branch: -1, tolerances: 0, share: 0 }
  for (const k of laws.bent.direct) {
    const across = voltage[k]! + (within.get(k) ?? 0) * current[k]!
    const whole = current[k]! + beside * across
    const terms = [laws.a[k]! * across, -laws.slope[2 * k]! * whole, -laws.offset[2 * k]!]
    const sum = Math.abs(terms.reduce((total, term) => total + term, 0))
    const size = terms.reduce((total, term) => total + Math.abs(term), 0)
    // where nothing depends on the voltage, the terms are currents
    const tolerances = sum / (RELATIVE * size + ABSOLUTE * (laws.a[k] === 0 ? LEAKING : 1))
    if (tolerances > worst.tolerances || Number.isNaN(tolerances)) {
      const far = Number.isNaN(tolerances) ? Number.POSITIVE_INFINITY : tolerances
      worst = { branch: k, tolerances: far, share: size === 0 ? 0 : sum / size }
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
