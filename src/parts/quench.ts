import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { quantity } from './fields.ts'
import type { PartKind } from './kind.ts'

/** A spark quench: resistance and capacitance in series; i = v / (R + 1/(jωC)). */
export interface QuenchSpec extends TwoEnds {
  readonly kind: 'quench'
  readonly resistance: Quantity
  readonly capacitance: Quantity
}

export const quench: PartKind<QuenchSpec> = {
  kind: 'quench',
  says: 'A spark quench: a resistor and a capacitor in series across a contact.',
  role: 'quench',
  schema: z.strictObject({
    kind: z.literal('quench'),
    ...ENDS,
    resistance: describe(quantity('resistance'), 'series resistance'),
    capacitance: describe(quantity('capacitance', { above: 0 }), 'series capacitance'),
  }),
  branches: (spec) => oneBranch(spec, 'admittance'),
  law(spec, at, _gate, sink) {
    if (at.analysis === 'direct') {
      sink.admittance(0, 0, 0)
      return
    }
    // y = jωC / (1 + jωRC) = (x²/R' + jx)/(…) with x = ωC, written without dividing by R so that R = 0 is legal
    const x = at.omega * spec.capacitance.value
    const rx = spec.resistance.value * x
    const scale = x / (1 + rx * rx)
    sink.admittance(0, scale * rx, scale)
  },
}
