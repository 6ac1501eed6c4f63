/** Parts that a line brings by itself; no sheet names them by kind. */
import type { Quantity } from '../quantities/quantity.ts'
import { openLaw } from './contact.ts'
import { oneBranch, type TwoEnds } from './ends.ts'
import type { LawSink, PartLaw } from './kind.ts'

/** An element of a reference or terminating impedance: a quantity, or several side by side. */
export type ImpedanceItem = Quantity | { readonly beside: readonly ImpedanceItem[] }

/** One leg of a feed or of a ringing supply: v = R·i + e. */
export interface LegSpec extends TwoEnds {
  readonly kind: 'leg'
  /** ohms */
  readonly resistance: number
  /** volts of V(from) − V(to) at no current, direct and alternating (rms, phase 0) */
  readonly direct: number
  readonly alternating: number
  /** A feed's coils keep speech out; a ringing supply passes its own. */
  readonly passes: 'direct' | 'both'
  readonly because?: string
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

/** One wire of a cable run by its resistance, ohms. */
export interface WireSpec extends TwoEnds {
  readonly kind: 'wire'
  readonly resistance: number
}

export const leg: PartLaw<LegSpec> = {
  kind: 'leg',
  says: 'One leg of the exchange feed or of the ringing supply.',
  role: 'source',
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, gate, sink) {
    if (gate === 'open' || (at.analysis === 'alternating' && spec.passes === 'direct')) openLaw(sink)
    else sink.equation(0, 1, spec.resistance, 0, at.analysis === 'direct' ? spec.direct : spec.alternating)
  },
  standIn: (spec) => spec.because,
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

export const wire: PartLaw<WireSpec> = {
  kind: 'wire',
  says: 'One wire of a cable.',
  role: 'link',
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, _at, _gate, sink) => sink.equation(0, 1, spec.resistance, 0),
  standIn: (_spec, at) => (at.analysis === 'alternating' ? 'cable by its resistance alone' : undefined),
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
