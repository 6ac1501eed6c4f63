/** Cores, terminals and straps of the examined set, as faults and their mends speak of them. */
import { type CheckContext, nodeShort, when, wireAt } from '../checks/context.ts'
import { conducting, linksOf } from '../netlist/conduct.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { islandsOf } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'

/** Branches of the examined set. */
export function ownBranches({ net, place }: CheckContext): readonly Branch[] {
  return net.branches.filter(({ part }) => part.place === place.place)
}

/** The core of a cord that ends in this plug contact or handset screw. */
export function coreAt({ place }: CheckContext, far: number | undefined): NetCore | undefined {
  return far === undefined ? undefined : place.cores.find((core) => core.far === far)
}

/** Whether something other than a core lies on a terminal. */
export function isWired(context: CheckContext, terminal: number): boolean {
  return ownBranches(context).some(
    ({ part, from, to }) => part.sort !== 'core' && (from === terminal || to === terminal),
  )
}

/**
 * Terminals on which something lies, in groups that links join in a condition.
 * @param cores whether a core alone counts as something: it does for straps, it does not where a core is to land
 */
export function terminalGroups(
  context: CheckContext,
  written = 'off-hook',
  cores = false,
): readonly (readonly number[])[] {
  const { net, place } = context
  const landed = new Set(cores ? place.cores.map(({ lands }) => lands) : [])
  const terminals = new Set(
    place.terminals.filter((terminal) => landed.has(terminal) || isWired(context, terminal)),
  )
  return islandsOf(net, linksOf(conducting(net, when(context, written), 'direct')))
    .map((island) => island.filter((node) => terminals.has(node)))
    .filter((group) => group.length > 0)
}

/** How far two terminals are apart on their strip; on different strips further than any strip is long. */
function apart(p: string, q: string): number {
  const [, strip = '', number = ''] = /^([A-Z]+)([0-9]+)$/.exec(p) ?? []
  const [, other = '', second = ''] = /^([A-Z]+)([0-9]+)$/.exec(q) ?? []
  return strip === other ? Math.abs(Number(number) - Number(second)) : 1000
}

/** A strap that could be fitted between two terminals. */
export interface StrapBetween {
  readonly from: number
  readonly to: number
  readonly distance: number
}

/** The nearest two terminals of two groups. */
export function nearestStrap(
  context: CheckContext,
  group: readonly number[],
  other: readonly number[],
): StrapBetween | undefined {
  const name = (node: number): string => nodeShort(context, node)
  return group
    .flatMap((one) => other.map((two) => [one, two].sort((p, q) => (name(p) < name(q) ? -1 : 1))))
    .map(([from = 0, to = 0]) => ({ from, to, distance: apart(name(from), name(to)) }))
    .sort((p, q) => p.distance - q.distance)[0]
}

/** The move that fits a strap. */
export function fitStrap(context: CheckContext, { from, to }: { from: number; to: number }): Move {
  return { do: 'fit strap', what: `${nodeShort(context, from)}-${nodeShort(context, to)}` }
}

/** The move that takes a strap off, or cuts it where it is held by solder or by the board. */
export function takeStrapOff(context: CheckContext, branch: Branch): Move {
  const hold = context.installation.sets[context.place.place]?.set.straps[branch.part.name]?.hold
  return { do: hold === 'screw' ? 'lift strap' : 'cut', what: branch.part.name }
}

/** Cores that lie on a live terminal on which none of the set's sheets lands them. */
export function astrayCores(context: CheckContext): readonly NetCore[] {
  return context.place.cores.filter(
    ({ lands, meant }) =>
      lands !== undefined && meant.length > 0 && !meant.includes(lands) && isWired(context, lands),
  )
}

/** The moves that bring each core that is not where a sheet of the set has it back there, one list for each. */
export function homeMoves(context: CheckContext): readonly (readonly Move[])[] {
  const pair = [wireAt(context, 'a'), wireAt(context, 'b')]
  return context.place.cores.flatMap((core): readonly (readonly Move[])[] => {
    const { far, lands, meant, name } = core
    if (lands === undefined && !pair.includes(far)) return []
    if (lands !== undefined && meant.includes(lands)) return []
    // a core that no sheet lands anywhere is meant to be parked
    if (meant.length === 0) return lands === undefined ? [] : [[{ do: 'park core', what: name }]]
    return meant.map((terminal) => [landCore(context, core, terminal)])
  })
}

/** The move that lands a core. */
export function landCore(context: CheckContext, core: NetCore, terminal: number): Move {
  return { do: 'land core', what: core.name, onto: nodeShort(context, terminal) }
}

/** Where a core lies, in words. */
export function whereLies(context: CheckContext, { name, lands }: NetCore): string {
  return lands === undefined ? `${name} is parked` : `${name} lies on ${nodeShort(context, lands)}`
}

/** Ids of nodes, each once. */
export function ids({ net }: CheckContext, nodes: Iterable<number | undefined>): readonly string[] {
  return [...new Set(nodes)].flatMap((node) => (node === undefined ? [] : [net.nodes[node] ?? '']))
}
