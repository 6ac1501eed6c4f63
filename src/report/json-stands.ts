/** Where the sets of an answer stand, as JSON shows it. */
import type { Stands } from '../answer/stands.ts'
import { type Fields, pick } from './pick.ts'

const SOCKET = ['socket', 'is', 'fed from', 'ringing lead', 'earth', 'mirrored']
const SET = ['place', 'set', 'rewire', 'socket', 'reversed', 'rests', 'plug']

/** The key `stands`, where an answer has one. */
export function standsFields({ stands }: { readonly stands?: Stands }): Fields {
  if (stands === undefined) return {}
  return {
    stands: pick(stands, ['line', 'premises', 'sockets', 'sets', 'asked', 'notes'], {
      sockets: stands.sockets.map((one) => pick(one, SOCKET)),
      sets: stands.sets.map((one) =>
        pick(one, SET, { plug: one.plug.map((contact) => pick(contact, ['node', 'wiring', 'contact'])) }),
      ),
      ...(stands.asked === undefined
        ? {}
        : { asked: pick(stands.asked, ['place', 'socket', 'in place of']) }),
      ...(stands.notes === undefined
        ? {}
        : { notes: stands.notes.map((one) => pick(one, ['sheet', 'name', 'says'])) }),
    }),
  }
}
