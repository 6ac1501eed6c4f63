/** Reads figures off solutions: each question is solved once, whoever asks. */
import type { Netlist } from '../netlist/netlist.ts'
import { ProblemError } from '../problem.ts'
import { type Answerer, answererOf } from '../solver/answerer.ts'
import { currentIn, islandAt, type Solution, voltageBetween } from '../solver/solution.ts'
import type { Figure, FigurePlan, State, Tap } from './figure.ts'

/** Answers questions about one netlist; a table of updates or another engine can stand in for it. */
export type Supplier = Answerer

/** A supplier that solves nothing twice and remembers the answers. */
export function freshSupplier(net: Netlist): Supplier {
  return answererOf(net)
}

/** Reads a plan's taps and draws the figure from them. */
export function readFigure(net: Netlist, plan: FigurePlan, supplier: Supplier): Figure {
  const readings = new Float64Array(2 * plan.taps.length)
  const reasons = new Set<string>()
  let residual = 0
  let state: State | undefined
  plan.taps.forEach((tap, k) => {
    const solution = settledBy(supplier, tap)
    if (solution === undefined) {
      state = 'no-convergence'
      return
    }
    residual = Math.max(residual, solution.residual)
    for (const reason of restsOn(net, solution, tap)) reasons.add(reason)
    if (solution.probeOpen) {
      state ??= 'open'
      return
    }
    const read =
      'current' in tap ? currentIn(solution, tap.current) : voltageBetween(solution, ...tap.voltage)
    if (read === undefined) state ??= 'undetermined'
    else readings.set([read.re, read.im], 2 * k)
  })
  const result = state ?? plan.value(readings)
  const frequency = plan.mixed === true ? undefined : plan.taps[0]?.question.frequency
  const numeric = typeof result === 'number' && Number.isFinite(result)
  const why = numeric ? undefined : typeof result === 'number' ? 'beyond-range' : result
  return {
    id: plan.id,
    subject: plan.subject,
    condition: plan.condition,
    ...(frequency === undefined ? {} : { frequency }),
    value: numeric ? result : null,
    ...(numeric && plan.phasor !== undefined ? { phasor: plan.phasor(readings) } : {}),
    unit: plan.unit,
    ...(why === undefined ? {} : { state: why }),
    ...(reasons.size === 0 ? {} : { approximate: [...reasons].join('; ') }),
    residual,
  }
}

/** The answer to a question; none where the parts' laws found no common point, which one figure may suffer alone. */
function settledBy(supplier: Supplier, tap: Tap): Solution | undefined {
  try {
    const reads =
      'current' in tap ? { nodes: [], branches: [tap.current] } : { nodes: tap.voltage, branches: [] }
    return supplier(tap.question, reads)
  } catch (error) {
    if (error instanceof ProblemError && error.problems.every(({ code }) => code === 'no-convergence'))
      return undefined
    throw error
  }
}

/** The stand-ins in the islands that a tap reads from or is coupled to; elsewhere they cannot matter. */
function restsOn(net: Netlist, solution: Solution, tap: Tap): readonly string[] {
  if (solution.standIns.size === 0) return []
  const node = 'current' in tap ? net.branches[tap.current]?.from : tap.voltage[0]
  const reach = coupledTo(net, solution, node === undefined ? undefined : islandAt(solution, node))
  return [...solution.standIns]
    .filter(([, branches]) => branches.some((k) => reach.has(islandOf(net, solution, k))))
    .map(([reason]) => reason)
}

/** Parts whose branches are windings on one core. */
const COUPLED: ReadonlySet<string | undefined> = new Set(['winding', 'sounder'])

const known = new WeakMap<Netlist, readonly (readonly number[])[]>()

/** The branches of each coil of several windings. */
function coilsOf(net: Netlist): readonly (readonly number[])[] {
  const before = known.get(net)
  if (before !== undefined) return before
  const coils = net.parts
    .filter(({ count, role }) => count > 1 && COUPLED.has(role))
    .map(({ first, count }) => Array.from({ length: count }, (_, k) => first + k))
  known.set(net, coils)
  return coils
}

/** An island and all that windings of one coil couple to it, step by step. */
function coupledTo(
  net: Netlist,
  solution: Solution,
  island: number | undefined,
): ReadonlySet<number | undefined> {
  const reach = new Set([island])
  const coils = coilsOf(net).map((branches) => branches.map((k) => islandOf(net, solution, k)))
  for (let before = 0; before < reach.size; ) {
    before = reach.size
    for (const islands of coils) {
      if (islands.some((one) => reach.has(one))) for (const one of islands) reach.add(one)
    }
  }
  return reach
}

function islandOf(net: Netlist, solution: Solution, branch: number): number | undefined {
  return islandAt(solution, net.branches[branch]?.from ?? -1)
}
