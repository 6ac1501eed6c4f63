/** Where the sets of an answer stand, and the numbers of their plugs' contacts. */
import { type SetCondition, writeCondition } from '../netlist/condition.ts'
import { type NetPlace, nodeName } from '../netlist/netlist.ts'
import { bothNumbers, type ContactNumbers } from '../netlist/plug-numbers.ts'
import type { Sheet, SocketSpec } from '../sheet/model.ts'
import type { Spot } from './spot.ts'
import type { Standing } from './standing.ts'

/** A contact of a plug: the core's end there, and its number in both numberings. */
export interface PlugContact extends ContactNumbers {
  readonly node: string
}

/** One set in its place. */
export interface StandingPlace {
  readonly place: string
  readonly set: string
  /** The rewire that its premises name for it. */
  readonly rewire?: string
  /** Socket that it is plugged into, or null. */
  readonly socket: string | null
  readonly reversed: boolean
  /** What it does when nothing else is said: `on-hook`. */
  readonly rests: string
  readonly plug: readonly PlugContact[]
}

/** A socket and what it brings. */
export interface StandingSocket {
  readonly socket: string
  readonly is: SocketSpec['is']
  readonly 'fed from'?: string
  readonly 'ringing lead': boolean
  readonly earth: boolean
  /** Made up by the mirrored numbering. */
  readonly mirrored: boolean
}

/** Line, premises, sockets, and every set that stands there. */
export interface Stands {
  readonly line: string | null
  readonly premises: string | null
  readonly sockets: readonly StandingSocket[]
  readonly sets: readonly StandingPlace[]
  /** Where the one set was put that was asked for by its own name. */
  readonly asked?: Spot
  /** What the sheets note, of the premises, the sets and their rewires. */
  readonly notes?: readonly SheetNote[]
}

/** The notes of one sheet. */
export interface SheetNote {
  readonly sheet: Sheet['sheet']
  readonly name: string
  readonly says: readonly string[]
}

/** What stands where, sets in the order of their sheet. */
export function standsOf({ net, installation, spot, sheets }: Standing): Stands {
  const { premises, line } = installation
  return {
    line: line?.name ?? null,
    premises: premises?.name ?? null,
    sockets: Object.entries(premises?.sockets ?? {}).map(([socket, spec]) => ({
      socket,
      is: spec.is,
      ...(spec['fed from'] === undefined ? {} : { 'fed from': spec['fed from'] }),
      'ringing lead': net.nodeIndex.has(`${socket}/ringing`),
      earth: spec.earth ?? false,
      mirrored: spec.mirrored ?? false,
    })),
    sets: net.places.map((one) => {
      // the rewire of the set that stood there is not that of the one that is put in its place
      const rewire = one.place === spot?.place ? undefined : premises?.sets[one.place]?.rewire
      return {
        place: one.place,
        set: one.set,
        ...(rewire === undefined ? {} : { rewire }),
        socket: one.socket?.name ?? null,
        reversed: installation.sets[one.place]?.reversed ?? false,
        rests: restText(net.rest[one.place]),
        plug: contactsOf(one, (node) => nodeName(net, node)),
      }
    }),
    ...(spot === undefined ? {} : { asked: spot }),
    ...notesOf([...(premises === undefined ? [] : [premises]), ...sheets]),
  }
}

function restText(rest: SetCondition | undefined): string {
  return writeCondition({ hook: 'on-hook', dial: 'rest', key: 'up', ...rest, line: 'idle' })
}

/** The contacts of a set's plug in the order of the wiring numbering. */
function contactsOf({ plug }: NetPlace, name: (node: number) => string): readonly PlugContact[] {
  return Object.entries(plug).map(([wiring, node]) => ({ node: name(node), ...bothNumbers(Number(wiring)) }))
}

/** The notes of these sheets, each sheet once; no key where none has any. */
function notesOf(sheets: readonly Sheet[]): Pick<Stands, 'notes'> {
  const known = new Map(
    sheets.map(({ sheet, name, notes = [] }) => [`${sheet}/${name}`, { sheet, name, says: notes }]),
  )
  const notes = [...known.values()].filter(({ says }) => says.length > 0)
  return notes.length === 0 ? {} : { notes }
}
