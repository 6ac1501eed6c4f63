/** On the way to the set: the pair exchanged at a socket, and a wire that leaks to earth. */
import { exchangeReversed } from '../../figures/exchange-reversed.ts'
import type { Change } from '../../figures/variants.ts'
import { type Branch, EARTH, type NetSocket, nodeName, nodeOf } from '../../netlist/netlist.ts'
import type { LawSink } from '../../parts/kind.ts'
import type { BookFault } from '../fault.ts'
import { type Draft, type Ground, share } from './ground.ts'
import { LIVE } from './mends.ts'
import { ownerOf } from './names.ts'
import { servingSockets } from './serving.ts'

/** Faults of the wires to the socket that a set is plugged into; none for a set that is not. */
export function socketFaults(ground: Ground): readonly BookFault[] {
  const { net, place, odds } = ground
  const { socket } = place
  if (socket === undefined) return []
  return [
    ...share(
      odds.faults['socket-pair-reversed'],
      servingSockets(net, place).flatMap((name) => reversed(ground, name)),
    ),
    ...share(odds.faults['wire-earthed'], [earthed(ground, socket, 'a'), earthed(ground, socket, 'b')]),
  ]
}

/** The pair exchanged where its cable meets a socket; none where a socket has no cable of its own. */
function reversed(ground: Ground, socket: string): readonly Draft[] {
  const [a, b] = ['a', 'b'].map((wire) => wireOf(ground, socket, wire))
  if (a === undefined || b === undefined) return []
  const fromExchange = ownerOf(nodeName(ground.net, a.from)) === 'exchange'
  const changes = fromExchange ? lineReversed(ground) : [...onto(a, b.to), ...onto(b, a.to)]
  if (changes.length === 0) return []
  return [
    {
      id: `${socket}/cable reversed`,
      subjects: [...new Set([a.part.id, b.part.id])],
      family: 'reversed',
      says: fromExchange
        ? `the two wires of the line are exchanged at socket ${socket}`
        : `the pair is exchanged at socket ${socket}, while its other wires are not`,
      sign: "the wires of the pair lie on each other's terminals; every set behind the socket behaves alike",
      mend: `exchange the two wires of the pair behind socket ${socket}; ${LIVE}`,
      changes,
    },
  ]
}

/** A wire of the cable to a socket; runs of any length name them alike. */
function wireOf({ net }: Ground, socket: string, wire: string): Branch | undefined {
  const index = net.branchIndex.get(`${socket}/cable.${wire}`)
  return index === undefined ? undefined : net.branches[index]
}

/** Where the line ends it is the same to have all that the exchange puts on either wire on the other one. */
function lineReversed({ net }: Ground): readonly Change[] {
  if (net.line === undefined) return []
  return (exchangeReversed(net, net.line).instead ?? []).map((instead) => ({ instead }))
}

/**
 * A wire of house cable led to another node, by its resistance to direct current: the inductance of some metres is
 * left out. What lies between the wires of a pair is the same either way round.
 */
function onto(wire: Branch, to: number): readonly Change[] {
  return [{ lifted: wire.index }, { bridge: { from: wire.from, to, ohms: directOhms(wire) } }]
}

/** What a wire's own law says of it for direct current, Ω. */
function directOhms({ part, ordinal }: Branch): number {
  let ohms = 0
  const sink: LawSink = {
    admittance() {},
    equation(branch, a, z) {
      if (branch === ordinal && a !== 0) ohms = z / a
    },
    mutual() {},
  }
  part.law.law(part.spec, { analysis: 'direct', omega: 0 }, 'closed', sink)
  return ohms
}

function earthed({ net, odds }: Ground, socket: NetSocket, wire: 'a' | 'b'): Draft {
  const ohms = odds['damp-resistance'].value.value
  return {
    id: `${socket.name}/${wire} earthed`,
    subjects: [`${socket.name}/${wire}`],
    family: 'leaky',
    says: `the ${wire} wire at socket ${socket.name} leaks to earth`,
    sign: 'hum in the receiver that a set nearer to the exchange has too; a damp wall or a nail in the cable',
    mend: `find the place with the line disconnected, and renew the run; ${LIVE}`,
    changes: [{ bridge: { from: socket[wire], to: nodeOf(net, EARTH), ohms } }],
  }
}
