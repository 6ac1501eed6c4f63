import * as z from 'zod/mini'
import { describe, ENDS, oneBranch } from './ends.ts'
import { phasor, quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { type SourceSpec, sourceValue } from './source-value.ts'
import { circle, line, lying } from './symbols.ts'

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
    const [re, im] = sourceValue(spec, at)
    sink.admittance(0, 0, 0, re, im)
  },
  elements(spec, at, _gate, sink) {
    const [re, im] = sourceValue(spec, at)
    sink.beside(0, Number.POSITIVE_INFINITY, 0, re, im)
  },
  outline: (spec) => lying(spec, [circle(2, 1, 0.8), line([2, 0.2], [2, 1.8])], 1.2, 2.8),
}
