import * as z from 'zod/mini'
import { formatQuantity } from '../quantities/format.ts'
import type { At } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { plain, quantityAt } from './fields.ts'
import type { LawSink, PartKind } from './kind.ts'

/** A carbon transmitter: R falls with the feed current; in this version its chord at the stated current. */
export interface TransmitterSpec extends TwoEnds {
  readonly kind: 'transmitter'
  readonly resistance: At
  readonly 'falls with exponent': number
}

/** A resistance that rises with its current, as in a regulating unit; in this version its chord. */
export interface CurrentResistorSpec extends TwoEnds {
  readonly kind: 'current-resistor'
  readonly resistance: At
  readonly 'rises with exponent': number
}

function chord(sink: LawSink, spec: { readonly resistance: At }): void {
  sink.equation(0, 1, spec.resistance.value.value, 0)
}

function reason(what: string, at: At): string {
  const resistance = formatQuantity(at.value.value, at.value.unit)
  return `${what} as the fixed resistance ${resistance} that it has at ${formatQuantity(at.at.value, at.at.unit)}`
}

export const transmitter: PartKind<TransmitterSpec> = {
  kind: 'transmitter',
  says: 'A carbon transmitter, whose resistance falls with the current that feeds it.',
  role: 'sender',
  schema: z.strictObject({
    kind: z.literal('transmitter'),
    ...ENDS,
    resistance: describe(
      quantityAt('resistance', 'current'),
      'resistance, and the feed current at which it has it',
    ),
    'falls with exponent': describe(plain(0, 0.8), 'p in R = R₀ (I/I₀)^−p'),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, _at, _gate, sink) => chord(sink, spec),
  standIn: (spec) => reason('transmitter', spec.resistance),
}

export const currentResistor: PartKind<CurrentResistorSpec> = {
  kind: 'current-resistor',
  says: 'A resistance that rises with its current, as in a regulating unit.',
  schema: z.strictObject({
    kind: z.literal('current-resistor'),
    ...ENDS,
    resistance: describe(
      quantityAt('resistance', 'current'),
      'resistance, and the current at which it has it',
    ),
    'rises with exponent': describe(plain(0, 4), 'q in R = R₀ (I/I₀)^q'),
  }),
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, _at, _gate, sink) => chord(sink, spec),
  standIn: (spec) => reason('current-dependent resistance', spec.resistance),
}
