/**
 * What a sheet or an installation compiles into: a graphology multigraph for questions of what is joined
 * to what, and index arrays of the same branches for the sums. Same sheet, same order, same ids.
 */
import type { MultiUndirectedGraph } from 'graphology'
import type { Form, Gate, PartLaw, PartSpec, Role } from '../parts/kind.ts'
import type { Place } from '../problem.ts'
import type { LineSheet, SocketSpec } from '../sheet/model.ts'
import type { Condition, LineState, SetCondition } from './condition.ts'

/** The reference node; always node 0. */
export const EARTH = 'earth'

/** What a part is to the person at the bench. */
export type Sort =
  | 'strap'
  | 'core'
  | 'contact'
  | 'part'
  | 'handset'
  | 'unit'
  | 'plug'
  | 'socket'
  | 'cable'
  | 'exchange'

/** A part in the netlist: one law, one or several branches with consecutive indices. */
export interface NetPart {
  /** `place/part` */
  readonly id: string
  /** The place it belongs to; empty for what belongs to no set. */
  readonly place: string
  /** Its name within its place. */
  readonly name: string
  readonly sort: Sort
  readonly role: Role | undefined
  readonly law: PartLaw
  readonly spec: PartSpec
  readonly first: number
  readonly count: number
  readonly gate: Gate | undefined
  /** States of the line in which the part takes part; all when absent. */
  readonly during: readonly LineState[] | undefined
  /** The line of the sheet that it comes from. */
  readonly origin: Place | undefined
}

/** One edge of the graph. `from` and `to` are node indices; current is positive from `from` to `to`. */
export interface Branch {
  readonly id: string
  readonly index: number
  readonly from: number
  readonly to: number
  readonly form: Form
  readonly part: NetPart
  /** Which branch of its part. */
  readonly ordinal: number
}

/** A core of a cord: where it ends, where it lands, and where its sheets land it. */
export interface NetCore {
  readonly name: string
  readonly cord: string
  readonly core: string
  readonly endsIn: 'plug' | 'handset'
  /** Far end, node index. */
  readonly far: number
  /** Terminal, node index; undefined when parked. */
  readonly lands: number | undefined
  readonly branch: number | undefined
  /** Terminals on which its sheet or a base of it lands it, nearest first. */
  readonly meant: readonly number[]
  readonly colour: string | undefined
}

/** A slot for a plug-in unit; `sockets` are node indices in the order of the unit's pins. */
export interface NetSlot {
  readonly name: string
  readonly needsUnit: boolean
  readonly fitted: string | undefined
  readonly sockets: readonly number[]
}

/** A set in its place, by node and branch indices. */
export interface NetPlace {
  readonly place: string
  readonly set: string
  readonly terminals: readonly number[]
  readonly spare: readonly number[]
  readonly touchable: readonly { readonly name: string; readonly node: number | undefined }[]
  readonly cores: readonly NetCore[]
  readonly slots: readonly NetSlot[]
  /** Groups of handset cores (`handset.t2`) that are meant to be common. */
  readonly common: readonly (readonly string[])[]
  /** Node of each plug contact by its number in the wiring numbering: 2 b wire, 3 ringing lead, 4 earth, 5 a wire. */
  readonly plug: Readonly<Record<number, number>>
  /** The same by the number of the wire that each contact meets in its socket, which one made up mirrored turns round. */
  readonly meets: Readonly<Record<number, number>>
  /** Socket that it is plugged into, if any. */
  readonly socket: NetSocket | undefined
}

/** A socket's wires, node indices. */
export interface NetSocket {
  readonly name: string
  readonly is: SocketSpec['is']
  readonly a: number
  readonly b: number
  readonly ringing: number | undefined
  readonly earth: boolean
  /** Whether its wires were landed by the mirrored numbering: contact k where 7 − k belongs. */
  readonly mirrored: boolean
  /** The socket that feeds it; absent where the line ends in it. */
  readonly fedFrom: string | undefined
  /** Whether dial pulses end here, since a converter makes tones of them, here or on the way to here. */
  readonly pulsesEnd: boolean
}

/** What the checks ask of a line, in SI units. */
export interface NetLine {
  readonly name: string
  readonly feedVoltage: number
  readonly ringingFrequency: number | undefined
  readonly ringingVoltage: number | undefined
  /** Multiples of the ringing frequency that make up its wave; none on a line that does not ring. */
  readonly ringingHarmonics: readonly number[]
  /** Node indices of the pair at the exchange. */
  readonly a: number
  readonly b: number
  /** Branches that stand for the exchange itself; a path through the line leaves them out. */
  readonly exchange: readonly number[]
  /** What its sheet says of it: feed, trip, recall, limits. */
  readonly sheet: LineSheet
  /** The two halves of the speech termination, a then b. */
  readonly termination: readonly number[]
}

/** A compiled network. Immutable. */
export interface Netlist {
  readonly name: string
  readonly graph: MultiUndirectedGraph<Record<string, never>, { branch: number }>
  readonly nodes: readonly string[]
  readonly nodeIndex: ReadonlyMap<string, number>
  readonly branches: readonly Branch[]
  readonly branchIndex: ReadonlyMap<string, number>
  readonly parts: readonly NetPart[]
  readonly places: readonly NetPlace[]
  readonly line: NetLine | undefined
  /** What each set does when nothing else is said of it, by place; on-hook where absent. */
  readonly rest: Readonly<Record<string, SetCondition>>
}

/** A condition that a netlist can be put into. */
export type { Condition }

/** The node of this id; an unknown id is a programmer's error. */
export function nodeOf(net: Netlist, id: string): number {
  const found = net.nodeIndex.get(id)
  if (found === undefined) throw new RangeError(`no node is called ${id}`)
  return found
}

/** The id of a node index. */
export function nodeName(net: Netlist, node: number): string {
  const found = net.nodes[node]
  if (found === undefined) throw new RangeError(`no node has the index ${node}`)
  return found
}

/** The branch of this index. */
export function branchAt(net: Netlist, index: number): Branch {
  const found = net.branches[index]
  if (found === undefined) throw new RangeError(`no branch has the index ${index}`)
  return found
}

/** The place of this name; an unknown name is a programmer's error. */
export function placeOf(net: Netlist, place: string): NetPlace {
  const found = net.places.find((one) => one.place === place)
  if (found === undefined) throw new RangeError(`no set stands at ${place}`)
  return found
}
