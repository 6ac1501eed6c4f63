/** What a set alone takes from a source across its plug: its admittance at one frequency. */
import type { Condition } from '../netlist/condition.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import type { Netlist, NetPlace } from '../netlist/netlist.ts'
import { joinedTo, pathBetween } from '../netlist/paths.ts'
import { type Complex, divide } from '../parts/complex.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { Tap } from './figure.ts'
import { plugBranch } from './loop.ts'

/** Capacitance of a master socket, F. @source national interface note, secondary copy, grade SEEN-S */
const SOCKET_CAPACITANCE = 1.8e-6

/** Resistance of a contact of the plug, ohms, as that of the contact which carries the source. */
const CONTACT = 0.05

/** A source across a plug. */
export interface PlugSource {
  /** V rms */
  readonly volts: number
  /** ohms in series with it */
  readonly behind: number
  /** Hz */
  readonly frequency: number
}

/** A measurement across a plug. */
export interface PlugTaps {
  /** Current in the a contact, and in the ringing core where the plug has one. */
  readonly taps: readonly Tap[]
  /** Admittance between the a wire and the b wire, S. `seen` as in a definition of the ringing load. */
  admittance(readings: Float64Array, seen: 'set' | 'line'): Complex
}

/** Whether what a set takes hangs on the size of the voltage across it, as a tone ringer's current does. */
export function hangsOnSize(net: Netlist, { place }: NetPlace): boolean {
  return net.parts.some(
    (part) => part.place === place && part.law.bends?.(part.spec).includes('swing') === true,
  )
}

/** Sides of a set's bells that were found, by place: which contact of the pair a netlist's bells return to is one for all. */
const sides = new WeakMap<NetPlace, 'a' | 'b'>()

/**
 * The contact of the pair to which the bell of a set on a ringing lead returns: of each bell, the end that the ringing
 * contact reaches by the shorter way is fed, and the other is joined to a contact by links. The a wire where nothing
 * else is found, as it ought to be.
 */
export function bellReturnsTo(net: Netlist, place: NetPlace): 'a' | 'b' {
  const known = sides.get(place)
  const side = known ?? findSide(net, place)
  if (known === undefined) sides.set(place, side)
  return side
}

function findSide(net: Netlist, place: NetPlace): 'a' | 'b' {
  const { 5: fifth, 2: second, 3: lead } = place.meets
  if (lead === undefined || fifth === undefined || second === undefined) return 'a'
  const bells = net.branches.filter(({ part }) => part.place === place.place && part.role === 'sounder')
  const own = bells.map(({ index }) => index)
  const plug = net.branches.filter(({ part }) => part.sort === 'plug').map(({ index }) => index)
  const onHook = { line: 'idle', sets: {} } as const
  const links = linksOf(without(conducting(net, onHook, 'direct'), [...own, ...plug]))
  const any = without(conducting(net, onHook, 'alternating'), [...own, ...plug])
  const turned = bells.some(({ from, to }) => {
    const ways = [from, to].map((end) => pathBetween(net, any, lead, end)?.branches.length)
    const [near = Number.POSITIVE_INFINITY, far = Number.POSITIVE_INFINITY] = ways
    if (near === far) return false
    const back = joinedTo(net, links, near < far ? to : from)
    return back.has(second) && !back.has(fifth)
  })
  return turned ? 'b' : 'a'
}

/**
 * A source between the two contacts of a plug's pair, with its ringing contact tied to the one that is not the return of
 * the bell: to b as a set ought to be wired, to a where its bell returns to the b contact, so that a set has the same load
 * whichever way round its pair lies, in its cord or outside it. On a line such a set takes another current than its load
 * says; that is in the figures of the house. Below, a stands for the contact that is the return, b for the other. All links of the
 * plug but that of the a contact are lifted; it carries the source, and hangs on the premises at one end only, so that
 * nothing flows there. What is measured includes the contacts. With `seen: 'line'` the current of the ringing core
 * passes the 1.8 µF of a socket besides, which is exact as long as that core is joined to the rest of the set by the
 * a wire alone; a set on two wires has none, and is as it is.
 * @returns undefined where the set stands in no socket, or its plug has no a or no b contact
 */
export function acrossPlug(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  { volts, behind, frequency }: PlugSource,
  changes: Changes = {},
): PlugTaps | undefined {
  const turned = bellReturnsTo(net, place) === 'b'
  const entry = plugBranch(net, place, turned ? 2 : 5)
  const back = place.meets[turned ? 5 : 2]
  if (entry === undefined || back === undefined) return undefined
  const lead = place.meets[3]
  const { lifted = [], bridges = [], within = [] } = changes
  const others = net.branches.filter(
    ({ part, index }) => part.place === place.place && part.sort === 'plug' && index !== entry.index,
  )
  const question: Question = {
    analysis: 'alternating',
    frequency,
    condition,
    ...changes,
    sources: 'none',
    // nothing feeds the set here, so that what bends is at rest; no point need be found for it
    ...(hangsOnSize(net, place) ? {} : { small: true }),
    series: [{ branch: entry.index, re: volts }],
    lifted: [...lifted, ...others.map(({ index }) => index)],
    bridges: [
      ...bridges,
      ...[back, lead].filter((to) => to !== undefined).map((to) => ({ from: entry.from, to, ohms: CONTACT })),
    ],
    ...(behind === 0 ? {} : { within: [...within, { branch: entry.index, ohms: behind }] }),
  }
  const core = place.cores.find(({ endsIn, far }) => endsIn === 'plug' && far === lead)?.branch
  const ringing = core === undefined ? undefined : net.branches[core]
  // the source drives current out of the set at its a contact; in the ringing core it flows from the plug inwards
  const inwards = ringing?.from === lead ? 1 : -1
  return {
    taps: [entry, ringing]
      .filter((branch) => branch !== undefined)
      .map(({ index }) => ({ question, current: index })),
    admittance(readings, seen) {
      const [re = 0, im = 0, leadRe = 0, leadIm = 0] = readings
      const across = { re: volts + behind * re, im: behind * im }
      const whole = divide({ re: -re, im: -im }, across)
      if (seen === 'set' || ringing === undefined) return whole
      const arm = divide({ re: inwards * leadRe, im: inwards * leadIm }, across)
      const ratio = divide(arm, { re: 0, im: 2 * Math.PI * frequency * SOCKET_CAPACITANCE })
      const behindIt = divide(arm, { re: 1 + ratio.re, im: ratio.im })
      return { re: whole.re - arm.re + behindIt.re, im: whole.im - arm.im + behindIt.im }
    },
  }
}
