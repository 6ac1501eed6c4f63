/** What brings the line to a set: the socket that it is plugged into, every socket before that, their cables, the exchange. */
import type { Netlist, NetPart, NetPlace } from '../../netlist/netlist.ts'
import { branchAt, nodeName } from '../../netlist/netlist.ts'
import { ownerOf } from './names.ts'

/** Sockets from the set's own to the one where the line ends; none for a set that is not plugged in. */
export function servingSockets(net: Netlist, { socket }: NetPlace): readonly string[] {
  const found: string[] = []
  let name = socket?.name
  while (name !== undefined && !found.includes(name)) {
    found.push(name)
    name = feederOf(net, name)
  }
  return found
}

/** The socket from which a socket's cable or apparatus comes. */
function feederOf(net: Netlist, name: string): string | undefined {
  const before = net.parts
    .filter(({ id, place }) => place === '' && ownerOf(id) === name)
    .flatMap(({ first, count }) => Array.from({ length: count }, (_, k) => branchAt(net, first + k)))
    .flatMap(({ from, to }) => [from, to])
    .map((node) => nodeName(net, node))
  return before
    .filter((id) => id.includes('/'))
    .map(ownerOf)
    .find((owner) => owner !== name && owner !== 'exchange')
}

/** Parts of no set that serve this one. */
export function servingParts(net: Netlist, place: NetPlace): ReadonlySet<NetPart> {
  const owners = new Set(servingSockets(net, place))
  if (owners.size === 0) return new Set()
  return new Set(
    net.parts.filter(
      (part) => part.place === '' && (part.sort === 'exchange' || owners.has(ownerOf(part.id))),
    ),
  )
}
