/** Where on the way from the exchange to the handset a part or a node lies. */
import type { Netlist, NetPart } from '../../netlist/netlist.ts'
import type { CircuitZone } from './circuit.ts'

const ZONES: Readonly<Record<NetPart['sort'], CircuitZone>> = {
  strap: 'set',
  core: 'cord',
  contact: 'set',
  part: 'set',
  handset: 'handset',
  unit: 'set',
  plug: 'cord',
  socket: 'premises',
  cable: 'premises',
  exchange: 'exchange',
}

/** The zone of a part; the cable that comes from the exchange is the line. */
export function zoneOfPart(net: Netlist, part: NetPart): CircuitZone {
  if (part.sort !== 'cable') return ZONES[part.sort]
  const ends = net.branches.slice(part.first, part.first + part.count).flatMap(({ from, to }) => [from, to])
  return ends.some((node) => node === net.line?.a || node === net.line?.b) ? 'line' : 'premises'
}
