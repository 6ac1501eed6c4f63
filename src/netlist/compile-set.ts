/** One set in its place: terminals, straps, contacts, parts, unit, cords and handset. */
import { contact } from '../parts/contact.ts'
import { kindOf } from '../parts/index.ts'
import type { PartSpec } from '../parts/kind.ts'
import { strap } from '../parts/strap.ts'
import { type Place, refuse } from '../problem.ts'
import type { SetSheet } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'
import { EARTH, type NetCore, type NetPlace, type NetSocket } from './netlist.ts'

/** The number of a plug contact in the wiring numbering, from either numbering (the two are mirrored). */
export function wiringNumber(numberedBy: 'wiring' | 'contact', number: number): number {
  return numberedBy === 'wiring' ? number : 7 - number
}

/** Adds a set and says where its things are. The plug's links to a socket are `compile-premises`'s. */
export function compileSet(
  builder: NetlistBuilder,
  set: SetSheet,
  place: string,
  socket: NetSocket | undefined,
): NetPlace {
  const at = (end: string): string => (end === EARTH ? EARTH : `${place}/${end}`)
  const origin = (path: string): Place | undefined => set.places.get(path)
  for (const joint of set.joints) {
    if (!builder.has(at(joint))) continue
    const place = origin('joints')
    refuse({
      code: 'key-doubled',
      found: `the joint \`${joint}\` of ${set.name}, where a socket of the same name as its place has a wire of that name`,
      expected: 'one name for each point',
      mend: 'give the joint, or the place, another name',
      ...(place === undefined ? {} : { place }),
    })
  }
  const terminals = Object.entries(set.strips).flatMap(([strip, length]) =>
    Array.from({ length }, (_, k) => builder.node(at(`${strip}${k + 1}`))),
  )
  for (const [name, one] of Object.entries(set.straps)) {
    const [from = '', to = ''] = name.split('-')
    const spec = { kind: 'strap', from, to, ...(one.resistance ? { resistance: one.resistance } : {}) }
    builder.add(strap as never, spec, {
      place,
      name,
      sort: 'strap',
      node: at,
      origin: origin(`straps.${name}`),
    })
  }
  for (const [name, one] of Object.entries(set.contacts)) {
    const spec = { kind: 'contact', ...one }
    builder.add(contact as never, spec, {
      place,
      name,
      sort: 'contact',
      node: at,
      origin: origin(`contacts.${name}`),
    })
  }
  for (const [name, spec] of Object.entries(set.parts)) {
    builder.add(kindOf(spec), spec, { place, name, sort: 'part', node: at, origin: origin(`parts.${name}`) })
  }
  compileSlots(builder, set, place, at)
  const cores = compileCords(builder, set, place, at)
  for (const [name, spec] of Object.entries(set.handset)) {
    const node = (end: string): string => at(`handset.${end}`)
    builder.add(kindOf(spec), spec, { place, name, sort: 'handset', node, origin: origin(`handset.${name}`) })
  }
  const plug = plugNodes(builder, set, place)
  return {
    place,
    set: set.name,
    terminals,
    spare: set.spare.map((one) => builder.node(at(one))),
    touchable: Object.entries(set['touchable metal']).map(([name, one]) => ({
      name,
      node: one === 'none' ? undefined : builder.node(at(one)),
    })),
    cores,
    slots: Object.entries(set.slots).map(([name, one]) => ({
      name,
      needsUnit: one['needs unit'] ?? false,
      fitted: one.fitted === 'none' ? undefined : one.fitted,
      sockets: Object.values(one.sockets).map((terminal) => builder.node(at(terminal))),
    })),
    common: set['common cores'].map((group) => group.map((core) => `handset.${core}`)),
    plug,
    meets: meetingIn(plug, socket),
    socket,
  }
}

function compileSlots(
  builder: NetlistBuilder,
  set: SetSheet,
  place: string,
  at: (end: string) => string,
): void {
  for (const [slot, one] of Object.entries(set.slots)) {
    const unit = one.fitted === undefined ? undefined : set.units[one.fitted]
    if (unit === undefined) continue
    const node = (end: string): string => {
      const terminal = Object.hasOwn(one.sockets, end) ? one.sockets[end] : undefined
      return terminal === undefined ? at(end === EARTH ? EARTH : `${slot}.${end}`) : at(terminal)
    }
    for (const [name, spec] of Object.entries(unit.parts)) {
      const origin = unit.places.get(`parts.${name}`)
      builder.add(kindOf(spec as PartSpec), spec, {
        place,
        name: `${slot}.${name}`,
        sort: 'unit',
        node,
        origin,
      })
    }
  }
}

function compileCords(
  builder: NetlistBuilder,
  set: SetSheet,
  place: string,
  at: (end: string) => string,
): readonly NetCore[] {
  return Object.entries(set.cords).flatMap(([cord, { 'ends in': endsIn, cores }]) =>
    Object.entries(cores).map(([core, one]) => {
      const name = `${cord}.${core}`
      const far = builder.node(at(`${endsIn}.${core}`))
      const lands = one.lands === 'parked' ? undefined : builder.node(at(one.lands))
      const node = (end: string): string => (end === 'far' ? at(`${endsIn}.${core}`) : at(end))
      const spec = {
        kind: 'strap',
        from: 'far',
        to: one.lands,
        ...(one.resistance ? { resistance: one.resistance } : {}),
      }
      const branch =
        lands === undefined
          ? undefined
          : builder.add(strap as never, spec, {
              place,
              name,
              sort: 'core',
              node,
              origin: set.places.get(`cords.${cord}.cores.${core}`),
            })
      const meant = (set.landings[name] ?? []).map((terminal) => builder.node(at(terminal)))
      return { name, cord, core, endsIn, far, lands, branch, meant, colour: one.colour }
    }),
  )
}

function meetingIn(
  plug: Readonly<Record<number, number>>,
  socket: NetSocket | undefined,
): Readonly<Record<number, number>> {
  if (socket?.mirrored !== true) return plug
  return Object.fromEntries(Object.entries(plug).map(([number, node]) => [7 - Number(number), node]))
}

function plugNodes(builder: NetlistBuilder, set: SetSheet, place: string): Record<number, number> {
  const nodes: Record<number, number> = {}
  if (set.plug === undefined) return nodes
  for (const [number, core] of Object.entries(set.plug.contacts)) {
    nodes[wiringNumber(set.plug['numbered by'], Number(number))] = builder.node(`${place}/plug.${core}`)
  }
  return nodes
}
