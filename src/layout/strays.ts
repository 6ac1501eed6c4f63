/** What of a circuit hangs on nothing that could drive it: wires between terminals that no part is joined to. */
import type { Circuit } from '../index.ts'

/** A circuit in two: what its parts are joined to, and wires that lead nowhere, such as spare and parked cores. */
export interface Parted {
  readonly joined: Circuit
  readonly strays: Circuit
}

/** Parts a circuit. Without any part everything is joined, so that a drawing of bare wires stays whole. */
export function withoutStrays(circuit: Circuit): Parted {
  const { nodes, pieces, links } = circuit
  const beside = new Map<string, string[]>(nodes.map(({ id }) => [id, []]))
  for (const { from, to } of links) {
    beside.get(from)?.push(to)
    beside.get(to)?.push(from)
  }
  const reached = new Set(pieces.flatMap(({ ends }) => ends.map(({ node }) => node)))
  for (const node of reached) for (const other of beside.get(node) ?? []) reached.add(other)
  if (pieces.length === 0) return { joined: circuit, strays: { ...circuit, nodes: [], links: [] } }
  const part = (isIn: (node: string) => boolean): Pick<Circuit, 'nodes' | 'links'> => ({
    nodes: nodes.filter(({ id }) => isIn(id)),
    links: links.filter(({ from }) => isIn(from)),
  })
  return {
    joined: { ...circuit, ...part((id) => reached.has(id)) },
    strays: { ...circuit, pieces: [], ...part((id) => !reached.has(id)) },
  }
}
