/** By what a reading comes about: the way of the current through the parts, and what hangs on that way. */
import { capacitive, conducting, linksOf, stateOf } from '../netlist/conduct.ts'
import { type Branch, branchAt, type Netlist } from '../netlist/netlist.ts'
import { joinedTo, type Path, pathBetween } from '../netlist/paths.ts'
import { currentIn, type Solution, sizeOf } from '../solver/solution.ts'
import type { Leads } from './leads.ts'

/** The way between two leads. Branches by index. */
export interface Meaning {
  /** Nodes and branches of the widest way; undefined where nothing conducts. */
  readonly path: Path | undefined
  /** What is no link on that way, in its order. */
  readonly parts: readonly Branch[]
  /** Contacts on that way. */
  readonly contacts: readonly Branch[]
  /** Parts beside that way that carry at least a tenth of the current. */
  readonly beside: readonly Branch[]
}

/** Share of the current from which a part beside the widest way is worth a word. */
const WORTH = 0.1

/**
 * The way that carries a reading's current, from red to black.
 *
 * @param solution of the reading; absent where nothing flows
 * @param charging whether a charge flows for a moment: the way of alternating current then, where nothing flows for long
 */
export function meaningOf(
  net: Netlist,
  leads: Leads,
  solution: Solution | undefined,
  charging: boolean = false,
): Meaning {
  const carried = (branch: Branch): number =>
    solution === undefined ? 0 : sizeOf(currentIn(solution, branch.index))
  if (solution === undefined && !charging) return { path: undefined, parts: [], contacts: [], beside: [] }
  const path = widest(net, leads, carried, solution?.question.analysis ?? 'alternating')
  const way = (path?.branches ?? []).map((k) => branchAt(net, k))
  const most = Math.max(0, ...way.map(carried))
  const on = new Set(way)
  return {
    path,
    parts: way.filter(({ part }) => part.role !== 'link'),
    contacts: way.filter(({ part }) => part.gate !== undefined),
    beside: net.branches.filter(
      (branch) =>
        !on.has(branch) && branch.part.role !== 'link' && most > 0 && carried(branch) > WORTH * most,
    ),
  }
}

/** The way whose smallest current is largest, over what conducts. */
function widest(
  net: Netlist,
  { red, black, condition, lifted = [] }: Leads,
  carried: (branch: Branch) => number,
  analysis: 'direct' | 'alternating',
): Path | undefined {
  const off = new Set(lifted)
  const conducts = conducting(net, condition, analysis)
  const order = net.branches
    .filter((branch) => conducts(branch) && !off.has(branch.index))
    .sort((p, q) => carried(q) - carried(p) || p.index - q.index)
  const whole = pathBetween(net, (branch) => conducts(branch) && !off.has(branch.index), red, black)
  if (whole === undefined) return undefined
  const chosen = new Set<number>()
  for (let k = 0; k < order.length; k += 1) {
    const branch = order[k]
    const next = order[k + 1]
    if (branch === undefined) break
    chosen.add(branch.index)
    // branches of nearly the same current belong together
    if (next !== undefined && carried(next) > carried(branch) * (1 - 1e-6)) continue
    const path = pathBetween(net, (one) => chosen.has(one.index), red, black)
    if (path !== undefined) return path
  }
  return whole
}

/** Branches that lie across the leads themselves, whatever they conduct: links lead from each of their ends to a lead. */
export function across(net: Netlist, { red, black, condition, lifted = [] }: Leads): readonly Branch[] {
  const off = new Set(lifted)
  const conducts = conducting(net, condition, 'direct')
  const links = linksOf((branch) => conducts(branch) && !off.has(branch.index))
  const here = joinedTo(net, links, red)
  const there = joinedTo(net, links, black)
  if (here.has(black)) return []
  return net.branches.filter(
    (branch) =>
      branch.part.role !== 'link' &&
      stateOf(branch.part, condition) === 'closed' &&
      ((here.has(branch.from) && there.has(branch.to)) || (here.has(branch.to) && there.has(branch.from))),
  )
}

/** The shortest way that alternating current can take between the leads, for what blocks direct current. */
export function alternatingWay(
  net: Netlist,
  { red, black, condition, lifted = [] }: Leads,
): readonly Branch[] {
  const off = new Set(lifted)
  const conducts = conducting(net, condition, 'alternating')
  const path = pathBetween(net, (branch) => conducts(branch) && !off.has(branch.index), red, black)
  return (path?.branches ?? []).map((k) => branchAt(net, k))
}

/** Branches that store charge in a condition. */
export function stores(net: Netlist, leads: Leads): (branch: Branch) => boolean {
  return capacitive(net, leads.condition)
}
