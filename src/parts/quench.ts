import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, faultMode, leaks, opens, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { line, lying, shape } from './symbols.ts'

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
  modes: (spec) => [
    becomes(
      'lost-value',
      { ...spec, capacitance: times(spec.capacitance, 0.3) },
      {
        says: 'has lost most of its capacitance',
        family: 'lost-value',
        sign: 'sparks at the contact; a capacitance range reads low',
        weight: 30,
      },
    ),
    // a capacitor that leaks or is shorted leaves its resistor in the way
    leaks(100_000 + spec.resistance.value, {
      weight: 80,
      sign: 'bulging ends, wax run out; direct current passes',
    }),
    faultMode({
      mode: 'shorted',
      family: 'shorted',
      says: 'has a shorted capacitor',
      sign: 'an ohm range reads its resistor alone',
      weight: 15,
      change: { across: Math.max(spec.resistance.value, 0.1) },
    }),
    opens({ weight: 10, sign: 'sparks and clicks at the contact; no kick on an ohm range' }),
  ],
  outline: (spec) =>
    lying(
      spec,
      [
        shape([0.6, 0.7], [1.8, 0.7], [1.8, 1.3], [0.6, 1.3]),
        line([1.8, 1], [2.55, 1]),
        line([2.55, 0.4], [2.55, 1.6]),
        line([2.85, 0.4], [2.85, 1.6]),
      ],
      0.6,
      2.85,
    ),
}
