/** Currents as a picture draws them: by size, sense and weight. */
import type { Netlist, NetPart } from '../../netlist/netlist.ts'
import type { Thing } from '../thing.ts'
import type { Flow } from './circuit.ts'
import { thingOf } from './things.ts'

/** A branch's current, A, positive from its first end to its second; rms where it alternates. */
export type Currents = (branch: number) => { readonly re: number; readonly im: number }

/** Less than this is no current, A: it is what rounding and the solver's own book-keeping leave. */
const LEAST_FLOW = 1e-9

/**
 * Less than this is drawn as lightly as anything that flows, and without an arrow, A, however little flows beside it:
 * 50 V across 5 MΩ. That is leakage, which nothing in a set works by; common practice, no source.
 */
const LEAKAGE = 10e-6

/** Nor is what a thing carries beside one that carries a million times as much. */
const LEAST_SHARE = 1e-6

/** Shares of the greatest current from which a wire is drawn so heavily: half a decade, then a decade each. */
const STEPS: readonly (readonly [weight: 2 | 3 | 4, share: number])[] = [
  [4, 0.3],
  [3, 0.03],
  [2, 0.003],
]

/** A current as it is drawn beside the greatest of its picture. */
export function flowOf([re, im]: readonly [re: number, im: number], greatest: number): Flow {
  const size = Math.hypot(re, im)
  if (size < Math.max(LEAST_FLOW, greatest * LEAST_SHARE))
    return { size, sense: 0, weight: 0, current: [re, im] }
  if (size < LEAKAGE) return { size, sense: 0, weight: 1, current: [re, im] }
  const weight = STEPS.find(([, share]) => size >= share * greatest)?.[0] ?? 1
  // a quarter of a period apart from the source's crest it has no sense then; what comes next decides
  const leading = Math.abs(re) > 1e-9 * size ? re : im
  return { size, sense: leading > 0 ? 1 : -1, weight, current: [re, im] }
}

/** The greatest current among some branches, A. */
export function greatestOf(branches: Iterable<number>, currents: Currents): number {
  let most = 0
  for (const branch of branches) {
    const { re, im } = currents(branch)
    most = Math.max(most, Math.hypot(re, im))
  }
  return most
}

/**
 * What flows in each branch of a netlist, by index; the weights are by the greatest of the branches that are named.
 * @param among branches of one picture; all when absent
 */
export function flowsOf(
  net: Netlist,
  currents: Currents,
  among: Iterable<number> = net.branches.keys(),
): ReadonlyMap<number, Flow> {
  const branches = [...among]
  const greatest = greatestOf(branches, currents)
  return new Map(
    branches.map((branch) => {
      const { re, im } = currents(branch)
      return [branch, flowOf([re, im], greatest)]
    }),
  )
}

/** What leaks through an open contact has no way worth an arrow. */
export function leaking(flow: Flow): Flow {
  return { ...flow, sense: 0 }
}

/** What a branch of a part with several carries stands under the part and the branch: `part:coil.b`. */
export function branchKey(thing: Thing, branch: string): Thing {
  return `${thing}.${branch}`
}

/**
 * What flows in the things of a set: of a part with several branches the greatest, and each by itself under its own
 * key (`branchKey`). What carries nothing is left out.
 * @param isOpen whether a part is a contact that stands open
 */
export function carriedBy(
  net: Netlist,
  place: string,
  flows: ReadonlyMap<number, Flow>,
  isOpen: (part: NetPart) => boolean = () => false,
): Readonly<Record<Thing, Flow>> {
  const carried = new Map<Thing, Flow>()
  for (const { index, part, ordinal } of net.branches) {
    const found = flows.get(index)
    if (part.place !== place || found === undefined || found.weight === 0) continue
    const flow = isOpen(part) ? leaking(found) : found
    const thing = thingOf(part)
    const suffix = part.count > 1 ? part.law.branches(part.spec)[ordinal]?.suffix : undefined
    if (suffix !== undefined && suffix !== '') carried.set(branchKey(thing, suffix), flow)
    const before = carried.get(thing)
    if (before === undefined || before.size < flow.size) carried.set(thing, flow)
  }
  return Object.fromEntries(carried)
}
