import type { Quantity } from './quantity-text.ts'

/** A two-ended part runs from `from` to `to`, its positive sense of current. */
interface Ends {
  readonly name: string
  readonly from: string
  readonly to: string
}

export interface Resistor extends Ends {
  readonly kind: 'resistor'
  readonly resistance: Quantity
}

export interface Capacitor extends Ends {
  readonly kind: 'capacitor'
  readonly capacitance: Quantity
  readonly leakage?: Quantity
}

export interface Inductor extends Ends {
  readonly kind: 'inductor'
  readonly inductance: Quantity
  readonly resistance?: Quantity
}

export interface Strap extends Ends {
  readonly kind: 'strap'
  readonly resistance?: Quantity
}

/** An ideal source: volts from `from` above `to`, or amperes driven from `from` to `to` through the source. */
export interface Source extends Ends {
  readonly kind: 'voltage-source' | 'current-source'
  readonly direct: Quantity
  readonly alternating: { readonly size: Quantity; readonly degrees: number }
}

export interface Winding extends Ends {
  readonly resistance: Quantity
  readonly inductance: Quantity
}

/** Coupling is one figure for all pairs of windings, or one for each pair `first-second`. */
export interface Coil {
  readonly kind: 'induction-coil'
  readonly name: string
  readonly windings: readonly Winding[]
  readonly coupling: number | Readonly<Record<string, number>>
}

export type TwoEnded = Resistor | Capacitor | Inductor | Strap | Source
export type Part = TwoEnded | Coil

/** A free network, `earth` its reference, as a structure that renders to a sheet and that a tableau can be built from. */
export interface Circuit {
  readonly name: string
  readonly parts: readonly Part[]
}

export function isSource(part: Part): part is Source {
  return part.kind === 'voltage-source' || part.kind === 'current-source'
}

/** The names of all nodes except `earth`, in order of appearance. */
export function nodesOf(circuit: Circuit): string[] {
  const nodes = new Set<string>()
  for (const part of circuit.parts) {
    for (const end of part.kind === 'induction-coil' ? part.windings : [part]) nodes.add(end.from).add(end.to)
  }
  nodes.delete('earth')
  return [...nodes]
}

/** The same circuit with each two-ended part, winding and coil passed through a function of its own. */
export function mapParts(circuit: Circuit, change: (part: Part) => Part): Circuit {
  return { ...circuit, parts: circuit.parts.map(change) }
}
