/** Between which points of a set it is read. */
import { corePairs, partPairs, pointsOf } from '../../../meter/points.ts'
import { quantitiesIn } from '../../../meter/vary.ts'
import type { Branch, Netlist, NetPlace } from '../../../netlist/netlist.ts'
import { islandsOf } from '../../../netlist/paths.ts'
import type { BenchSet } from '../bench-set.ts'
import { coreAt } from './held.ts'

/** Two nodes by index. */
export type NodePair = readonly [red: number, black: number]

/** Pairs of points of a set, by where hands have to be for them. */
export interface Pairs {
  /** Contacts of the plug. */
  readonly plug: readonly NodePair[]
  /**
   * Everything else that the meter's table reads: cores of the handset, parts, contacts. Then the parts and contacts
   * that end where no screw is, at their own leads.
   */
  readonly within: readonly NodePair[]
  /** Cores of the handset cord, to be read off their terminals. */
  readonly handset: readonly NodePair[]
}

/** The pairs of the meter's table, those that it leaves out, and the cores of the handset cord among themselves. */
export function pairsOf(bench: BenchSet): Pairs {
  const { net, place } = bench
  const points = pointsOf(net, place)
  const cores = corePairs(points)
  const all = [...cores, ...partPairs(net, place, points, cores)].map(
    ([one, other]): NodePair => [one.node, other.node],
  )
  const atPlug = (pair: NodePair): boolean => pair.every((node) => coreAt(place, node)?.endsIn === 'plug')
  const loose = place.cores.filter(({ endsIn }) => endsIn === 'handset').map(({ far }) => far)
  return {
    plug: all.filter(atPlug),
    within: [...all.filter((pair) => !atPlug(pair)), ...atLeads(bench, all)],
    handset: loose.flatMap((one, k) => loose.slice(k + 1).map((other): NodePair => [one, other])),
  }
}

/**
 * The own ends of every part and contact that lies between points which no pair reads yet; what straps and cores always
 * join is one point. A unit is read at the sockets of its slot only.
 */
function atLeads({ net, place }: BenchSet, before: readonly NodePair[]): readonly NodePair[] {
  const point = pointIn({ net, place })
  const keyOf = (pair: NodePair): string =>
    pair
      .map(point)
      .sort((p, q) => p - q)
      .join()
  const seen = new Set(before.map(keyOf))
  return net.branches.flatMap(({ part, from, to }): NodePair[] => {
    const link = part.role === 'link' && part.gate === undefined
    if (part.place !== place.place || part.sort === 'unit' || link || point(from) === point(to)) return []
    const key = keyOf([from, to])
    if (seen.has(key)) return []
    seen.add(key)
    return [[from, to]]
  })
}

/** Whether one of the set's capacitors lies across two points. */
export function isAtCapacitor(bench: BenchSet, pair: NodePair): boolean {
  return bench.net.branches.some(
    (branch) => branch.part.place === bench.place.place && isCapacitor(branch) && isAt(bench, branch, pair),
  )
}

/** Whether a branch has its two ends at two points. */
export function isAt(bench: BenchSet, { from, to }: Pick<Branch, 'from' | 'to'>, pair: NodePair): boolean {
  const point = pointIn(bench)
  const [[one, other], [red, black]] = [[from, to].map(point), pair.map(point)]
  return (one === red && other === black) || (one === black && other === red)
}

/** Whether a part states a capacitance. */
export function isCapacitor({ part }: Branch): boolean {
  return quantitiesIn(part.spec, []).some(({ quantity }) => quantity.unit === 'F')
}

/** Of each node the first that straps and cores always join to it; found once for a set. */
function pointIn({ net, place }: Pick<BenchSet, 'net' | 'place'>): (node: number) => number {
  const first = known.get(place) ?? firstNodes(net, place)
  known.set(place, first)
  return (node) => first.get(node) ?? node
}

const known = new WeakMap<NetPlace, ReadonlyMap<number, number>>()

function firstNodes(net: Netlist, { place }: NetPlace): ReadonlyMap<number, number> {
  const always = islandsOf(
    net,
    ({ part }) =>
      part.place === place && part.role === 'link' && part.gate === undefined && part.sort !== 'plug',
  )
  return new Map(always.flatMap((island) => island.map((node) => [node, island[0] ?? node] as const)))
}
