/** From checked sheets to a netlist: an installation (line, premises, sets in their places) or a free circuit. */

import { kindOf } from '../parts/index.ts'
import { strap } from '../parts/strap.ts'
import type { CircuitSheet, LineSheet, PremisesSheet, SetSheet } from '../sheet/model.ts'
import { NetlistBuilder } from './builder.ts'
import { compileLine } from './compile-line.ts'
import { compileSet } from './compile-set.ts'
import { compileSocket } from './compile-socket.ts'
import type { SetCondition } from './condition.ts'
import { EARTH, type Netlist, type NetPlace, type NetSocket } from './netlist.ts'

/** A set standing somewhere. */
export interface StandingSet {
  readonly set: SetSheet
  /** Socket that it is plugged into; its plug ends are open when absent. */
  readonly in?: string
  /** The pair reversed on the set's side of its socket. */
  readonly reversed?: boolean
  /** What it does when nothing else is said; on-hook when absent. */
  readonly condition?: SetCondition
}

/** What is compiled together. Without premises, the sets stand alone with their plug ends open. */
export interface Installation {
  readonly name: string
  readonly line?: LineSheet
  readonly premises?: PremisesSheet
  readonly sets: Readonly<Record<string, StandingSet>>
}

/** Resistance of a closed plug contact, ohms. Common practice, no source. */
const PLUG_RESISTANCE = 0.05

/** Compiles an installation. Deterministic; the order of nodes is exchange, sockets, sets. */
export function compile(installation: Installation): Netlist {
  const builder = new NetlistBuilder()
  const { line, premises } = installation
  if (line !== undefined) builder.line = compileLine(builder, line)
  const sockets = new Map<string, NetSocket>()
  if (premises !== undefined) {
    for (const name of feedOrder(premises)) {
      const made = compileSocket(builder, premises, line, name, sockets)
      sockets.set(name, made)
    }
  }
  for (const [place, standing] of Object.entries(installation.sets)) {
    const socket = standing.in === undefined ? undefined : sockets.get(standing.in)
    if (standing.condition !== undefined) builder.rest[place] = standing.condition
    const made = compileSet(builder, standing.set, place, socket)
    builder.places.push(made)
    if (socket !== undefined) plugIn(builder, made, socket, standing.reversed ?? false)
  }
  return builder.close(installation.name)
}

/** Compiles a free circuit; its nodes are `name/node`, all but `earth`. Contacts answer to the circuit's name as place. */
export function compileCircuit(sheet: CircuitSheet): Netlist {
  const builder = new NetlistBuilder()
  const node = (end: string): string => (end === EARTH ? EARTH : `${sheet.name}/${end}`)
  for (const [name, spec] of Object.entries(sheet.parts)) {
    const origin = sheet.places.get(`parts.${name}`)
    builder.add(kindOf(spec), spec, { place: sheet.name, name, sort: 'part', node, origin })
  }
  return builder.close(sheet.name)
}

/** Sockets so that each comes after the one that feeds it; circles are the reader's to refuse. */
function feedOrder(premises: PremisesSheet): readonly string[] {
  const order: string[] = []
  const place = (name: string): void => {
    const spec = premises.sockets[name]
    if (spec === undefined || order.includes(name)) return
    const feeder = spec['fed from']
    if (feeder !== undefined) place(feeder)
    order.push(name)
  }
  for (const name of Object.keys(premises.sockets)) place(name)
  return order
}

function plugIn(builder: NetlistBuilder, set: NetPlace, socket: NetSocket, reversed: boolean): void {
  const wires: Record<number, number | undefined> = {
    5: reversed ? socket.b : socket.a,
    2: reversed ? socket.a : socket.b,
    3: socket.ringing,
    4: socket.earth ? 0 : undefined,
  }
  for (const [met, node] of Object.entries(set.meets)) {
    const wired = wires[Number(met)]
    if (wired === undefined) continue
    const number = socket.mirrored ? 7 - Number(met) : met
    const ids = builder.names(wired, node)
    const spec = {
      kind: 'strap',
      from: ids[0],
      to: ids[1],
      resistance: { value: PLUG_RESISTANCE, unit: 'Ω', text: '50 mΩ' },
    }
    builder.add(strap as never, spec, {
      place: set.place,
      name: `plug.${number}`,
      sort: 'plug',
      node: (end) => end,
    })
  }
}
