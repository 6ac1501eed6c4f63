/** From the netlist's parts and nodes to what a hand can point at. */
import type { NetPart } from '../../netlist/netlist.ts'
import type { Thing, ThingSort } from '../thing.ts'

const SORTS: Readonly<Record<NetPart['sort'], ThingSort>> = {
  strap: 'strap',
  core: 'core',
  contact: 'part',
  part: 'part',
  handset: 'part',
  unit: 'part',
  plug: 'branch',
  socket: 'branch',
  cable: 'branch',
  exchange: 'branch',
}

/** What a part is to a hand: by its name in the set, by its id where it is outside. */
export function thingOf({ sort, name, id }: NetPart): Thing {
  const is = SORTS[sort]
  return `${is}:${is === 'branch' ? id : name}`
}
