/** What the circuit picture shows, as data: nodes, symbols and links, with what flows in them. */
import type { Outline } from '../../parts/kind.ts'
import type { Thing } from '../thing.ts'

/** Where on the way from the exchange to the handset something lies; pictures are laid out in this order. */
export type CircuitZone = 'exchange' | 'line' | 'premises' | 'cord' | 'set' | 'handset'

/** A current, A: its size, and from which end to which it flows (alternating: at the moment of the source's crest). */
export interface Flow {
  readonly size: number
  /** +1 from the first end to the second, −1 back, 0 where nothing flows, or no more than leaks. */
  readonly sense: 1 | -1 | 0
  /** How heavily it is drawn: 0 nothing, 1 what leaks at most, to 4 the most of all that flows. */
  readonly weight: 0 | 1 | 2 | 3 | 4
  /** The current itself, real and imaginary part, A, so that currents that share a wire can be added. */
  readonly current?: readonly [re: number, im: number]
}

/** How a node is drawn: a terminal, a joint inside the set, a core's far end, a wire of a socket or the exchange, earth. */
export type NodeLook = 'terminal' | 'joint' | 'far-end' | 'wire' | 'earth'

/** Earth is drawn where it is used, each time as a node of its own: its currents add up over all of them. */
export interface CircuitNode {
  readonly id: string
  readonly label: string
  readonly zone: CircuitZone
  readonly looks: NodeLook
  readonly thing?: Thing
}

/** Where a pin of a symbol is joined. */
export interface CircuitEnd {
  readonly pin: string
  readonly node: string
  readonly flow?: Flow
}

/** A part with its symbol; what lies outside the set may stand together as one box. */
export interface CircuitPiece {
  readonly id: string
  readonly label: string
  /** Its values in short: `1 kΩ`. */
  readonly values: string
  readonly zone: CircuitZone
  readonly outline: Outline
  /** Pin of the outline → node id, with what flows from the node into the pin. */
  readonly ends: readonly CircuitEnd[]
  /** Present where a condition opens and closes it. */
  readonly gate?: 'open' | 'closed'
  readonly thing?: Thing
  readonly flow?: Flow
}

/** A wire between two nodes: a strap, a core, a plug contact. */
export interface CircuitLink {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly sort: string
  readonly thing?: Thing
  readonly flow?: Flow
}

export interface Circuit {
  readonly name: string
  readonly nodes: readonly CircuitNode[]
  readonly pieces: readonly CircuitPiece[]
  readonly links: readonly CircuitLink[]
}

/** How a symbol lies: as it is drawn, from right to left, or upright with its left end at the top or at the bottom. */
export type Turn = 'plain' | 'flipped' | 'down' | 'up'

/** The room of a node or a symbol, its words included. */
export interface PlacedBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** Of a symbol; plain when absent. */
  readonly turn?: Turn
}

/** Where everything goes, in units of the picture; ids are those of the circuit. */
export interface Placement {
  readonly width: number
  readonly height: number
  readonly boxes: Readonly<Record<string, PlacedBox>>
  /** Orthogonal wires: from a node to a pin (`piece id:pin`), or from the first node of a link to its second (its id). */
  readonly wires: readonly {
    readonly id: string
    readonly points: readonly (readonly [x: number, y: number])[]
  }[]
}
