/** Where the sets of an answer stand, and the numbers of their plugs' contacts. */
import { type SetCondition, writeCondition } from '../netlist/condition.ts'
import { type NetPlace, nodeName } from '../netlist/netlist.ts'
import { bothNumbers, type ContactNumbers } from '../netlist/plug-numbers.ts'
import type { SocketSpec } from '../sheet/model.ts'
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
}

/** What stands where, sets in the order of their sheet. */
export function standsOf({ net, installation }: Standing): Stands {
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
      const rewire = premises?.sets[one.place]?.rewire
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
  }
}

function restText(rest: SetCondition | undefined): string {
  return writeCondition({ hook: 'on-hook', dial: 'rest', key: 'up', ...rest, line: 'idle' })
}

/** The contacts of a set's plug in the order of the wiring numbering. */
function contactsOf({ plug }: NetPlace, name: (node: number) => string): readonly PlugContact[] {
  return Object.entries(plug).map(([wiring, node]) => ({ node: name(node), ...bothNumbers(Number(wiring)) }))
}
