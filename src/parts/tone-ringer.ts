import * as z from 'zod/mini'
import type { At, Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, leaks, opens, shorts, times } from './fault-modes.ts'
import { quantity, quantityAt } from './fields.ts'
import type { LawPoint, PartKind } from './kind.ts'
import { line, lying, shape } from './symbols.ts'
import { workingOf } from './working.ts'

/**
 * A tone ringer: behind its rectifier nothing flows up to a threshold, and beyond it i = (|v| − V₀)/R with the sign of
 * v; R is the load and whatever stands in series. A capacitor in series, where given, belongs to it. At ringing
 * frequency it is its describing function: the fundamental of the current that a sine of that size drives.
 */
export interface ToneRingerSpec extends TwoEnds {
  readonly kind: 'tone-ringer'
  readonly threshold: Quantity
  readonly load: Quantity
  readonly resistance?: Quantity
  readonly capacitance?: Quantity
  readonly 'rings from': At
}

function ohmsOf(spec: ToneRingerSpec): number {
  return spec.load.value + (spec.resistance?.value ?? 0)
}

/** The share of its slope that a one-sided ramp, beginning at c, passes of a sine of amplitude A; u = c/A. */
function ramp(c: number, amplitude: number): number {
  if (c >= amplitude) return 0
  if (c <= -amplitude) return 1
  const u = c / amplitude
  return 0.5 - (Math.asin(u) + u * Math.sqrt((1 - u) * (1 + u))) / Math.PI
}

/**
 * The describing function of a dead zone of ± `threshold` for a sine of an amplitude about a bias, as a share of its
 * slope outside: 0 within the dead zone, 1 far beyond. Without bias 1 − (2/π)(asin d + d√(1 − d²)), d = V₀/A.
 * @source Gelb and Vander Velde: Multiple-Input Describing Functions and Nonlinear System Design (1968), from memory
 */
export function deadZoneShare(threshold: number, amplitude: number, bias: number = 0): number {
  return ramp(threshold - bias, amplitude) + ramp(threshold + bias, amplitude)
}

/** Amplitude behind the series capacitor when `amplitude` stands across both: A² + (I/ωC)² = amplitude². */
function behindCapacitor(amplitude: number, current: (inner: number) => number, reactance: number): number {
  let least = 0
  let most = amplitude
  for (let step = 0; step < 100; step += 1) {
    const inner = (least + most) / 2
    if (inner === least || inner === most) break
    if (Math.hypot(inner, current(inner) * reactance) > amplitude) most = inner
    else least = inner
  }
  return (least + most) / 2
}

/**
 * How far the describing function may be off, per cent: by the ratio of the amplitude behind the capacitor to the
 * threshold, the largest error found in that range beside the periodic course in time (source of 400 Ω, 0.22 to 1.8 µF,
 * load 0.5 to 8 kΩ, 25 Hz).
 * @source our own comparison with a solution in time, which a test repeats
 */
function errorOf(spec: ToneRingerSpec, at: LawPoint): number {
  const ratio = innerAmplitude(spec, at) / spec.threshold.value
  if (ratio >= 3) return 3
  return ratio >= 1.8 ? 9 : 36
}

/** Amplitude of the voltage across rectifier and load, behind the capacitor where there is one, V. */
function innerAmplitude(spec: ToneRingerSpec, at: LawPoint): number {
  const amplitude = Math.SQRT2 * (at.swing?.(0) ?? 0)
  if (spec.capacitance === undefined) return amplitude
  const susceptance = at.omega * spec.capacitance.value
  if (susceptance === 0 || amplitude <= spec.threshold.value) return 0
  const current = (one: number): number => (deadZoneShare(spec.threshold.value, one) / ohmsOf(spec)) * one
  return behindCapacitor(amplitude, current, 1 / susceptance)
}

/** Admittance at a frequency, siemens. */
function admittanceOf(spec: ToneRingerSpec, at: LawPoint): { readonly re: number; readonly im: number } {
  const ohms = ohmsOf(spec)
  const threshold = spec.threshold.value
  const amplitude = Math.SQRT2 * (at.swing?.(0) ?? 0)
  if (spec.capacitance === undefined)
    return { re: deadZoneShare(threshold, amplitude, workingOf(at).voltage) / ohms, im: 0 }
  const susceptance = at.omega * spec.capacitance.value
  if (susceptance === 0 || amplitude <= threshold) return { re: 0, im: 0 }
  const inner = innerAmplitude(spec, at)
  const g = deadZoneShare(threshold, inner) / ohms
  const size = g * g + susceptance * susceptance
  return { re: (g * susceptance * susceptance) / size, im: (g * g * susceptance) / size } // g·jb / (g + jb)
}

export const toneRinger: PartKind<ToneRingerSpec> = {
  kind: 'tone-ringer',
  says: 'A tone ringer: a rectifier, a threshold below which it is silent, and the load of its sounder.',
  meterBlind:
    'shows nothing below its threshold, which no ohm range reaches: whether it sounds shows only when it rings',
  role: 'sounder',
  schema: z.strictObject({
    kind: z.literal('tone-ringer'),
    ...ENDS,
    threshold: describe(quantity('voltage', { above: 0 }), 'voltage up to which nothing flows'),
    load: describe(quantity('resistance', { above: 0 }), 'resistance that the sounder shows beyond it'),
    resistance: z.optional(describe(quantity('resistance'), 'resistance in series; 0 Ω when absent')),
    capacitance: z.optional(
      describe(quantity('capacitance', { above: 0 }), 'capacitor of its own in series; none when absent'),
    ),
    'rings from': describe(
      quantityAt('current', 'frequency', { above: 0 }, { above: 0 }),
      'least current that makes it sound, and at which frequency',
    ),
  }) as unknown as z.ZodMiniType<ToneRingerSpec>,
  branches: (spec) => oneBranch(spec, 'admittance'),
  law(spec, at, _gate, sink) {
    if (at.analysis === 'alternating') {
      const { re, im } = admittanceOf(spec, at)
      sink.admittance(0, re, im)
      return
    }
    const { voltage } = workingOf(at)
    if (spec.capacitance !== undefined || Math.abs(voltage) <= spec.threshold.value) sink.admittance(0, 0, 0)
    else sink.admittance(0, 1 / ohmsOf(spec), 0, (-Math.sign(voltage) * spec.threshold.value) / ohmsOf(spec))
  },
  bends: (spec) => (spec.capacitance === undefined ? ['direct', 'swing'] : ['swing']),
  standIn: (spec, at) =>
    at.analysis === 'alternating'
      ? `tone ringer by its describing function, the fundamental alone: ${errorOf(spec, at)} %`
      : undefined,
  sounds: (spec) => ({ current: spec['rings from'].value.value, frequency: spec['rings from'].at.value }),
  modes: (spec) => [
    opens({ weight: 15, sign: 'silent; draws nothing from the line' }),
    becomes(
      'silent',
      { ...spec, 'rings from': { ...spec['rings from'], value: times(spec['rings from'].value, 1000) } },
      {
        says: 'has a dead sounder',
        family: 'stuck',
        mend: 'renew its sounder',
        sign: 'silent, though it draws its current',
        weight: 20,
      },
    ),
    ...(spec.capacitance === undefined
      ? []
      : [
          becomes(
            'lost-value',
            { ...spec, capacitance: times(spec.capacitance, 0.4) },
            {
              says: 'has a capacitor that lost value',
              family: 'lost-value',
              mend: 'renew its capacitor',
              sign: 'weak or chattering tone; a capacitance range reads low',
              weight: 20,
            },
          ),
        ]),
    leaks(50_000, { weight: 10, sign: 'draws direct current on-hook' }),
    shorts({ weight: 3, sign: 'the line is seized as soon as it is plugged in' }),
  ],
  outline: (spec) =>
    lying(spec, [
      shape([1, 0.3], [3, 0.3], [3, 1.7], [1, 1.7]),
      { arc: [2, 0.8, 0.5, 0, 180] },
      line([1.5, 0.8], [2.5, 0.8]),
    ]),
}
