/** What the circuit picture shows, as data: nodes, symbols and links, with what flows in them. */
import type { Outline } from '../../parts/kind.ts'
import type { Thing } from '../thing.ts'

/** Where on the way from the exchange to the handset something lies; pictures are laid out in this order. */
export type CircuitZone = 'exchange' | 'line' | 'premises' | 'cord' | 'set' | 'handset'

/** A current, A: its size, and from which end to which it flows (alternating: at the moment of the source's crest). */
export interface Flow {
  readonly size: number
  /** +1 from the first end to the second, −1 back, 0 where nothing flows. */
  readonly sense: 1 | -1 | 0
  /** How heavily it is drawn: 0 nothing to 4 the most of all that flows. */
  readonly weight: 0 | 1 | 2 | 3 | 4
}

export interface CircuitNode {
  readonly id: string
  readonly label: string
  readonly zone: CircuitZone
  readonly thing?: Thing
}

/** A part with its symbol. */
export interface CircuitPiece {
  readonly id: string
  readonly label: string
  /** Its values in short: `1 kΩ`. */
  readonly values: string
  readonly zone: CircuitZone
  readonly outline: Outline
  /** Pin of the outline → node id. */
  readonly ends: readonly { readonly pin: string; readonly node: string }[]
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

/** Where everything goes, in units of the picture; ids are those of the circuit. */
export interface Placement {
  readonly width: number
  readonly height: number
  readonly boxes: Readonly<
    Record<
      string,
      { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
    >
  >
  /** Orthogonal wires: from a node to a pin or to a node. */
  readonly wires: readonly {
    readonly id: string
    readonly points: readonly (readonly [x: number, y: number])[]
  }[]
}
