/**
 * A netlist in portions: the line with its sockets, and each set. Sets touch the rest by the contacts of their plugs only (and earth,
 * whose voltage is fixed): a set whose plug is lifted out neither feels the rest nor is felt there, so that it need not
 * be solved with it.
 */
import type { PartLaw } from '../parts/kind.ts'
import { type PortSpec, port } from '../parts/port.ts'
import { graphOf } from './builder.ts'
import type { Condition } from './condition.ts'
import { type Branch, branchAt, EARTH, type Netlist, type NetPart } from './netlist.ts'

/** The line and the sockets are group 0; the sets are 1 and on, in the order of their places. */
export type Group = number

/** Which group every node, branch and part belongs to; links of plugs to the group of their set. */
export interface Groups {
  readonly places: readonly string[]
  readonly ofNode: Int32Array
  readonly ofBranch: Int32Array
  readonly ofPart: Int32Array
  /** Links of the plug of each group. */
  readonly plugs: readonly (readonly number[])[]
}

/** A smaller netlist, and where its things are in the whole one. */
export interface Portion {
  readonly net: Netlist
  /** Indices in the whole netlist, and back; −1 for what is left out. */
  readonly nodes: readonly number[]
  readonly branches: readonly number[]
  readonly toNode: Int32Array
  readonly toBranch: Int32Array
  readonly toPart: Int32Array
  readonly kept: ReadonlySet<string>
  /** For each set that is there by its contacts only: the part that stands in for it. */
  readonly ports: ReadonlyMap<Group, number>
}

/** Groups of a netlist; undefined where there is but one. */
export function groupsOf(net: Netlist): Groups | undefined {
  if (net.places.length === 0) return undefined
  const places = net.places.map(({ place }) => place)
  const groupOf = new Map(places.map((place, k) => [place, k + 1]))
  const ofPart = Int32Array.from(net.parts, ({ place }) => groupOf.get(place) ?? 0)
  const ofBranch = new Int32Array(net.branches.length)
  const ofNode = new Int32Array(net.nodes.length)
  const plugs: number[][] = [[], ...places.map(() => [])]
  net.parts.forEach((part, index) => {
    for (let k = part.first; k < part.first + part.count; k += 1) ofBranch[k] = ofPart[index] ?? 0
  })
  for (const { index, from, to, part } of net.branches) {
    const group = ofBranch[index] ?? 0
    if (part.sort === 'plug') {
      plugs[group]?.push(index)
      continue
    }
    if (from !== 0) ofNode[from] = group
    if (to !== 0) ofNode[to] = group
  }
  // a contact of a plug whose cord is gone still belongs to its set
  for (const place of net.places) {
    const group = groupOf.get(place.place) ?? 0
    for (const node of Object.values(place.plug)) ofNode[node] = group
  }
  return { places, ofNode, ofBranch, ofPart, plugs }
}

/** The contacts of a set's plug that meet something, node indices. */
export function contactsOf(net: Netlist, groups: Groups, group: Group): readonly number[] {
  return [...new Set((groups.plugs[group] ?? []).map((k) => branchAt(net, k).to))]
}

/**
 * A netlist of some groups only; plugs go with their set, where the sockets are kept too.
 * @param seen sets that are there by their contacts only; a question says by `instead` what they are
 */
export function makePortion(
  net: Netlist,
  groups: Groups,
  kept: ReadonlySet<Group>,
  seen: readonly Group[] = [],
): Portion {
  const isKept = ({ index, part }: Branch): boolean => {
    const group = groups.ofBranch[index] ?? 0
    if (part.sort === 'plug') return kept.has(0) && (kept.has(group) || seen.includes(group))
    return kept.has(group)
  }
  const outside = new Set(seen.flatMap((group) => contactsOf(net, groups, group)))
  const toNode = new Int32Array(net.nodes.length).fill(-1)
  const toBranch = new Int32Array(net.branches.length).fill(-1)
  const toPart = new Int32Array(net.parts.length).fill(-1)
  const nodes: number[] = [0]
  toNode[0] = 0
  net.nodes.forEach((_, node) => {
    if (node === 0 || !(kept.has(groups.ofNode[node] ?? 0) || outside.has(node))) return
    toNode[node] = nodes.length
    nodes.push(node)
  })
  const branches: Branch[] = []
  const own: number[] = []
  const parts: NetPart[] = []
  net.parts.forEach((part, index) => {
    const first = net.branches[part.first]
    if (first === undefined || !isKept(first)) return
    const moved: NetPart = { ...part, first: branches.length }
    toPart[index] = parts.length
    parts.push(moved)
    for (let k = part.first; k < part.first + part.count; k += 1) {
      const branch = branchAt(net, k)
      toBranch[k] = branches.length
      own.push(k)
      branches.push({
        ...branch,
        index: branches.length,
        from: toNode[branch.from] ?? -1,
        to: toNode[branch.to] ?? -1,
        part: moved,
      })
    }
  })
  const ports = new Map(
    seen.map((group) => {
      const contacts = contactsOf(net, groups, group).map((node) => toNode[node] ?? -1)
      return [group, addPort(parts, branches, groups.places[group - 1] ?? '', contacts)]
    }),
  )
  const names = nodes.map((node) => net.nodes[node] ?? EARTH)
  let graph: Netlist['graph'] | undefined
  return {
    net: {
      ...net,
      // seldom asked for
      get graph() {
        graph ??= graphOf(names, branches)
        return graph
      },
      nodes: names,
      nodeIndex: new Map(names.map((name, k) => [name, k])),
      branches,
      branchIndex: new Map(branches.map(({ id, index }) => [id, index])),
      parts,
      places: [],
    },
    nodes,
    branches: own,
    toNode,
    toBranch,
    toPart,
    kept: new Set(groups.places.filter((_, k) => kept.has(k + 1) || seen.includes(k + 1))),
    ports,
  }
}

/** Pairs of contacts, in the order in which a port has its paths. */
export function pairsOf<T>(contacts: readonly T[]): readonly (readonly [T, T])[] {
  return contacts.flatMap((p, k) => contacts.slice(k + 1).map((q): readonly [T, T] => [p, q]))
}

/** Adds what stands in for a set; open until a question says what it is. Gives its index among the parts. */
function addPort(parts: NetPart[], branches: Branch[], place: string, contacts: readonly number[]): number {
  const pairs = pairsOf(contacts)
  const path = { from: '', to: '', direct: 0, alternating: [0, 0] as const }
  const part: NetPart = {
    id: `${place}/plug`,
    place,
    name: 'plug',
    sort: 'part',
    role: undefined,
    law: port as unknown as PartLaw,
    spec: { kind: port.kind, paths: pairs.map(() => path) } as PortSpec,
    first: branches.length,
    count: pairs.length,
    gate: undefined,
    during: undefined,
    origin: undefined,
  }
  pairs.forEach(([from, to], ordinal) => {
    const id = `${part.id}.${ordinal}`
    branches.push({ id, index: branches.length, from, to, form: 'admittance', part, ordinal })
  })
  parts.push(part)
  return parts.length - 1
}

/** A condition without the sets that do not matter. */
export function conditionWithin(condition: Condition, kept: ReadonlySet<string>): Condition {
  const sets = Object.entries(condition.sets).filter(([place]) => kept.has(place))
  return { line: condition.line, sets: Object.fromEntries(sets) }
}
