/** Mends that are tried before they are named: what could stand before a set, and how else it could stand. */
import type { Installation } from '../netlist/compile.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { SocketSpec } from '../sheet/model.ts'
import type { CheckContext } from './context.ts'
import { judge } from './judge.ts'
import type { Consequence, Verdict } from './rule.ts'

/** What mends a failure, in words, with the figure that shows it. */
export interface Mended {
  readonly mend: string
  readonly consequences?: readonly Consequence[]
}

/** A verdict whose mend is looked for only where the figure fails. */
export function judgeAndMend(
  evidence: Omit<Parameters<typeof judge>[0], 'mend'> & { readonly tight: string },
  look: () => Mended,
): Verdict {
  const verdict = judge({ ...evidence, mend: evidence.tight })
  if (verdict.state !== 'fails') return verdict
  const { mend, consequences } = look()
  const all = [...(consequences ?? []), ...(verdict.consequences ?? [])]
  return { ...verdict, mend, ...(all.length === 0 ? {} : { consequences: all }) }
}

/** Parts of a usual adapter lead. @source national interface note on the master socket, secondary copy, SEEN-S */
export const LEAD_CAPACITANCE: Quantity = { value: 1.8e-6, unit: 'F', text: '1.8 µF' }
export const LEAD_RESISTANCE: Quantity = { value: 470e3, unit: 'Ω', text: '470 kΩ' }

/** The most that apparatus in series may have. @source AS/CA S002:2010, 5.2.3.2(b), grade SEEN-P */
export const SERIES_RESISTANCE: Quantity = { value: 55, unit: 'Ω', text: '55 Ω' }

/** The installation with an adapter lead before a set's socket that makes a ringing lead of its own. */
export function withLead(installation: Installation, place: string): Installation | undefined {
  return withBefore(installation, place, (from) => ({
    is: 'adapter',
    'fed from': from,
    capacitance: LEAD_CAPACITANCE,
    resistance: LEAD_RESISTANCE,
  }))
}

/** The installation with a third wire run to a set's socket, and the socket from which it comes. */
export interface ThirdWire {
  readonly installation: Installation
  readonly from: string
  readonly to: string
}

/**
 * A ringing lead run to a set's socket, over every socket on the way, from the nearest before it that has one; undefined
 * where none has, or where apparatus that passes two wires stands between.
 */
export function withThirdWire({ installation, net, place }: CheckContext): ThirdWire | undefined {
  const { premises } = installation
  const here = place.socket
  if (premises === undefined || here === undefined || here.ringing !== undefined) return undefined
  const sockets: Record<string, SocketSpec> = { ...premises.sockets }
  let name = here.name
  for (;;) {
    const spec = sockets[name]
    const feeder = spec?.['fed from']
    if (spec?.is !== 'secondary' || feeder === undefined) return undefined
    const { 'ringing lead': _, over, ...rest } = spec
    sockets[name] = { ...rest, ...(over === undefined ? {} : { over: { ...over, type: 'house-three' } }) }
    if (net.nodeIndex.has(`${feeder}/ringing`))
      return {
        installation: { ...installation, premises: { ...premises, sockets } },
        from: feeder,
        to: here.name,
      }
    name = feeder
  }
}

/** How a third wire is run, in words. */
export function thirdWireWords({ from, to }: ThirdWire): string {
  return `run a third wire for the ringing lead from socket ${from}, which has it, to socket ${to}; the wires of a socket are live, and local codes and licensed practice decide who may work there`
}

/** The installation with a converter from pulses to tones before a set's socket. */
export function withConverter(installation: Installation, place: string): Installation | undefined {
  return withBefore(installation, place, (from) => ({
    is: 'converter',
    'fed from': from,
    'series resistance': SERIES_RESISTANCE,
  }))
}

function withBefore(
  installation: Installation,
  place: string,
  make: (from: string) => SocketSpec,
): Installation | undefined {
  const { premises, sets } = installation
  const standing = sets[place]
  const from = standing?.in
  if (premises === undefined || standing === undefined || from === undefined) return undefined
  let name = 'in-between'
  while (Object.hasOwn(premises.sockets, name)) name += '-more'
  const sockets = { ...premises.sockets, [name]: make(from) }
  return {
    ...installation,
    premises: { ...premises, sockets },
    sets: { ...sets, [place]: { ...standing, in: name } },
  }
}

/** The installation with a set's two line wires exchanged. */
export function withExchangedPair(installation: Installation, place: string): Installation | undefined {
  const standing = installation.sets[place]
  if (standing === undefined) return undefined
  const reversed = !(standing.reversed ?? false)
  return { ...installation, sets: { ...installation.sets, [place]: { ...standing, reversed } } }
}

/** The installation with a set in another socket. */
export function withSocket(
  installation: Installation,
  place: string,
  socket: string,
): Installation | undefined {
  const standing = installation.sets[place]
  if (standing === undefined) return undefined
  return { ...installation, sets: { ...installation.sets, [place]: { ...standing, in: socket } } }
}

/** The installation without a socket at the end of a run, its sets plugged into the one that feeds it. */
export function withoutSocket(
  installation: Installation,
  socket: string,
  feeder: string,
): Installation | undefined {
  const { premises, sets } = installation
  if (premises === undefined) return undefined
  const { [socket]: _, ...sockets } = premises.sockets
  if (Object.values(sockets).some((one) => one['fed from'] === socket)) return undefined
  const moved = Object.entries(sets).map(([place, one]) => [
    place,
    one.in === socket ? { ...one, in: feeder } : one,
  ])
  return { ...installation, premises: { ...premises, sockets }, sets: Object.fromEntries(moved) }
}

/** The plug's links of these places, which unplug their sets when lifted. */
export function linksOfPlaces({ net }: CheckContext, places: readonly string[]): readonly number[] {
  return net.branches
    .filter(({ part }) => part.sort === 'plug' && places.includes(part.place))
    .map(({ index }) => index)
}

/** Every place but that under examination. */
export function otherPlaces({ net, place }: CheckContext): readonly string[] {
  return net.places.map((one) => one.place).filter((one) => one !== place.place)
}

/** Resistance of a bell resistor, ohms. Common practice, no source. */
export const BELL_RESISTOR: Quantity = { value: 3300, unit: 'Ω', text: '3.3 kΩ' }

/** The largest first; sizes that differ by rounding alone keep their order, so that an answer never hangs on it. */
export function largestFirst<T>(items: readonly T[], size: (item: T) => number): readonly T[] {
  const coarse = (item: T): number => Number(size(item).toPrecision(6))
  return [...items].sort((p, q) => coarse(q) - coarse(p))
}

/** Names in a row, all of them: `hall, kitchen and yard`. */
export function namesOf(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
