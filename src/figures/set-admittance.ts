/** What a set alone takes from a source across its plug: its admittance at one frequency. */
import type { Condition } from '../netlist/condition.ts'
import type { Netlist, NetPlace } from '../netlist/netlist.ts'
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

/**
 * A source between the a contact of a plug and its b and ringing contacts, which are tied together. All links of the
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
  const entry = plugBranch(net, place, 5)
  const back = place.plug[2]
  if (entry === undefined || back === undefined) return undefined
  const lead = place.plug[3]
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
