import * as z from 'zod/mini'
import type { At, Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { quantity, quantityAt } from './fields.ts'
import { seriesRL } from './inductor.ts'
import type { PartKind } from './kind.ts'

/** A polarised bell, its coils as a whole with the clapper held: v = (R + jωL)·i. */
export interface BellSpec extends TwoEnds {
  readonly kind: 'bell'
  readonly resistance: Quantity
  readonly inductance: Quantity
  readonly 'rings from': At
}

export const bell: PartKind<BellSpec> = {
  kind: 'bell',
  says: 'A bell: its coils as a whole, and the least current that makes it ring.',
  role: 'sounder',
  schema: z.strictObject({
    kind: z.literal('bell'),
    ...ENDS,
    resistance: describe(quantity('resistance'), 'direct-current resistance of the coils together'),
    inductance: describe(quantity('inductance', { above: 0 }), 'inductance of the coils together'),
    'rings from': describe(
      quantityAt('current', 'frequency'),
      'least current that rings it, and at which frequency',
    ),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, at, _gate, sink) => seriesRL(sink, at, spec.resistance.value, spec.inductance.value),
  standIn: (_spec, at) => (at.analysis === 'alternating' ? 'bell with its clapper held still' : undefined),
  sounds: (spec) => ({ current: spec['rings from'].value.value, frequency: spec['rings from'].at.value }),
}
