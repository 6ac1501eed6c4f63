import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { plain, quantity } from './fields.ts'
import type { PartKind } from './kind.ts'

/** A varistor, I = (V/V₁)^α amperes, odd; in this version open. */
export interface VaristorSpec extends TwoEnds {
  readonly kind: 'varistor'
  readonly 'voltage at 1 A': Quantity
  readonly exponent: number
}

/** A gas tube: nothing below its hold-off voltage; in this version open. */
export interface GasTubeSpec extends TwoEnds {
  readonly kind: 'gas-tube'
  readonly 'holds off': Quantity
}

export const varistor: PartKind<VaristorSpec> = {
  kind: 'varistor',
  says: 'A voltage-dependent resistor that clips clicks and surges.',
  schema: z.strictObject({
    kind: z.literal('varistor'),
    ...ENDS,
    'voltage at 1 A': describe(quantity('voltage', { above: 0 }), 'V₁ in I = (V/V₁)^α amperes'),
    exponent: describe(plain(1, 60), 'α in I = (V/V₁)^α amperes'),
  }),
  branches: (spec) => oneBranch(spec, 'admittance'),
  law: (_spec, _at, _gate, sink) => sink.admittance(0, 0, 0),
  standIn: () => 'varistor taken as open',
}

export const gasTube: PartKind<GasTubeSpec> = {
  kind: 'gas-tube',
  says: 'A gas-filled surge arrester.',
  schema: z.strictObject({
    kind: z.literal('gas-tube'),
    ...ENDS,
    'holds off': describe(quantity('voltage', { above: 0 }), 'voltage below which it does not strike'),
  }),
  branches: (spec) => oneBranch(spec, 'admittance'),
  law: (_spec, _at, _gate, sink) => sink.admittance(0, 0, 0),
  standIn: () => 'gas tube taken as open',
}
