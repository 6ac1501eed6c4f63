import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, leaks, opens, resists, shorts, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { line, lying } from './symbols.ts'

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
  elements: (spec, _at, _gate, sink) =>
    sink.beside(0, spec.leakage?.value ?? Number.POSITIVE_INFINITY, spec.capacitance.value),
  modes: (spec) => [
    leaks(100_000, {
      weight: 120,
      sign: 'old paper: bulging ends, wax or tar run out; an ohm range settles low',
    }),
    becomes(
      'lost-value',
      { ...spec, capacitance: times(spec.capacitance, 0.5) },
      {
        says: 'has lost half of its capacitance',
        family: 'lost-value',
        sign: 'nothing to be seen; a capacitance range reads low, the kick on an ohm range is small',
        weight: 40,
      },
    ),
    resists('lossy', 1000, {
      weight: 15,
      sign: 'nothing to be seen; a bad joint inside',
      says: 'has a lossy joint inside',
      mend: 'renew it by one of the same value',
    }),
    shorts({ weight: 15, sign: 'an ohm range reads next to nothing both ways round' }),
    opens({ weight: 10, sign: 'no kick on an ohm range; a lead broken at the can' }),
  ],
  outline: (spec) =>
    lying(spec, [line([1.85, 0.4], [1.85, 1.6]), line([2.15, 0.4], [2.15, 1.6])], 1.85, 2.15),
}
