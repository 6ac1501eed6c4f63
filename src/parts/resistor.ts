import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, EQUATION_BELOW, oneBranch, type TwoEnds } from './ends.ts'
import { quantity } from './fields.ts'
import type { Form, PartKind } from './kind.ts'

/** A linear resistor, R in ohms; v = R·i. */
export interface ResistorSpec extends TwoEnds {
  readonly kind: 'resistor'
  readonly resistance: Quantity
}

function form(spec: ResistorSpec): Form {
  return spec.resistance.value < EQUATION_BELOW ? 'equation' : 'admittance'
}

export const resistor: PartKind<ResistorSpec> = {
  kind: 'resistor',
  says: 'A resistor.',
  schema: z.strictObject({
    kind: z.literal('resistor'),
    ...ENDS,
    resistance: describe(quantity('resistance'), 'resistance, with its tolerance where known'),
  }),
  branches: (spec) => oneBranch(spec, form(spec)),
  law(spec, _at, _gate, sink) {
    const r = spec.resistance.value
    if (form(spec) === 'equation') sink.equation(0, 1, r, 0)
    else sink.admittance(0, 1 / r, 0)
  },
}
