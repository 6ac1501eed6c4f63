import * as z from 'zod/mini'
import { describe, ENDS, oneBranch } from './ends.ts'
import { phasor, quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { type SourceSpec, sourceValue } from './source-value.ts'
import { circle, line, lying } from './symbols.ts'

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
    const [re, im] = sourceValue(spec, at)
    sink.equation(0, 1, 0, 0, re, im)
  },
  elements(spec, at, _gate, sink) {
    const [re, im] = sourceValue(spec, at)
    sink.series(0, 0, 0, re, im)
  },
  outline: (spec) => lying(spec, [circle(2, 1, 0.8), line([1.2, 1], [2.8, 1])], 1.2, 2.8),
}
