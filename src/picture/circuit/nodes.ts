/** The nodes of a circuit picture: what they are called, where they lie, and earth once for each use. */
import { EARTH, type Netlist, nodeName } from '../../netlist/netlist.ts'
import type { Thing } from '../thing.ts'
import type { CircuitNode, CircuitZone } from './circuit.ts'

/** Hands out node ids and keeps what they are. */
export interface NodeBook {
  /** The picture's node for a node of the netlist; earth is a new one for each user. */
  node(node: number, zone: CircuitZone, user: string): string
  nodes(): readonly CircuitNode[]
}

/** A book of the nodes that are shown. */
export function nodeBook(net: Netlist, place: string, shown: ReadonlySet<number>): NodeBook {
  const terminals = new Map<number, CircuitNode>()
  for (const node of shown) {
    const id = nodeName(net, node)
    if (id !== EARTH) terminals.set(node, plainNode(net, place, node))
  }
  const earths: CircuitNode[] = []
  return {
    node(node, zone, user) {
      const id = nodeName(net, node)
      if (id !== EARTH) return id
      const own = `${EARTH}@${user}`
      if (!earths.some((one) => one.id === own)) earths.push({ id: own, label: EARTH, zone, looks: 'earth' })
      return own
    },
    nodes: () => [...terminals.values(), ...earths],
  }
}

function plainNode(net: Netlist, place: string, node: number): CircuitNode {
  const id = nodeName(net, node)
  const own = net.places.find((one) => one.place === place)
  const label = id.startsWith(`${place}/`) ? id.slice(place.length + 1) : id
  if (own?.terminals.includes(node) === true) {
    const thing: Thing = `terminal:${label}`
    return { id, label, zone: 'set', looks: 'terminal', thing }
  }
  const core = own?.cores.find(({ far }) => far === node)
  if (core !== undefined) {
    const thing: Thing = `core:${core.name}`
    return { id, label, zone: core.endsIn === 'plug' ? 'cord' : 'handset', looks: 'far-end', thing }
  }
  if (node === net.line?.a || node === net.line?.b) return { id, label, zone: 'exchange', looks: 'wire' }
  if (own === undefined || id.startsWith(`${place}/`)) return { id, label, zone: 'set', looks: 'joint' }
  return { id, label, zone: 'premises', looks: 'wire' }
}
