/** Where a bell resistor goes: in place of the strap that alone leads from the ringing lead to the bell. */
import { type CheckContext, nodeShort, when, wireAt } from '../checks/context.ts'
import { BELL_RESISTOR } from '../checks/mends.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import type { Branch } from '../netlist/netlist.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Move } from '../sheet/model.ts'
import { ownBranches, takeStrapOff } from './wires.ts'

/** The moves that put a bell resistor before a bell of the set; undefined where there is no such strap. */
export function resistorMoves(there: CheckContext, bell: Branch): readonly Move[] | undefined {
  const { net, place } = there
  const lead = wireAt(there, 'ringing')
  if (lead === undefined) return undefined
  const links = linksOf(without(conducting(net, when(there, 'on-hook'), 'direct'), [bell.index]))
  const path = [bell.from, bell.to]
    .map((end) => pathBetween(net, links, lead, end))
    .find((one) => one !== undefined)
  const strap = path?.branches.map((k) => net.branches[k]).find((one) => one?.part.sort === 'strap')
  if (strap === undefined || ![strap.from, strap.to].every((node) => place.terminals.includes(node)))
    return undefined
  const [from = '', to = ''] = [strap.from, strap.to].map((node) => nodeShort(there, node))
  const spec: PartSpec = Object.assign({ kind: 'resistor' }, { from, to, resistance: BELL_RESISTOR })
  return [takeStrapOff(there, strap), { do: 'fit part', what: freeName(there), with: spec }]
}

function freeName(there: CheckContext): string {
  const taken = new Set(ownBranches(there).map(({ part }) => part.name))
  let name = 'bell-resistor'
  for (let k = 2; taken.has(name); k += 1) name = `bell-resistor-${k}`
  return name
}
