import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { opens, resists } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { openLaw } from './open-law.ts'
import { line, lying } from './symbols.ts'

/** A strap or a core: a link with a small resistance that may be open. */
export interface StrapPartSpec extends TwoEnds {
  readonly kind: 'strap'
  readonly resistance?: Quantity | 'open'
}

/** Resistance of a strap or a core, ohms. Common practice, no source. */
export const STRAP_RESISTANCE = 0.01

export const strap: PartKind<StrapPartSpec> = {
  kind: 'strap',
  says: 'A link of wire or metal between two points.',
  role: 'link',
  schema: z.strictObject({
    kind: z.literal('strap'),
    ...ENDS,
    resistance: z.optional(
      describe(
        z.union([z.literal('open'), quantity('resistance')]),
        'resistance, or `open`; 10 mΩ when absent',
      ),
    ),
  }) as unknown as z.ZodMiniType<StrapPartSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, _at, gate, sink) {
    if (gate === 'open' || spec.resistance === 'open') openLaw(sink)
    else sink.equation(0, 1, spec.resistance?.value ?? STRAP_RESISTANCE, 0)
  },
  elements(spec, _at, gate, sink) {
    if (gate === 'open' || spec.resistance === 'open') sink.open(0)
    else sink.series(0, spec.resistance?.value ?? STRAP_RESISTANCE, 0)
  },
  modes: () => [
    opens({ weight: 10, sign: 'a loose screw or a broken wire', says: 'is broken or loose' }),
    resists('high-resistance', 20, {
      weight: 15,
      sign: 'a dull, corroded or loose joint; it changes when moved',
    }),
  ],
  outline: (spec) => lying(spec, [line([1, 1], [3, 1])]),
}
