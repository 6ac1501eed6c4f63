/** The set that something is to be found out about, and what all tests of it have in common. */
import type { Limits } from '../../checks/limits.ts'
import { limitOf } from '../../checks/limits.ts'
import type { FigurePlan } from '../../figures/figure.ts'
import { freshSupplier, readFigure, type Supplier } from '../../figures/read.ts'
import { type Amount, amountIn } from '../../figures/variants.ts'
import type { Kit } from '../../meter/instrument.ts'
import type { Branch, NetLine, Netlist, NetPlace, NetSocket } from '../../netlist/netlist.ts'
import type { PartSpec } from '../../parts/kind.ts'
import type { Odds } from '../odds.ts'

/** What is asked about. */
export interface BenchSet {
  readonly net: Netlist
  readonly place: NetPlace
  readonly odds: Odds
  /** An instrument that shows digits; one with a needle serves as well. */
  readonly kit: Kit
  readonly limits: Limits
}

/** The same, with what it takes to compute on the sound netlist what is due. */
export interface Sound extends BenchSet {
  /** The amount of a plan on the sound netlist. */
  amount(plan: FigurePlan): Amount
  /** The value of a limit. */
  limit(id: string): number
}

/** A set on a line. */
export interface OnLine extends Sound {
  readonly line: NetLine
  readonly socket: NetSocket
}

/** Readies a set: equal questions about the sound netlist are answered once. */
export function soundOf(set: BenchSet): Sound {
  const supplier: Supplier = freshSupplier(set.net)
  return {
    ...set,
    amount: (plan) => amountIn(readFigure(set.net, plan, supplier)),
    limit: (id) => limitOf(set.limits, id).value,
  }
}

/** The set on its line, where it stands on one. */
export function onLine(sound: Sound): OnLine | undefined {
  const { line } = sound.net
  const { socket } = sound.place
  return line === undefined || socket === undefined ? undefined : { ...sound, line, socket }
}

/** The same bench with another set in the middle of it; undefined where that stands in no socket. */
export function beside(bench: OnLine, place: NetPlace): OnLine | undefined {
  return place.socket === undefined ? undefined : { ...bench, place, socket: place.socket }
}

/** All other sets of the premises that stand in a socket. */
export function othersOf({ net, place }: BenchSet): readonly NetPlace[] {
  return net.places.filter((one) => one.place !== place.place && one.socket !== undefined)
}

/** The links of the plugs of some places; with them lifted the sets are out of their sockets. */
export function plugLinksOf(net: Netlist, places: readonly NetPlace[]): readonly number[] {
  const names = new Set(places.map(({ place }) => place))
  return net.branches
    .filter(({ part }) => part.sort === 'plug' && names.has(part.place))
    .map(({ index }) => index)
}

/** The branch of a set's first part with a role. */
export function firstOf({ net, place }: Pick<BenchSet, 'net' | 'place'>, role: string): Branch | undefined {
  return net.branches.find(({ part }) => part.place === place.place && part.role === role)
}

/** Whether a set has a contact that answers to one of these words. */
export function hasContact({ net, place }: BenchSet, ...words: readonly string[]): boolean {
  return net.parts.some(
    ({ place: own, gate }) => own === place.place && gate !== undefined && words.includes(gate.word),
  )
}

/** A part by its index: what it is on the sound netlist. */
export function partOf(net: Netlist, branch: Branch): { readonly index: number; readonly spec: PartSpec } {
  return { index: net.parts.indexOf(branch.part), spec: branch.part.spec }
}
