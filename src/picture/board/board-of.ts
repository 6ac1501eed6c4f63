/** From the sheets of a set to what its terminal picture shows. */
import type { CordSpec, Hold, SetSheet, SlotSpec } from '../../sheet/model.ts'
import type { Board, BoardCore, BoardPart, BoardSlot, BoardStrap, Change } from './board.ts'
import { type PlainPart, partsOf } from './board-parts.ts'
import { coreColour } from './core-colour.ts'

/** Why a strap cannot be lifted. */
const HELD: Readonly<Record<Hold, string | undefined>> = {
  screw: undefined,
  solder: 'soldered: only a cut takes it away',
  board: 'part of the board: only a cut takes it away',
}

/** No unit in a slot. */
const NONE = 'none'

/** A core on nothing. */
const PARKED = 'parked'

/**
 * What lies where on a set, what may be moved and what has been.
 * @param set the set as it is now
 * @param found the same set before the moves; nothing is said to have changed without it
 */
export function boardOf(set: SetSheet, found: SetSheet = set): Board {
  return {
    set: set.name,
    ...(set.title === undefined ? {} : { title: set.title }),
    strips: Object.entries(set.strips).map(([name, length]) => ({
      name,
      terminals: Array.from({ length }, (_, k) => {
        const terminal = `${name}${k + 1}`
        return { name: terminal, spare: set.spare.includes(terminal) }
      }),
    })),
    straps: strapsOf(set, found),
    cores: Object.entries(set.cords).flatMap(([cord, spec]) => coresOf(cord, spec, found)),
    parts: changedParts(set, found),
    slots: Object.entries(set.slots).map(([name, slot]) => slotOf(name, slot, found)),
  }
}

function strapsOf(set: SetSheet, found: SetSheet): readonly BoardStrap[] {
  const standing = Object.entries(set.straps).map(([name, { hold }]) => {
    const old = found.straps[name] ?? found.straps[turned(name)]
    return strapOf(name, hold, old?.hold === hold ? undefined : 'fitted')
  })
  const gone = Object.entries(found.straps)
    .filter(([name]) => !Object.hasOwn(set.straps, name) && !Object.hasOwn(set.straps, turned(name)))
    .map(([name, { hold }]) => strapOf(name, hold, 'taken out'))
  return [...standing, ...gone]
}

function strapOf(name: string, hold: Hold, change: Change | undefined): BoardStrap {
  const [from = '', to = ''] = name.split('-')
  const fixed = change === 'taken out' ? undefined : HELD[hold]
  return {
    thing: `strap:${name}`,
    from,
    to,
    hold,
    ...(fixed === undefined ? {} : { fixed }),
    ...(change === undefined ? {} : { change }),
  }
}

/** The other name of the same strap. */
function turned(name: string): string {
  return name.split('-').reverse().join('-')
}

function coresOf(cord: string, spec: CordSpec, found: SetSheet): readonly BoardCore[] {
  return Object.entries(spec.cores).map(([core, { lands, colour }]) => {
    const before = Object.hasOwn(found.cords, cord) ? found.cords[cord]?.cores : undefined
    const was = before !== undefined && Object.hasOwn(before, core) ? before[core]?.lands : undefined
    return {
      thing: `core:${cord}.${core}`,
      cord,
      core,
      endsIn: spec['ends in'],
      ...(lands === PARKED ? {} : { lands }),
      ...(was === undefined || was === lands ? {} : { was, change: 'moved' as const }),
      ...(colour === undefined ? {} : { colour: coreColour(colour) }),
    }
  })
}

function changedParts(set: SetSheet, found: SetSheet): readonly BoardPart[] {
  const now = partsOf(set)
  const then = partsOf(found)
  const before = new Map(then.map((part) => [part.name, part]))
  const names = new Set(now.map(({ name }) => name))
  const standing = now.map((part): BoardPart => {
    const old = before.get(part.name)
    const same = old !== undefined && JSON.stringify(old) === JSON.stringify(part)
    return {
      ...part,
      ...(same ? {} : { change: 'fitted' as const }),
      ...(names.has(`${part.name}-bridge`) ? { bridged: true } : {}),
    }
  })
  const gone = then.filter(({ name }) => !names.has(name))
  return [...standing, ...gone.map((part: PlainPart): BoardPart => ({ ...part, change: 'taken out' }))]
}

function slotOf(name: string, slot: SlotSpec, found: SetSheet): BoardSlot {
  const fitted = unitIn(slot)
  const old = Object.hasOwn(found.slots, name) ? unitIn(found.slots[name]) : undefined
  const change = fitted === old ? undefined : fitted === undefined ? 'taken out' : 'fitted'
  return {
    thing: `slot:${name}`,
    name,
    needsUnit: slot['needs unit'] ?? false,
    ...(fitted === undefined ? {} : { fitted }),
    sockets: Object.entries(slot.sockets).map(([pin, terminal]) => ({ pin, terminal })),
    ...(change === undefined ? {} : { change }),
  }
}

function unitIn(slot: SlotSpec | undefined): string | undefined {
  return slot?.fitted === NONE ? undefined : slot?.fitted
}
