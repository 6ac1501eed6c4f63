import * as z from 'zod/mini'
import type { Phasor, Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { phasor, quantity } from './fields.ts'
import type { LawPoint, PartKind } from './kind.ts'

/** An ideal source; `direct` counts in DC, `alternating` (rms, e^{+jωt}) in AC; absent means zero. */
export interface SourceSpec extends TwoEnds {
  readonly kind: 'voltage-source' | 'current-source'
  readonly direct?: Quantity
  readonly alternating?: Phasor
}

function valueAt(spec: SourceSpec, at: LawPoint): readonly [number, number] {
  if (at.analysis === 'direct') return [spec.direct?.value ?? 0, 0]
  const { alternating } = spec
  if (alternating === undefined) return [0, 0]
  const size = alternating.magnitude.value
  return [size * Math.cos(alternating.angle), size * Math.sin(alternating.angle)]
}

/** V(from) − V(to) = e: the first-named end is the positive one. */
export const voltageSource: PartKind<SourceSpec> = {
  kind: 'voltage-source',
  says: 'An ideal voltage source; its first-named end is the positive one.',
  role: 'source',
  schema: z.strictObject({
    kind: z.literal('voltage-source'),
    ...ENDS,
    direct: z.optional(describe(quantity('voltage'), 'direct voltage; 0 V when absent')),
    alternating: z.optional(
      describe(phasor('voltage'), 'alternating voltage, rms, with its angle; 0 V when absent'),
    ),
  }) as unknown as z.ZodMiniType<SourceSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, _gate, sink) {
    const [re, im] = valueAt(spec, at)
    sink.equation(0, 1, 0, 0, re, im)
  },
}

/** i = j, from the first-named end through the source to the second. */
export const currentSource: PartKind<SourceSpec> = {
  kind: 'current-source',
  says: 'An ideal current source; it drives its current from the first-named end through itself to the second.',
  role: 'source',
  schema: z.strictObject({
    kind: z.literal('current-source'),
    ...ENDS,
    direct: z.optional(describe(quantity('current'), 'direct current; 0 A when absent')),
    alternating: z.optional(
      describe(phasor('current'), 'alternating current, rms, with its angle; 0 A when absent'),
    ),
  }) as unknown as z.ZodMiniType<SourceSpec>,
  branches: (spec) => oneBranch(spec, 'admittance'),
  law(spec, at, _gate, sink) {
    const [re, im] = valueAt(spec, at)
    sink.admittance(0, 0, 0, re, im)
  },
}
