import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { quantity } from './fields.ts'
import type { PartKind } from './kind.ts'

/** A capacitor, C in farads, with an optional leakage resistance beside it; i = (G + jωC)·v. */
export interface CapacitorSpec extends TwoEnds {
  readonly kind: 'capacitor'
  readonly capacitance: Quantity
  readonly leakage?: Quantity
}

export const capacitor: PartKind<CapacitorSpec> = {
  kind: 'capacitor',
  says: 'A capacitor, perhaps leaky.',
  schema: z.strictObject({
    kind: z.literal('capacitor'),
    ...ENDS,
    capacitance: describe(quantity('capacitance'), 'capacitance, with its tolerance where known'),
    leakage: z.optional(
      describe(quantity('resistance', { above: 0 }), 'insulation resistance; none when absent'),
    ),
  }) as unknown as z.ZodMiniType<CapacitorSpec>,
  branches: (spec) => oneBranch(spec, 'admittance'),
  law(spec, at, _gate, sink) {
    const leak = spec.leakage === undefined ? 0 : 1 / spec.leakage.value
    sink.admittance(0, leak, at.analysis === 'direct' ? 0 : at.omega * spec.capacitance.value)
  },
}
