/** The portions of one netlist that are in use, and what the sets are that are there by their contacts only. */
import type { Condition } from '../netlist/condition.ts'
import { ON_HOOK } from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import {
  conditionWithin,
  contactsOf,
  type Group,
  type Groups,
  makePortion,
  type Portion,
} from '../netlist/portion.ts'
import { type Equivalent, equivalentOf, isLinear, portSpec } from './equivalent.ts'
import type { Question } from './question.ts'

/** Among fewer sets it costs more to find out what each is to the rest than to solve them together. */
const FEW = 3

export class Portions {
  readonly #net: Netlist
  readonly #groups: Groups
  readonly #made = new Map<string, Portion>()
  readonly #linear = new Map<string, boolean>()
  readonly #equivalents = new Map<string, Equivalent | undefined>()

  constructor(net: Netlist, groups: Groups) {
    this.#net = net
    this.#groups = groups
  }

  /**
   * The portion of the groups that matter, in which those that are not looked into are there by their contacts where
   * they are linear; undefined where that is the whole netlist. Where somebody looks into a set at rest, all sets are
   * solved whole, since who asks about one bell asks about the others next.
   */
  of(kept: ReadonlySet<Group>, into: ReadonlySet<Group>, condition: Condition): Portion | undefined {
    const seen =
      this.#groups.places.length >= FEW &&
      kept.has(0) &&
      [...into].every((group) => this.#isBusy(group, condition))
        ? [...kept].filter((group) => group !== 0 && !into.has(group) && this.#isSeen(group, condition))
        : []
    const whole = [...kept].filter((group) => !seen.includes(group)).sort((p, q) => p - q)
    if (seen.length === 0 && whole.length === this.#groups.plugs.length) return undefined
    const key = `${whole.join()}|${seen.join()}`
    const known = this.#made.get(key) ?? makePortion(this.#net, this.#groups, new Set(whole), seen)
    this.#made.set(key, known)
    return known
  }

  /** The question with what each set is that is there by its contacts only. */
  seenIn(portion: Portion, asked: Question, within: Question): Question {
    if (portion.ports.size === 0) return within
    const instead = [...portion.ports].map(([group, part]) => {
      const direct = this.#equivalent(group, { analysis: 'direct', condition: asked.condition })
      if (direct === undefined) throw new RangeError(`set ${group} is not linear after all`)
      const alternating = asked.analysis === 'alternating' ? this.#equivalent(group, asked) : undefined
      return { part, spec: portSpec(direct, alternating) }
    })
    return { ...within, instead: [...(within.instead ?? []), ...instead] }
  }

  /** Stand-ins of the sets that are there by their contacts only, each with the links of their plugs. */
  reasons(portion: Portion, asked: Question): readonly (readonly [string, readonly number[]])[] {
    return [...portion.ports.keys()].flatMap((group) =>
      (this.#equivalent(group, asked)?.reasons ?? []).map(
        (reason) => [reason, this.#groups.plugs[group] ?? []] as const,
      ),
    )
  }

  /** Whether a set does anything; the line always does. */
  #isBusy(group: Group, { sets }: Condition): boolean {
    return group === 0 || sets[this.#groups.places[group - 1] ?? ''] !== undefined
  }

  #isSeen(group: Group, condition: Condition): boolean {
    const key = this.#keyOf(group, condition)
    const known = this.#linear.get(key)
    if (known !== undefined) return known
    const { net, contacts, kept } = this.#alone(group)
    const linear =
      isLinear(net, contacts, conditionWithin(condition, kept)) &&
      this.#equivalent(group, { analysis: 'direct', condition }) !== undefined
    this.#linear.set(key, linear)
    return linear
  }

  #equivalent(
    group: Group,
    { analysis, frequency, condition }: Pick<Question, 'analysis' | 'frequency' | 'condition'>,
  ): Equivalent | undefined {
    const key = `${analysis} ${frequency} ${this.#keyOf(group, condition)}`
    if (this.#equivalents.has(key)) return this.#equivalents.get(key)
    const { net, contacts, kept } = this.#alone(group)
    const about = { analysis, condition: conditionWithin(condition, kept) }
    const made = equivalentOf(net, contacts, frequency === undefined ? about : { ...about, frequency })
    this.#equivalents.set(key, made)
    return made
  }

  #keyOf(group: Group, { line, sets }: Condition): string {
    const { hook, dial, key } = sets[this.#groups.places[group - 1] ?? ''] ?? ON_HOOK
    return `${group} ${line} ${hook} ${dial} ${key}`
  }

  /** A set without anything around it, and the contacts of its plug in its own indices. */
  #alone(group: Group): { net: Netlist; contacts: readonly number[]; kept: ReadonlySet<string> } {
    const portion = this.of(new Set([group]), new Set([group]), { line: 'idle', sets: {} })
    if (portion === undefined) throw new RangeError(`group ${group} is all there is`)
    const contacts = contactsOf(this.#net, this.#groups, group).map((node) => portion.toNode[node]!)
    return { net: portion.net, contacts, kept: portion.kept }
  }
}
