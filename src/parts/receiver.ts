import * as z from 'zod/mini'
import { formatExactly } from '../quantities/format.ts'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import { seriesRL } from './inductor.ts'
import type { PartKind } from './kind.ts'
import { line, lying, shape } from './symbols.ts'

/** A receiver: v = (R + jωL)·i; its sound follows its current. */
export interface ReceiverSpec extends TwoEnds {
  readonly kind: 'receiver'
  readonly resistance: Quantity
  readonly inductance: Quantity
  /** dB against 1 Pa/A; 40 dB when absent. */
  readonly sensitivity?: Quantity
}

/** Sound of a receiver for its current where the sheet is silent, dB against 1 Pa/A. From memory, low confidence. */
export const USUAL_SENSITIVITY = 40

export const receiver: PartKind<ReceiverSpec> = {
  kind: 'receiver',
  says: 'A receiver: the earpiece in the handset.',
  role: 'receiver',
  schema: z.strictObject({
    kind: z.literal('receiver'),
    ...ENDS,
    resistance: describe(quantity('resistance'), 'direct-current resistance'),
    inductance: describe(quantity('inductance'), 'inductance'),
    sensitivity: z.optional(
      describe(
        quantity('level'),
        `sound pressure for a current, in dB against 1 Pa/A; ${USUAL_SENSITIVITY} dB when absent`,
      ),
    ),
  }) as unknown as z.ZodMiniType<ReceiverSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, at, _gate, sink) => seriesRL(sink, at, spec.resistance.value, spec.inductance.value),
  elements: (spec, _at, _gate, sink) => sink.series(0, spec.resistance.value, spec.inductance.value),
  modes: (spec) => [
    becomes(
      'weak-magnet',
      { ...spec, sensitivity: weaker(spec.sensitivity) },
      {
        says: 'has a weak magnet',
        family: 'weak-magnet',
        mend: 'have its magnet charged again, or renew the receiver',
        sign: 'faint, hollow speech; the diaphragm hardly sticks to its seat',
        weight: 30,
      },
    ),
    becomes(
      'shorted-turns',
      { ...spec, resistance: times(spec.resistance, 0.9), inductance: times(spec.inductance, 0.3) },
      {
        says: 'has shorted turns',
        family: 'shorted-turns',
        sign: 'faint and tinny; the direct resistance reads a little low',
        weight: 5,
      },
    ),
    opens({ weight: 15, sign: 'silent; no click on an ohm range' }),
    shorts({ weight: 4, sign: 'silent; no click, and an ohm range reads next to nothing' }),
  ],
  outline: (spec) =>
    lying(
      spec,
      [
        shape([1.2, 0.5], [2.8, 0.5], [2.8, 1.5], [1.2, 1.5]),
        line([1, 0.2], [3, 0.2]),
        line([2, 0.2], [2, 0.5]),
      ],
      1.2,
      2.8,
    ),
}

/** Ten decibels less than it was, or than a receiver usually is. */
function weaker(sensitivity: Quantity | undefined): Quantity {
  const value = (sensitivity?.value ?? USUAL_SENSITIVITY) - 10
  return { value, unit: 'dB', text: formatExactly(value, 'dB') }
}
