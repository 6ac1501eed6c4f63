import * as z from 'zod/mini'
import type { At } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { plain, quantityAt } from './fields.ts'
import type { PartKind } from './kind.ts'
import { circle, line, lying } from './symbols.ts'
import { workingOf } from './working.ts'

/**
 * A carbon transmitter: V = R(I)·I with R(I) = R₀ (|I|/I₀)^−p, held constant below 5 mA. Small signals find the
 * chord R(I) at the direct current: the grains do not move in the time of a period (design 6).
 */
export interface TransmitterSpec extends TwoEnds {
  readonly kind: 'transmitter'
  readonly resistance: At
  readonly 'falls with exponent': number
}

/** Below this current the resistance of a transmitter no longer changes, A. Our own choice (design 6). */
export const TRANSMITTER_HELD_BELOW = 0.005

/** R(I) in ohms at a direct current in amperes. */
export function transmitterResistance(spec: TransmitterSpec, current: number): number {
  const { value, at } = spec.resistance
  const ratio = Math.max(Math.abs(current), TRANSMITTER_HELD_BELOW) / at.value
  return value.value * ratio ** -spec['falls with exponent']
}

export const transmitter: PartKind<TransmitterSpec> = {
  kind: 'transmitter',
  says: 'A carbon transmitter, whose resistance falls with the current that feeds it.',
  role: 'sender',
  schema: z.strictObject({
    kind: z.literal('transmitter'),
    ...ENDS,
    resistance: describe(
      quantityAt('resistance', 'current', {}, { above: 0 }),
      'resistance, and the feed current at which it has it',
    ),
    'falls with exponent': describe(plain(0, 0.8), 'p in R = R₀ (I/I₀)^−p'),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, _gate, sink) {
    const { current } = workingOf(at)
    const chord = transmitterResistance(spec, current)
    const p = spec['falls with exponent']
    if (at.analysis === 'alternating' || Math.abs(current) < TRANSMITTER_HELD_BELOW)
      sink.equation(0, 1, chord, 0)
    else sink.equation(0, 1, (1 - p) * chord, 0, p * chord * current) // dV/dI = (1 − p)·R
  },
  bends: (spec) => (spec['falls with exponent'] === 0 ? [] : ['direct']),
  modes: (spec) => [
    becomes(
      'packed',
      { ...spec, resistance: { ...spec.resistance, value: times(spec.resistance.value, 3) } },
      {
        says: 'is packed',
        family: 'packed',
        mend: 'knock it gently and shake it with no current flowing; renew its capsule where that does not last',
        sign: 'faint or crackling speech that a knock or a shake changes; reads high',
        weight: 80,
      },
    ),
    becomes(
      'damp',
      { ...spec, resistance: { ...spec.resistance, value: times(spec.resistance.value, 0.4) } },
      {
        says: 'has let in damp and caked',
        family: 'damp',
        mend: 'renew its capsule: dried grains stay caked',
        sign: 'faint speech that shaking hardly changes; reads low and steady',
        weight: 30,
      },
    ),
    opens({ weight: 15, sign: 'no side tone, no scrape on an ohm range; a broken spring or lead' }),
    shorts({ weight: 3, sign: 'no side tone, though the loop current flows' }),
  ],
  outline: (spec) =>
    lying(spec, [circle(2, 1, 0.8), line([1.2, 0.1], [2.8, 0.1]), line([2, 0.1], [2, 0.2])], 1.2, 2.8),
}
