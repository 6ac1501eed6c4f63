import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, leaks, opens, shorts, times } from './fault-modes.ts'
import { plain, quantity } from './fields.ts'
import type { PartKind } from './kind.ts'
import { oddPower, type Tangent } from './power-law.ts'
import { type SteepLaw, steepStep } from './steep-step.ts'
import { BOX, line, lying } from './symbols.ts'
import { workingOf } from './working.ts'

/** A varistor, I = (V/V₁)^α amperes, odd. With an exponent of 1 it is a resistor of V₁/1 A. */
export interface VaristorSpec extends TwoEnds {
  readonly kind: 'varistor'
  readonly 'voltage at 1 A': Quantity
  readonly exponent: number
}

/** Up to this current a step is believed as it stands, amperes. Our own choice; it changes no answer. */
const STEEP_FROM = 1e-5

/** Current and slope at a voltage, A and S. @source the definition of the varistor's law (design 6) */
function carried(spec: VaristorSpec, voltage: number): Tangent {
  const unit = spec['voltage at 1 A'].value
  const { value, slope } = oddPower(voltage / unit, spec.exponent)
  return { value, slope: slope / unit }
}

function steep(spec: VaristorSpec): SteepLaw {
  const inverse = (current: number): number => spec['voltage at 1 A'].value * current ** (1 / spec.exponent)
  return { inverse, knee: inverse(STEEP_FROM) }
}

/**
 * The slope from which Newton starts at exactly 0 V, S: the chord to the knee, which carries the same 0 A there. The
 * tangent is level, and what hangs on varistors alone would never be found.
 */
function startOf(spec: VaristorSpec): number {
  return STEEP_FROM / steep(spec).knee
}

export const varistor: PartKind<VaristorSpec> = {
  kind: 'varistor',
  says: 'A voltage-dependent resistor that clips clicks and surges.',
  meterBlind:
    'clips at voltages and currents that no ohm range brings: it shows what leaks, not whether it still clips',
  schema: z.strictObject({
    kind: z.literal('varistor'),
    ...ENDS,
    'voltage at 1 A': describe(quantity('voltage', { min: 1e-3 }), 'V₁ in I = (V/V₁)^α amperes'),
    exponent: describe(plain(1, 60), 'α in I = (V/V₁)^α amperes'),
  }),
  branches: (spec) => oneBranch(spec, 'admittance'),
  law(spec, at, _gate, sink) {
    const { voltage } = workingOf(at)
    const { value, slope } = carried(spec, voltage)
    if (at.analysis === 'alternating') sink.admittance(0, slope, 0)
    else if (voltage === 0 && at.direct !== undefined) sink.admittance(0, startOf(spec), 0)
    else sink.admittance(0, slope, 0, value - slope * voltage)
  },
  bends: (spec) => (spec.exponent === 1 ? [] : ['direct']),
  settle(spec, _branch, next, before) {
    if (spec.exponent === 1) return next
    const voltage = steepStep(steep(spec), before.voltage, next.voltage, next.current, true)
    return voltage === next.voltage ? next : { voltage, current: carried(spec, voltage).value }
  },
  modes: (spec) => [
    leaks(10_000, { weight: 10, sign: 'an ohm range reads too low both ways round' }),
    becomes(
      'drifted',
      { ...spec, 'voltage at 1 A': times(spec['voltage at 1 A'], 0.7) },
      {
        says: 'clips too early',
        family: 'drifted',
        sign: 'speech is faint; nothing to be seen',
        weight: 8,
      },
    ),
    shorts({ weight: 3, sign: 'burnt or burst by a surge; an ohm range reads next to nothing' }),
    opens({ weight: 5, sign: 'clicks are loud; a lead broken off' }),
  ],
  outline: (spec) =>
    lying(spec, [BOX, line([1.1, 1.8], [1.5, 1.8], [2.7, 0.2]), { letters: 'U', at: [2.9, 1.8] }]),
}
