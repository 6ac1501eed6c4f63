import * as z from 'zod/mini'
import type { At } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { plain, quantityAt } from './fields.ts'
import type { PartKind } from './kind.ts'
import { type SteepLaw, steepStep } from './steep-step.ts'
import { BOX, line, lying } from './symbols.ts'
import { workingOf } from './working.ts'

/**
 * A resistance that rises with its current: V = R(I)·I with R(I) = R₀ (|I|/I₀)^q, held constant below a
 * hundredth of I₀. It follows slowly, by its own warmth, so that small signals find the chord R(I) at the direct
 * current. From memory: regulating lamps and barretters need tenths of a second.
 */
export interface CurrentResistorSpec extends TwoEnds {
  readonly kind: 'current-resistor'
  readonly resistance: At
  readonly 'rises with exponent': number
}

/** Below this share of I₀ the resistance no longer changes. Our own choice. */
export const RESISTANCE_HELD_BELOW = 0.01
/** From this share of I₀ the law counts as steep; it changes no answer. */
const STEEP_FROM = 0.1

/** R(I) in ohms at a direct current in amperes. */
export function risingResistance(spec: CurrentResistorSpec, current: number): number {
  const { value, at } = spec.resistance
  const ratio = Math.max(Math.abs(current / at.value), RESISTANCE_HELD_BELOW)
  return value.value * ratio ** spec['rises with exponent']
}

/** The current at a voltage of at least 0, A; beyond the held part V = V₀ (I/I₀)^(1 + q). */
function currentAt(spec: CurrentResistorSpec, voltage: number): number {
  const { value, at } = spec.resistance
  const unit = at.value
  const current = unit * (voltage / (value.value * unit)) ** (1 / (1 + spec['rises with exponent']))
  if (current >= RESISTANCE_HELD_BELOW * unit) return current
  return voltage / risingResistance(spec, 0)
}

function steep(spec: CurrentResistorSpec): SteepLaw {
  return {
    inverse: (voltage) => currentAt(spec, voltage),
    knee: STEEP_FROM * spec.resistance.at.value,
  }
}

export const currentResistor: PartKind<CurrentResistorSpec> = {
  kind: 'current-resistor',
  says: 'A resistance that rises with its current, as in a regulating unit.',
  meterBlind: 'reads what it has at the current of the meter, not at that of the loop',
  schema: z.strictObject({
    kind: z.literal('current-resistor'),
    ...ENDS,
    resistance: describe(
      quantityAt('resistance', 'current', {}, { above: 0 }),
      'resistance, and the current at which it has it',
    ),
    'rises with exponent': describe(plain(0, 4), 'q in R = R₀ (I/I₀)^q'),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, _gate, sink) {
    const { current } = workingOf(at)
    const chord = risingResistance(spec, current)
    const q = spec['rises with exponent']
    const held = Math.abs(current) < RESISTANCE_HELD_BELOW * spec.resistance.at.value
    if (at.analysis === 'alternating' || held) sink.equation(0, 1, chord, 0)
    else sink.equation(0, 1, (1 + q) * chord, 0, -q * chord * current) // dV/dI = (1 + q)·R
  },
  bends: (spec) => (spec['rises with exponent'] === 0 ? [] : ['direct']),
  settle(spec, _branch, next, before) {
    if (spec.resistance.value.value === 0) return next
    const current = steepStep(steep(spec), before.current, next.current, next.voltage, true)
    return current === next.current ? next : { voltage: risingResistance(spec, current) * current, current }
  },
  modes: (spec) => [
    opens({ weight: 15, sign: 'burnt through; the set is dead with its unit in' }),
    becomes(
      'drifted-up',
      { ...spec, resistance: { ...spec.resistance, value: times(spec.resistance.value, 2) } },
      {
        says: 'has twice its resistance',
        family: 'drifted',
        sign: 'faint on long lines; nothing to be seen',
        weight: 10,
      },
    ),
    shorts({ weight: 2, sign: 'too loud on short lines' }),
  ],
  outline: (spec) =>
    lying(spec, [BOX, line([1.1, 1.8], [1.5, 1.8], [2.7, 0.2]), { letters: 'I', at: [2.9, 1.8] }]),
}
