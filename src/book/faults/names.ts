/** What a person calls a part: by what it is, and as its sheet names it. */
import type { NetPart, Sort } from '../../netlist/netlist.ts'

/** What belongs to no set is named by its owner: `hall` of `hall/cable`. */
export function ownerOf(id: string): string {
  return id.split('/')[0] ?? ''
}

/** How parts of each sort are called. */
const CALLED: Readonly<Record<Sort, (part: NetPart) => string>> = {
  strap: ({ name }) => `the strap ${name}`,
  core: ({ name }) => `the core ${name}`,
  contact: ({ name }) => `the contact ${name}`,
  part: ({ name }) => `the ${name}`,
  handset: ({ name }) => `the ${name}`,
  unit: ({ name }) => `the unit's part ${name}`,
  plug: ({ name }) => `the contact ${name} of the plug`,
  socket: ({ id, name }) => `the ${name} of socket ${ownerOf(id)}`,
  cable: ({ id, name }) => cableCalled(ownerOf(id), name),
  exchange: ({ name }) => `the leg ${name} of the exchange`,
}

/** A run is one part, `cable`; wires of no length are parts of their own, `cable.a`. */
function cableCalled(socket: string, name: string): string {
  const wire = name.split('.')[1]
  return wire === undefined ? `the cable to socket ${socket}` : `wire ${wire} to socket ${socket}`
}

/** What a part is called in the middle of a sentence. */
export function calledOf(part: NetPart): string {
  return CALLED[part.sort](part)
}
