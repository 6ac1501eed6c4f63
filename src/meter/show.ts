/** What one range shows between two points of a network: a number, or why there is none. */
import type { State } from '../figures/figure.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { Question } from '../solver/question.ts'
import type { Solution } from '../solver/solution.ts'
import type { AlternatingRange, BatteryRange, CapacitanceRange, Range, VoltsRange } from './instrument.ts'
import {
  connectBattery,
  driven,
  floats,
  holdVoltmeter,
  type Leads,
  type Met,
  sendCurrent,
  Unsettled,
} from './leads.ts'

/** What a range shows. */
export interface Shown {
  readonly value: number | State
  /** Current that leaves the instrument by one lead and returns by the other, A. */
  readonly amps: number
  /** Phase of the impedance, radians; on the capacitance range. */
  readonly phase?: number
  /** Whether nothing fixes the voltage that is looked for, so that it wanders. */
  readonly adrift?: true
  readonly solution?: Solution
}

/** What else a range must know. */
export interface Setting {
  readonly redLead: 'positive' | 'negative'
  /** Hz, of the alternating voltage that is looked for. */
  readonly frequency?: number
}

/** Less than this share of what the instrument can send is what rounding leaves of nothing. */
const NOTHING = 1e-9

type Show<R extends Range = Range> = (net: Netlist, leads: Leads, range: R, setting: Setting) => Shown

/** Reads a range. Never throws for a network without a direct-current point. */
export function show(net: Netlist, leads: Leads, range: Range, setting: Setting): Shown {
  try {
    return (SHOW[range.method] as Show)(net, leads, range, setting)
  } catch (error) {
    if (error instanceof Unsettled) return { value: error.state, amps: 0 }
    throw error
  }
}

/** V / I for a known current, or V itself; beyond the full scale the instrument has not the voltage to send it. */
function known(divide: boolean) {
  return (
    net: Netlist,
    given: Leads,
    range: Extract<Range, { current: unknown }>,
    { redLead }: Setting,
  ): Shown => {
    const leads = driven(given, redLead)
    const amps = range.current.value
    const most = range['full scale'].value * (divide ? amps : 1)
    const before = bent(net) ? starved(net, leads, range, most) : undefined
    if (before !== undefined) return before
    const met: Met = sendCurrent(net, leads, amps)
    if (met.open) return { value: 'open', amps: 0 }
    const { solution } = met
    const volts = Math.abs(met.volts.re)
    if (volts > most) return { value: 'beyond-range', amps: 0, solution }
    return { value: divide ? volts / amps : volts, amps, solution }
  }
}

/**
 * Whether the full current cannot be sent: with the open voltage behind the resistance that would send it into a
 * short, the voltage between the leads is smaller than with the full current; if it is too large even so, the
 * range is too small. Spares parts whose law bends thousands of volts.
 */
function starved(
  net: Netlist,
  leads: Leads,
  range: Extract<Range, { current: unknown }>,
  most: number,
): Shown | undefined {
  const emf = Math.max(range['open voltage'].value, most * 1.001)
  const fed = connectBattery(net, leads, emf, emf / range.current.value)
  if (fed.amps.re < NOTHING * range.current.value) return { value: 'open', amps: 0, solution: fed.solution }
  if (fed.volts.re <= most) return undefined
  return { value: 'beyond-range', amps: fed.amps.re, solution: fed.solution }
}

function bent(net: Netlist): boolean {
  return net.parts.some((part) => part.law.bends?.(part.spec).includes('direct'))
}

/** A needle behind a battery: V / I, where the scale still says something. */
function battery(net: Netlist, given: Leads, range: BatteryRange, { redLead }: Setting): Shown {
  const emf = range.battery.value
  const ohms = range['mid scale'].value
  const { volts, amps, solution } = connectBattery(net, driven(given, redLead), emf, ohms)
  if (amps.re < (NOTHING * emf) / ohms) return { value: 'open', amps: 0, solution }
  const value = Math.max(0, volts.re) / amps.re
  return {
    value: value > range['full scale'].value ? 'beyond-range' : value,
    amps: amps.re,
    solution,
  }
}

/** |I| / (ω V) at the range's frequency, small signals; what a resistance adds is shown as if it were capacitance. */
function capacitance(net: Netlist, leads: Leads, range: CapacitanceRange): Shown {
  const frequency = range.frequency.value
  const met = sendCurrent(net, leads, 1, { analysis: 'alternating', frequency, small: true })
  if (met.open) return { value: 0, amps: 0 }
  const { re, im } = met.volts
  const value = 1 / (2 * Math.PI * frequency * Math.hypot(re, im))
  const amps = range.voltage.value / Math.hypot(re, im)
  const phase = Math.atan2(im, re)
  if (!(value <= range['full scale'].value))
    return { value: 'beyond-range', amps: 0, phase, solution: met.solution }
  return { value, amps, phase, solution: met.solution }
}

const ADRIFT: Shown = { value: 'undetermined', amps: 0, adrift: true }

/** On a line, a point that nothing joins to it picks up whatever is near; a set by itself has no voltage at all. */
function adrift(net: Netlist, leads: Leads, more: Partial<Question> = {}): boolean {
  return net.line !== undefined && floats(net, leads, more)
}

function volts(net: Netlist, leads: Leads, range: VoltsRange): Shown {
  if (adrift(net, leads)) return ADRIFT
  const { volts: met, amps, solution } = holdVoltmeter(net, leads, range['input resistance'].value)
  const beyond = Math.abs(met.re) > range['full scale'].value
  return { value: beyond ? 'beyond-range' : met.re, amps: Math.abs(amps.re), solution }
}

/** Mean of the rectified sine against its rms value. */
const FORM_FACTOR: number = Math.PI / (2 * Math.SQRT2)

/**
 * The rms value of a sine. Where direct voltage is not kept out it joins in: as the square sum in a true rms
 * instrument, and as its own size times the form factor in one that averages, where it outweighs the sine's peak.
 */
function alternating(
  net: Netlist,
  leads: Leads,
  range: AlternatingRange,
  { frequency = 50 }: Setting,
): Shown {
  const ohms = range['input resistance'].value
  const more = { analysis: 'alternating', frequency } as const
  if (adrift(net, leads, more)) return ADRIFT
  const { volts: met, amps, solution } = holdVoltmeter(net, leads, ohms, more)
  const rms = Math.hypot(met.re, met.im)
  const direct = range['blocks direct'] ? 0 : Math.abs(holdVoltmeter(net, leads, ohms).volts.re)
  const value = range['responds to'] === 'true-rms' ? Math.hypot(rms, direct) : averaged(rms, direct)
  const beyond = value > range['full scale'].value
  return { value: beyond ? 'beyond-range' : value, amps: Math.hypot(amps.re, amps.im), solution }
}

/** Mean of |d + √2·r·sin x| times the form factor. */
export function averaged(rms: number, direct: number): number {
  const peak = Math.SQRT2 * rms
  if (direct >= peak) return FORM_FACTOR * direct
  const angle = Math.asin(direct / peak)
  return FORM_FACTOR * (2 / Math.PI) * (direct * angle + peak * Math.cos(angle))
}

const SHOW = {
  'constant-current': known(true),
  buzz: known(true),
  diode: known(false),
  battery,
  capacitance,
  volts,
  'alternating-volts': alternating,
} as const satisfies Readonly<Record<Range['method'], unknown>>
