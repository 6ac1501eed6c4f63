/** What a check works with: one set in its place, its figures on demand, and the limits. */

import type { Figure, FigurePlan } from '../figures/figure.ts'
import type { Installation } from '../netlist/compile.ts'
import { type Condition, conditionOf, readCondition, type WrittenCondition } from '../netlist/condition.ts'
import type { Branch, Netlist, NetPlace } from '../netlist/netlist.ts'
import { nodeName } from '../netlist/netlist.ts'
import type { Limits } from './limits.ts'
import type { Verdict } from './rule.ts'

/** One set under examination. */
export interface CheckContext {
  readonly net: Netlist
  readonly place: NetPlace
  readonly limits: Limits
  /** Reads a figure; equal plans are solved once. */
  figure(plan: FigurePlan): Figure
  /** What was compiled; a trial of something else starts from it. */
  readonly installation: Installation
  /** The set of a place of another installation under examination: a mend that is tried before it is named. */
  trial(installation: Installation, place?: string): CheckContext
}

/** A check: its id, its question in plain words, and how it is answered. */
export interface Rule {
  readonly id: string
  readonly asks: string
  /** Asked once of all that stands on the line, not of every set; its subject is the premises. */
  readonly once?: true
  run(context: CheckContext): readonly Verdict[]
}

/** Words that checks have asked about; there are a few dozen. */
const known = new Map<string, WrittenCondition>()

/** The condition in which the examined set does this and every other set is on-hook. */
export function when(context: CheckContext, written: string): Condition {
  const read = known.get(written) ?? readCondition(written)
  if (read !== undefined) known.set(written, read)
  if (read === undefined) throw new RangeError(`${written} is no condition`)
  return conditionOf(context.place.place, read, context.net.rest)
}

/** The plug's links of the examined set; lifting them leaves the set alone. */
export function plugLinks(context: CheckContext): readonly number[] {
  return context.net.branches
    .filter((branch) => branch.part.place === context.place.place && branch.part.sort === 'plug')
    .map((branch) => branch.index)
}

/** The plug contact, on the set's side, that meets the socket's a wire, b wire or ringing lead. */
export function wireAt(context: CheckContext, wire: 'a' | 'b' | 'ringing'): number | undefined {
  const { net, place } = context
  const node = place.socket?.[wire]
  const link = plugLinks(context)
    .map((k) => net.branches[k])
    .find((branch) => branch?.from === node)
  if (link !== undefined) return link.to
  return place.socket === undefined ? place.plug[{ a: 5, b: 2, ringing: 3 }[wire]] : undefined
}

/** Frequency at which ringing is judged where the line has none, Hz. */
const USUAL_RINGING = 25

/** The line's ringing frequency, Hz. */
export function ringingFrequency(context: CheckContext): number {
  return context.net.line?.ringingFrequency ?? USUAL_RINGING
}

/** Branches of the examined set whose part has a role. */
export function roleBranches(context: CheckContext, role: string): readonly Branch[] {
  const { net, place } = context
  return net.branches.filter((branch) => branch.part.place === place.place && branch.part.role === role)
}

/** Whether the examined set has a contact that answers to one of these words. */
function answersTo({ net, place }: CheckContext, words: readonly string[]): boolean {
  return net.parts.some(
    (part) => part.place === place.place && part.gate !== undefined && words.includes(part.gate.word),
  )
}

/** Whether the set has a hook contact; an extension bell has none and closes no loop. */
export function hasHook(context: CheckContext): boolean {
  return answersTo(context, ['off-hook'])
}

/** Whether the set has an impulse contact. */
export function hasDial(context: CheckContext): boolean {
  return answersTo(context, ['make', 'break'])
}

/** A node's or branch's id without the examined set's own place in front. */
export function short(context: CheckContext, id: string): string {
  const head = `${context.place.place}/`
  return id.startsWith(head) ? id.slice(head.length) : id
}

/** A node's short name. */
export function nodeShort(context: CheckContext, node: number): string {
  return short(context, nodeName(context.net, node))
}

/** Other sets that are off their hook as the premises stand: they engage the line. */
export function liftedOthers({ net, place }: CheckContext): readonly string[] {
  return net.places
    .map((one) => one.place)
    .filter((name) => name !== place.place && net.rest[name]?.hook === 'off-hook')
}

/** The condition in which the examined set does this and every other set is hung up, whatever it does as things stand. */
export function whenHungUp(context: CheckContext, written: string): Condition {
  const { line, sets } = when(context, written)
  const own = sets[context.place.place]
  return { line, sets: own === undefined ? {} : { [context.place.place]: own } }
}
