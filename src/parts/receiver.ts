import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { quantity } from './fields.ts'
import { seriesRL } from './inductor.ts'
import type { PartKind } from './kind.ts'

/** A receiver: v = (R + jωL)·i; its sound follows its current. */
export interface ReceiverSpec extends TwoEnds {
  readonly kind: 'receiver'
  readonly resistance: Quantity
  readonly inductance: Quantity
}

export const receiver: PartKind<ReceiverSpec> = {
  kind: 'receiver',
  says: 'A receiver: the earpiece in the handset.',
  role: 'receiver',
  schema: z.strictObject({
    kind: z.literal('receiver'),
    ...ENDS,
    resistance: describe(quantity('resistance'), 'direct-current resistance'),
    inductance: describe(quantity('inductance'), 'inductance'),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, at, _gate, sink) => seriesRL(sink, at, spec.resistance.value, spec.inductance.value),
}
