/** Parts that a line brings by itself; no sheet names them by kind. */
import type { Quantity } from '../quantities/quantity.ts'
import { limitedLaw, limiting, settleLimited } from './current-limit.ts'
import { oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens } from './fault-modes.ts'
import type { LawSink, PartLaw } from './kind.ts'
import { openLaw } from './open-law.ts'
import { type RingingWave, waveAt } from './ringing-wave.ts'

/** An element of a reference or terminating impedance: a quantity, or several side by side. */
export type ImpedanceItem = Quantity | { readonly beside: readonly ImpedanceItem[] }

/** One leg of a feed or of a ringing supply: v = R·i + e. */
export interface LegSpec extends TwoEnds {
  readonly kind: 'leg'
  /** ohms */
  readonly resistance: number
  /** volts of V(from) − V(to) at no current, direct and alternating (rms of the whole wave, phase 0) */
  readonly direct: number
  readonly alternating: number
  /** How the alternating voltage is shared among frequencies; at every frequency the whole of it when absent. */
  readonly wave?: RingingWave
  /** Largest direct current that the leg carries, A, either way; no limit when absent. */
  readonly limit?: number
  /** A feed's coils keep speech out; a ringing supply passes its own. */
  readonly passes: 'direct' | 'both'
}

/** Half of a line's terminating impedance, with half of the far end's speech in series; v = Z·i + e. */
export interface TerminationSpec extends TwoEnds {
  readonly kind: 'termination'
  readonly impedance: readonly ImpedanceItem[]
  /** part of the impedance that this branch is: 0.5 for each half */
  readonly share: number
  /** volts rms of the far end's speech in this branch */
  readonly speech: number
}

/**
 * A leg of the feed or of the ringing supply. A feed without a limit and a ringing supply are straight lines; with
 * a limit a feed is its resistance up to the limit and gives the limit's current above it, at whatever voltage.
 * A ringing supply's EMF stands at its frequency and the harmonics of its wave; at any other frequency it is a
 * short through its resistance.
 */
export const leg: PartLaw<LegSpec> = {
  kind: 'leg',
  says: 'One leg of the exchange feed or of the ringing supply.',
  role: 'source',
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, gate, sink) {
    if (gate === 'open' || (at.analysis === 'alternating' && spec.passes === 'direct')) openLaw(sink)
    else if (at.analysis === 'alternating') sink.equation(0, 1, spec.resistance, 0, emf(spec, at.omega))
    else if (limits(spec)) limitedLaw(spec, at.direct?.(0), sink)
    else sink.equation(0, 1, spec.resistance, 0, spec.direct)
  },
  bends: (spec) => (limits(spec) ? ['direct'] : []),
  settle: (spec, _branch, next, before) => (limits(spec) ? settleLimited(spec, next, before) : next),
  elements(spec, at, gate, sink) {
    const sign = limits(spec) && at.direct !== undefined ? limiting(spec, at.direct(0)) : 0
    if (gate === 'open' || (at.analysis === 'alternating' && spec.passes === 'direct')) sink.open(0)
    else if (at.analysis === 'alternating') sink.series(0, spec.resistance, 0, emf(spec, at.omega))
    else if (sign !== 0) sink.beside(0, Number.POSITIVE_INFINITY, 0, sign * (spec.limit ?? 0))
    else sink.series(0, spec.resistance, 0, spec.direct)
  },
  modes: (spec) => [
    opens({ weight: 2, sign: 'the same at every socket, and with any set' }),
    becomes(
      'high-resistance',
      { ...spec, resistance: spec.resistance + BAD_CONTACT },
      {
        family: 'resists',
        says: 'has a bad contact in it',
        sign: 'the same at every socket, and with any set; it comes and goes',
        weight: 2,
      },
    ),
  ],
}

/** A bad contact in the exchange's switches, Ω. From memory. */
const BAD_CONTACT = 2000

function limits(spec: LegSpec): spec is LegSpec & { readonly limit: number } {
  return spec.limit !== undefined
}

/** The EMF at ω, V rms. */
function emf({ alternating, wave }: LegSpec, omega: number): number {
  return wave === undefined ? alternating : alternating * waveAt(wave, omega)
}

export const termination: PartLaw<TerminationSpec> = {
  kind: 'termination',
  says: 'The speech impedance of the line at the exchange.',
  role: 'source',
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, gate, sink) {
    if (gate === 'open' || at.analysis === 'direct') openLaw(sink)
    else terminate(spec, at.omega, sink)
  },
}

function terminate(spec: TerminationSpec, omega: number, sink: LawSink): void {
  const z = impedanceOf(spec.impedance, omega)
  if (!Number.isFinite(z.re) || !Number.isFinite(z.im)) openLaw(sink)
  else sink.equation(0, 1, z.re * spec.share, z.im * spec.share, spec.speech)
}

/**
 * Impedance of items in series at ω, ohms. A capacitance is 1/(jωC), an inductance jωL.
 * Not finite where nothing passes: a capacitance of 0 F in series, or a lossless resonance at this very ω.
 */
export function impedanceOf(items: readonly ImpedanceItem[], omega: number): { re: number; im: number } {
  let re = 0
  let im = 0
  for (const item of items) {
    const z = 'beside' in item ? besideOf(item.beside, omega) : REACTANCE[item.unit]?.(item.value, omega)
    if (z === undefined) throw new TypeError('an impedance is made of ohms, farads and henries')
    re += z.re
    im += z.im
  }
  return { re, im }
}

const REACTANCE: Readonly<Record<string, (value: number, omega: number) => { re: number; im: number }>> = {
  Ω: (value) => ({ re: value, im: 0 }),
  F: (value, omega) => ({ re: 0, im: -1 / (omega * value) }),
  H: (value, omega) => ({ re: 0, im: omega * value }),
}

function besideOf(items: readonly ImpedanceItem[], omega: number): { re: number; im: number } {
  let re = 0
  let im = 0
  for (const item of items) {
    const z = impedanceOf([item], omega)
    const size = z.re * z.re + z.im * z.im
    if (size === 0) return { re: 0, im: 0 } // a short, whatever stands beside it
    if (!Number.isFinite(size)) continue // nothing passes here
    re += z.re / size
    im -= z.im / size
  }
  const size = re * re + im * im
  return size === 0 ? { re: Number.POSITIVE_INFINITY, im: 0 } : { re: re / size, im: -im / size }
}
