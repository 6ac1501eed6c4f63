/** Questions about a portion of a netlist. */
import { conditionWithin, type Group, type Groups, type Portion } from '../netlist/portion.ts'
import type { Point } from './laws.ts'
import type { Question } from './question.ts'

/**
 * The groups that matter to a question when nothing but `reads` is read off: those that are not cut off, less what
 * holds no source; undefined where that is all of them.
 * @param reads nodes and branches that are read
 */
export function groupsAsked(
  groups: Groups,
  question: Question,
  reads: { readonly nodes: readonly number[]; readonly branches: readonly number[] },
): ReadonlySet<Group> | undefined {
  const lifted = new Set(question.lifted)
  const apart = new Set<Group>()
  groups.plugs.forEach((plugs, group) => {
    if (group > 0 && plugs.every((k) => lifted.has(k))) apart.add(group)
  })
  if (apart.size === 0) return undefined
  const whole = (group: Group): Group => (apart.has(group) ? group : 0)
  const asked = new Set<Group>()
  // sources stand in the line, so that it and all that hangs on it count
  if (question.sources !== 'none') asked.add(0)
  const node = (k: number): void => {
    if (k !== 0) asked.add(whole(groups.ofNode[k]!))
  }
  const branch = (k: number): void => {
    asked.add(whole(groups.ofBranch[k]!))
  }
  reads.nodes.forEach(node)
  reads.branches.forEach(branch)
  for (const { into, outOf } of question.probes ?? []) [into, outOf].forEach(node)
  for (const { from, to } of [...(question.added ?? []), ...(question.bridges ?? [])])
    [from, to].forEach(node)
  for (const one of [...(question.series ?? []), ...(question.within ?? [])]) branch(one.branch)
  for (const { part } of question.instead ?? []) asked.add(whole(groups.ofPart[part]!))
  if (asked.has(0)) for (let k = 1; k < groups.plugs.length; k += 1) if (!apart.has(k)) asked.add(k)
  return asked.size === groups.plugs.length ? undefined : asked
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

/** What a direct point of the whole network is in the portion. */
export function pointWithin({ branches }: Portion, { voltage, current }: Point): Point {
  return {
    voltage: Float64Array.from(branches, (k) => voltage[k]!),
    current: Float64Array.from(branches, (k) => current[k]!),
  }
}
