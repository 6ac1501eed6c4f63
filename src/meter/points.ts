/** Where leads can be held on a set: ends of cores and terminals, those that are always joined being one point. */

import { conditionOf, ON_HOOK } from '../netlist/condition.ts'
import { conducting, linksOf } from '../netlist/conduct.ts'
import { type Netlist, type NetPlace, nodeName } from '../netlist/netlist.ts'
import { islandsOf } from '../netlist/paths.ts'

/** A point: the first of its names, and everything that straps and cores join to it whatever the set does. */
export interface Point {
  readonly node: number
  readonly name: string
  readonly ids: readonly string[]
  /** Whether a core's far end is among its names. */
  readonly core: boolean
}

/** Two points to be read. */
export type Pair = readonly [Point, Point]

/** The points of a set: those with cores in the order of its cords, then the other terminals in theirs. */
export function pointsOf(net: Netlist, place: NetPlace): readonly Point[] {
  const always = islandsOf(net, fixedLinks(net, place))
  const order = [...place.cores.map(({ far }) => far), ...place.terminals]
  const cores = new Set(place.cores.map(({ far }) => far))
  const points: Point[] = []
  const taken = new Set<number>()
  for (const node of order) {
    if (taken.has(node)) continue
    const island = new Set(always.find((one) => one.includes(node)) ?? [node])
    const members = order.filter((one) => island.has(one))
    for (const one of members) taken.add(one)
    const name = nodeName(net, node)
    points.push({ node, name, ids: members.map((one) => nodeName(net, one)), core: cores.has(node) })
  }
  return points
}

/** Straps and cores: links that answer to no hook, dial or key. */
function fixedLinks(net: Netlist, place: NetPlace): ReturnType<typeof linksOf> {
  const links = linksOf(conducting(net, conditionOf(place.place, { ...ON_HOOK, line: 'idle' }), 'direct'))
  return (branch) => branch.part.gate === undefined && branch.part.sort !== 'plug' && links(branch)
}

/** Every pair of points with cores, each once. */
export function corePairs(points: readonly Point[]): readonly Pair[] {
  const cores = points.filter(({ core }) => core)
  return cores.flatMap((one, k) => cores.slice(k + 1).map((other): Pair => [one, other]))
}

/** The ends of every part and contact that lies between two points; each pair once, those given before left out. */
export function partPairs(
  net: Netlist,
  place: NetPlace,
  points: readonly Point[],
  before: readonly Pair[],
): readonly Pair[] {
  const seen = new Set(before.map(keyOf))
  const at = new Map(points.flatMap((point) => point.ids.map((id) => [id, point] as const)))
  return net.branches.flatMap((branch): Pair[] => {
    const { part } = branch
    if (part.place !== place.place || (part.role === 'link' && part.gate === undefined)) return []
    const from = at.get(nodeName(net, branch.from))
    const to = at.get(nodeName(net, branch.to))
    if (from === undefined || to === undefined || from === to) return []
    const pair: Pair = points.indexOf(from) < points.indexOf(to) ? [from, to] : [to, from]
    if (seen.has(keyOf(pair))) return []
    seen.add(keyOf(pair))
    return [pair]
  })
}

function keyOf([one, other]: Pair): string {
  return `${one.node} ${other.node}`
}
