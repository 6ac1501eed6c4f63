/** Questions about a portion of a netlist. */
import { conditionWithin, type Group, type Groups, type Portion } from '../netlist/portion.ts'
import type { Point } from './laws.ts'
import type { Question } from './question.ts'

/** Groups that matter to a question. */
export interface Asked {
  /** Those that are not cut off where one of them is looked into, and those that are looked into. */
  readonly kept: ReadonlySet<Group>
  /** Sets among them into which the question or its reader looks; of the others only what they are to the rest counts. */
  readonly into: ReadonlySet<Group>
}

/**
 * The groups that matter to a question when nothing but `reads` is read off.
 * @param reads nodes and branches that are read
 */
export function groupsAsked(
  groups: Groups,
  question: Question,
  reads: { readonly nodes: readonly number[]; readonly branches: readonly number[] },
): Asked {
  const lifted = new Set(question.lifted)
  const apart = new Set<Group>()
  groups.plugs.forEach((plugs, group) => {
    if (group > 0 && plugs.every((k) => lifted.has(k))) apart.add(group)
  })
  const into = new Set<Group>()
  const node = (k: number): void => {
    if (k !== 0) into.add(groups.ofNode[k]!)
  }
  const branch = (k: number): void => {
    const group = groups.ofBranch[k]!
    into.add(group)
    // a contact of a plug lies between its set and the sockets
    if (groups.plugs[group]?.includes(k) === true) into.add(0)
  }
  reads.nodes.forEach(node)
  reads.branches.forEach(branch)
  for (const { into: there, outOf } of question.probes ?? []) [there, outOf].forEach(node)
  for (const { from, to } of [...(question.added ?? []), ...(question.bridges ?? [])])
    [from, to].forEach(node)
  for (const one of [...(question.series ?? []), ...(question.within ?? [])]) branch(one.branch)
  for (const k of question.lifted ?? [])
    if (groups.plugs[groups.ofBranch[k]!]?.includes(k) === false) branch(k)
  for (const { part } of question.instead ?? []) into.add(groups.ofPart[part]!)
  // into a set that is cut off nothing comes from the rest, whatever its sources
  const hangs = into.size === 0 || [...into].some((group) => !apart.has(group))
  const kept = new Set([...into].filter((group) => apart.has(group)))
  if (hangs) for (let k = 0; k < groups.plugs.length; k += 1) if (!apart.has(k)) kept.add(k)
  return { kept, into }
}

/** The question in the portion's own indices. */
export function questionWithin({ toNode, toBranch, toPart, kept }: Portion, question: Question): Question {
  const { probes, series, lifted, added, bridges, within, instead } = question
  const ends = <T extends { from: number; to: number }>(one: T): T => ({
    ...one,
    from: toNode[one.from]!,
    to: toNode[one.to]!,
  })
  return {
    ...question,
    condition: conditionWithin(question.condition, kept),
    ...(probes && {
      probes: probes.map((one) => ({ ...one, into: toNode[one.into]!, outOf: toNode[one.outOf]! })),
    }),
    ...(series && { series: series.map((one) => ({ ...one, branch: toBranch[one.branch]! })) }),
    ...(lifted && { lifted: lifted.map((k) => toBranch[k]!).filter((k) => k !== -1) }),
    ...(added && { added: added.map(ends) }),
    ...(bridges && { bridges: bridges.map(ends) }),
    ...(within && { within: within.map((one) => ({ ...one, branch: toBranch[one.branch]! })) }),
    ...(instead && { instead: instead.map((one) => ({ ...one, part: toPart[one.part]! })) }),
  }
}

/**
 * What a direct point of another network is in the portion.
 * @param there index in that network of a branch of the whole
 */
export function pointWithin(
  { branches }: Portion,
  { voltage, current }: Point,
  there: (k: number) => number,
): Point {
  return {
    voltage: Float64Array.from(branches, (k) => voltage[there(k)] ?? 0),
    current: Float64Array.from(branches, (k) => current[there(k)] ?? 0),
  }
}
