/**
 * The kick of a needle: a capacitor between the leads takes a charge through the instrument, so that the needle
 * swings out and falls back. The network is taken as one resistance and one capacitor as they appear at the pace of
 * the needle, which is exact for a resistor and a capacitor in series.
 */
import type { Netlist } from '../netlist/netlist.ts'
import type { BatteryRange, Instrument } from './instrument.ts'
import { connectBattery, driven, type Leads, Unsettled } from './leads.ts'

/** How a needle swings out and where it comes to rest, as shares of its full deflection. */
export interface Kick {
  readonly reaches: number
  readonly rests: number
  /** Time in which the current falls to 1/e, s. */
  readonly seconds: number
}

/** Less than this above its rest nobody sees. */
const SEEN = 0.02

/** The kick on a battery's range from an uncharged network; undefined where none is seen. */
export function kickOf(
  net: Netlist,
  given: Leads,
  range: BatteryRange,
  instrument: Instrument,
): Kick | undefined {
  if (instrument.swing === undefined) return undefined
  const pace = 1 / instrument.swing.value
  const emf = range.battery.value
  const ohms = range['mid scale'].value
  const leads = driven(given, instrument['red lead'])
  const omega = 2 * Math.PI * pace
  try {
    const more = { analysis: 'alternating', frequency: pace, small: true } as const
    const moving = connectBattery(net, leads, emf, ohms, more).amps
    const still = connectBattery(net, leads, emf, ohms, { small: true }).amps
    // shares of the current into a short: Y(jω)·R of a conductance beside C and R in series is G·R + jωCR/(1 + jωτ)
    const full = emf / ohms
    const rests = still.re / full
    const across = moving.im / full
    if (across <= 0) return undefined
    const seconds = Math.max(0, (moving.re / full - rests) / across / omega)
    const charge = (across / omega) * (1 + (omega * seconds) ** 2)
    const reaches = Math.min(1, rests + thrown(charge, seconds, omega))
    return reaches - rests < SEEN ? undefined : { reaches, rests, seconds }
  } catch (error) {
    if (error instanceof Unsettled) return undefined
    throw error
  }
}

/**
 * How far a critically damped needle is thrown by a current (charge/τ)·e^(−t/τ), as a share of full deflection.
 * It obeys θ'' + 2ωθ' + ω²θ = ω²·i with i a share of the current of full deflection, charge in seconds of that current.
 *
 * θ(t) = (charge/τ)·ω²·(e^(−t/τ) − e^(−ωt)·(1 + (ω − 1/τ)·t)) / (ω − 1/τ)²
 *
 * @source second-order movement, critically damped; solved here. Short pulses: charge·ω/e; long ones: charge/τ.
 */
export function thrown(charge: number, tau: number, omega: number): number {
  const least = 1e-6 / omega
  const t0 = Math.max(tau, least)
  const deflection = (t: number): number => {
    const x = (omega - 1 / t0) * t
    const size = (charge / t0) * (omega * t) ** 2
    // ((e^x − 1 − x)/x²)·e^(−ωt), by its series where the difference would vanish
    const shape = Math.abs(x) < 1e-4 ? 0.5 + x / 6 : (Math.exp(Math.min(x, 700)) - 1 - x) / x ** 2
    // e^(x − ωt) is e^(−t/τ): written so, neither factor overflows
    return Math.abs(x) < 1e-4 || x < 0
      ? size * shape * Math.exp(-omega * t)
      : (size * (Math.exp(-t / t0) - Math.exp(-omega * t) * (1 + x))) / x ** 2
  }
  return highest(deflection, 20 * (1 / omega + t0), omega, t0)
}

/** The top of a curve that rises once and falls once: bracket on a fine scale, then golden section. */
function highest(curve: (t: number) => number, last: number, omega: number, tau: number): number {
  const first = Math.min(tau, 1 / omega) / 100
  const steps = 200
  const time = (k: number): number => first * (last / first) ** (k / steps)
  let best = 0
  for (let k = 1; k <= steps; k += 1) if (curve(time(k)) > curve(time(best))) best = k
  let low = time(Math.max(0, best - 1))
  let high = time(Math.min(steps, best + 1))
  const share = (Math.sqrt(5) - 1) / 2
  for (let k = 0; k < 60; k += 1) {
    const p = high - share * (high - low)
    const q = low + share * (high - low)
    if (curve(p) > curve(q)) high = q
    else low = p
  }
  return curve((low + high) / 2)
}
