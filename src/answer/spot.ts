/** Where on premises a set is put that was asked for by its own name: a place of its own, or that of another. */
import type { StandingSet } from '../netlist/compile.ts'
import { refuse } from '../problem.ts'
import type { PremisesSheet } from '../sheet/model.ts'
import { nearestName } from './nearest-name.ts'

/** What a request says of it. */
export interface SpotAsked {
  /** Place whose set it stands in for; a place of its own, named after the set, when absent. */
  readonly at?: string
  /** Socket that it is plugged into; that of the set it stands in for, else the first that no other feeds. */
  readonly in?: string
}

/** Where it came to stand. */
export interface Spot {
  readonly place: string
  readonly socket: string | null
  /** The set that stood there. */
  readonly 'in place of'?: string
}

/** The socket and all else of a set in its spot, and the sets beside it. */
export interface Placed {
  readonly spot: Spot
  readonly sets: Readonly<Record<string, StandingSet>>
}

/**
 * Puts a set beside the others, or in place of one of them: it then takes over that one's socket, the pair as it is
 * crossed there, and what it does when nothing else is said.
 * @throws ProblemError for a place where no set stands, a socket that is not there, a place that is taken
 */
export function placeAmong(
  premises: PremisesSheet,
  others: Readonly<Record<string, StandingSet>>,
  set: StandingSet['set'],
  asked: SpotAsked,
): Placed {
  const before = asked.at === undefined ? undefined : others[known(asked.at, others, premises, 'place')]
  const place = asked.at ?? set.name
  if (asked.at === undefined && Object.hasOwn(others, place)) refuseTaken(premises, place)
  const socket = asked.in === undefined ? undefined : known(asked.in, premises.sockets, premises, 'socket')
  const at = socket ?? before?.in ?? firstSocket(premises)
  const standing: StandingSet = { ...before, set, ...(at === undefined ? {} : { in: at }) }
  return {
    spot: {
      place,
      socket: at ?? null,
      ...(before === undefined ? {} : { 'in place of': before.set.name }),
    },
    sets: { ...others, [place]: standing },
  }
}

/** The first socket that no other feeds. */
function firstSocket({ sockets }: PremisesSheet): string | undefined {
  return Object.entries(sockets).find(([, spec]) => spec['fed from'] === undefined)?.[0]
}

function known(
  name: string,
  all: Readonly<Record<string, unknown>>,
  premises: PremisesSheet,
  what: 'place' | 'socket',
): string {
  if (Object.hasOwn(all, name)) return name
  const names = Object.keys(all)
  const near = nearestName(name, names)
  const expected = what === 'place' ? 'a place where a set stands' : 'a socket'
  refuse({
    code: 'request-wrong',
    found: `the ${what} \`${name}\``,
    expected: `${expected} of ${premises.name}: ${names.length === 0 ? 'there is none' : names.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

function refuseTaken(premises: PremisesSheet, place: string): never {
  refuse({
    code: 'request-wrong',
    found: `a set at the place \`${place}\` of ${premises.name}`,
    expected: `that place free for ${place}`,
    mend: `write \`--at ${place}\` to take the place of that set, or check ${premises.name} itself`,
  })
}

/** Refuses a spot for what is not put anywhere; `instead` is a better mend where one is known. @throws ProblemError */
export function refuseSpot({ at, in: socket }: SpotAsked, what: string, instead?: string): void {
  const [option, value] = at === undefined ? ['--in', socket] : ['--at', at]
  if (value === undefined) return
  refuse({
    code: 'request-wrong',
    found: `\`${option} ${value}\` for ${what}`,
    expected: 'a set or a rewire that is put somewhere on premises',
    mend: instead ?? `leave \`${option}\` out, or name the set and say where with \`--on\``,
  })
}
