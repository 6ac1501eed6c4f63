/** Where the leads of a reading are held and in which state of the set. */
import { conditionIn } from '../../../meter/table.ts'
import type { Condition } from '../../../netlist/condition.ts'
import { type Branch, type NetPlace, nodeName } from '../../../netlist/netlist.ts'
import type { Question } from '../../../solver/question.ts'
import type { Site } from '../../bench-test.ts'
import { type BenchSet, plugLinksOf } from '../bench-set.ts'

/** States in which a set is read. */
export const STATES = ['on-hook', 'off-hook', 'off-hook/make', 'off-hook/break'] as const
export type State = (typeof STATES)[number]

/** Two points of a set in a state. Nodes by index. */
export interface Held {
  readonly red: number
  readonly black: number
  readonly state: State
  /** The handset's own cord is off its terminals. */
  readonly cordOff?: true
  /** A part that is by itself between the two points: one of its leads is off, or the unit with it out of its slot. */
  readonly leadOff?: Branch
}

/**
 * Branches that are off while a set is read unplugged: its plug's links; of a cord off its terminals the cores; and
 * where a lead of a part is off, whatever else the set has. That leaves no way from one end of the part to the other
 * but the part itself and what a fault lays right across it.
 */
export function liftedFor({ net, place }: BenchSet, { cordOff, leadOff }: Held): readonly number[] {
  if (leadOff !== undefined)
    return net.branches
      .filter(({ index, part }) => part.place === place.place && index !== leadOff.index)
      .map(({ index }) => index)
  const cores = cordOff === true ? place.cores.filter(({ endsIn }) => endsIn === 'handset') : []
  return [...plugLinksOf(net, [place]), ...cores.flatMap(({ branch }) => branch ?? [])]
}

/** The slot in which a part of a unit sits. */
export function slotOf({ place }: BenchSet, { part }: Branch): NetPlace['slots'][number] | undefined {
  if (part.sort !== 'unit' || part.place !== place.place) return undefined
  return place.slots.find(({ name }) => part.name.startsWith(`${name}.`))
}

/** The question of an unplugged reading, with nothing sent yet. */
export function unplugged(bench: BenchSet, held: Held): Question {
  return {
    analysis: 'direct',
    condition: conditionOfHeld(bench, held),
    sources: 'none',
    lifted: liftedFor(bench, held),
  }
}

/** The condition of the whole netlist. */
export function conditionOfHeld({ net, place }: BenchSet, { state }: Held): Condition {
  return conditionIn(net, place, state)
}

/** Outside where both points are contacts of the plug; else the case is open, or the handset. */
export function siteOf({ place }: BenchSet, { red, black }: Held): Site {
  return [red, black].every((node) => coreAt(place, node)?.endsIn === 'plug') ? 'outside' : 'inside'
}

/** Minutes that it takes. */
export function effortOf(bench: BenchSet, held: Held): number {
  const { efforts } = bench.odds
  const { leadOff } = held
  if (leadOff !== undefined && slotOf(bench, leadOff) === undefined) return efforts.lifted.effort
  return efforts[siteOf(bench, held) === 'outside' ? 'outside' : 'inside'].effort
}

/** `ohms plug.a plug.b off-hook`: what is read, where, and when. */
export function idOf(bench: BenchSet, what: string, held: Held): string {
  const { red, black } = held
  return `${what} ${bare(bench, red)} ${bare(bench, black)} ${whenOf(bench, held)}`
}

/** The last word of an id: the state, `cord-off`, or of a part with a lead off `balance-c-off`. */
function whenOf(bench: BenchSet, { state, cordOff, leadOff }: Held): string {
  if (leadOff !== undefined) return `${bareId(bench, leadOff.id)}-off`
  return cordOff === true ? 'cord-off' : state
}

/** The name of a node within its set. */
export function bare(bench: BenchSet, node: number): string {
  return bareId(bench, nodeName(bench.net, node))
}

/** An id within its set. */
export function bareId({ place }: BenchSet, id: string): string {
  return id.startsWith(`${place.place}/`) ? id.slice(place.place.length + 1) : id
}

/** The core whose far end a node is. */
export function coreAt({ cores }: NetPlace, node: number): NetPlace['cores'][number] | undefined {
  return cores.find(({ far }) => far === node)
}
