/** Two solutions of one question side by side. */
import type { Difference } from '../answer/second-opinion.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { Solution } from '../solver/solution.ts'
import type { Opinion } from './opinion.ts'

/** Share of the largest of their island by which the two may differ. */
export const AGREED = 1e-9

/** An island whose largest is not this many times what rounding alone could make of it carries nothing but rounding. */
const ROUNDING = 1e3
/** V or A; 1e-24 A is one electron in two days. */
const NOTHING = 1e-24

/** What a comparison came to. */
export interface Compared {
  readonly count: number
  readonly largest: Difference | undefined
}

/** One voltage or current of both. */
interface Both {
  readonly at: string
  readonly unit: 'V' | 'A'
  readonly island: number
  readonly ours: readonly [number, number]
  readonly second: readonly [number, number]
  /** What rounding alone could make of it. */
  readonly noise: number
}

/**
 * Compares every node voltage and branch current.
 * @throws ProblemError `ours` where they differ by more than is agreed, or where the islands are others.
 */
export function compare(net: Netlist, ours: Solution, opinion: Opinion): Compared {
  const { solution } = opinion
  sameIslands(net, ours, solution)
  const volts = voltagesOf(net, ours, opinion)
  const amps = currentsOf(net, ours, opinion)
  const worst = [largestOf(volts, ours), largestOf(amps, ours)].filter((one) => one !== undefined)
  const largest = worst.reduce<Difference | undefined>(
    (most, one) => (most === undefined || one.relative > most.relative ? one : most),
    undefined,
  )
  return { count: volts.length + amps.length, largest }
}

/** Throws a difference that is more than rounding. */
export function refuseDifference({ at, unit, absolute, relative }: Difference): never {
  const what = unit === 'V' ? 'voltage' : 'current'
  refuse({
    code: 'ours',
    found: `the ${what} of ${at} ${absolute.toPrecision(3)} ${unit} apart between the solver and the second opinion, ${relative.toExponential(1)} of the largest ${what} of its island`,
    expected: `the same from both, to ${AGREED.toExponential(0)}`,
    mend: 'this is a mistake of the program: please report it with the command and its sheets',
  })
}

function sameIslands(net: Netlist, ours: Solution, second: Solution): void {
  // both name an island by one of its nodes: the first node that the solver joins otherwise tells them apart
  const seen = new Map<number, number>()
  const taken = new Set<number>()
  net.nodes.forEach((id, node) => {
    const [mine = -1, other = -1] = [ours.island[node], second.island[node]]
    const known = seen.get(mine)
    const fresh = known === undefined && !taken.has(other)
    if (fresh) {
      seen.set(mine, other)
      taken.add(other)
    } else if (known !== other) {
      refuse({
        code: 'ours',
        found: `${id} joined otherwise by the solver than by the second opinion`,
        expected: 'the same islands from both',
        mend: 'this is a mistake of the program: please report it with the command and its sheets',
      })
    }
  })
}

function voltagesOf(net: Netlist, ours: Solution, { solution, noise }: Opinion): Both[] {
  const at = (values: Float64Array, k: number): readonly [number, number] => [
    values[2 * k] ?? 0,
    values[2 * k + 1] ?? 0,
  ]
  return net.nodes.map((id, node) => ({
    at: id,
    unit: 'V',
    island: ours.island[node] ?? -1,
    ours: at(ours.voltages, node),
    second: at(solution.voltages, node),
    noise: noise.voltages.get(id) ?? 0,
  }))
}

function currentsOf(net: Netlist, ours: Solution, { solution, wires, noise }: Opinion): Both[] {
  return wires.map(({ id, from }, k) => ({
    at: id,
    unit: 'A',
    island: ours.island[net.nodeIndex.get(from) ?? -1] ?? -1,
    ours: [ours.currents[2 * k] ?? 0, ours.currents[2 * k + 1] ?? 0],
    second: [solution.currents[2 * k] ?? 0, solution.currents[2 * k + 1] ?? 0],
    noise: noise.currents[k] ?? 0,
  }))
}

const size = ([re, im]: readonly [number, number]): number => Math.hypot(re, im)

/** The largest difference beside the largest of its island. A number that is none differs by everything. */
function largestOf(all: readonly Both[], { question }: Solution): Difference | undefined {
  const scales = scalesOf(all)
  let largest: Difference | undefined
  for (const { at, unit, island, ours, second } of all) {
    const scale = scales.get(island) ?? 0
    if (scale === 0) continue
    const absolute = size([ours[0] - second[0], ours[1] - second[1]])
    const relative = absolute / scale
    if (relative <= (largest?.relative ?? -1)) continue
    const { analysis, frequency = null, condition } = question
    const known = Number.isFinite(relative)
    largest = {
      at,
      unit,
      absolute: known ? absolute : Number.MAX_VALUE,
      relative: known ? relative : Number.MAX_VALUE,
      analysis,
      frequency,
      condition,
    }
  }
  return largest
}

/** The largest of each island; 0 where it is no more than what rounding alone could make. */
function scalesOf(all: readonly Both[]): ReadonlyMap<number, number> {
  const most = new Map<number, number>()
  const noises = new Map<number, number>()
  for (const { island, ours, second, noise } of all) {
    most.set(island, Math.max(most.get(island) ?? 0, size(ours), size(second)))
    noises.set(island, Math.max(noises.get(island) ?? 0, noise))
  }
  for (const [island, scale] of most)
    if (scale <= Math.max(NOTHING, ROUNDING * (noises.get(island) ?? 0))) most.set(island, 0)
  return most
}
