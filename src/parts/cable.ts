import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { cableBranches, cableLaw, cableModes, cableOutline, type WireEnds } from './cable-run.ts'
import { describe } from './ends.ts'
import type { CableConstants } from './equivalent-pi.ts'
import { end, quantity } from './fields.ts'
import type { PartKind, PartSpec } from './kind.ts'

/**
 * A pair of a uniform cable by its constants per kilometre, exactly at every length and frequency: R and L of the
 * loop, C and G between the wires. Branches `a`, `b`, and the shunts `near-a-b`, `far-a-b` of its equivalent π.
 */
export interface CableSpec extends PartSpec {
  readonly kind: 'cable'
  readonly 'from a': string
  readonly 'from b': string
  readonly 'to a': string
  readonly 'to b': string
  readonly length: Quantity
  readonly 'resistance per km': Quantity
  readonly 'capacitance per km': Quantity
  readonly 'inductance per km'?: Quantity
  readonly 'leakance per km'?: Quantity
}

/** The constants of the whole length, of one wire and between the two. */
export function constantsOf(spec: CableSpec): CableConstants {
  const kilometres = spec.length.value / 1000
  return {
    resistance: (spec['resistance per km'].value / 2) * kilometres,
    inductance: ((spec['inductance per km']?.value ?? 0) / 2) * kilometres,
    capacitance: spec['capacitance per km'].value * kilometres,
    leakance: (spec['leakance per km']?.value ?? 0) * kilometres,
  }
}

function wiresOf(spec: CableSpec): Readonly<Record<'a' | 'b', WireEnds>> {
  return {
    a: { from: spec['from a'], to: spec['to a'] },
    b: { from: spec['from b'], to: spec['to b'] },
  }
}

export const cable: PartKind<CableSpec> = {
  kind: 'cable',
  says: 'A pair of a uniform cable by its constants per kilometre, exact at every length and frequency.',
  schema: z.strictObject({
    kind: z.literal('cable'),
    'from a': describe(end(), 'near end of the a wire; current is positive from here'),
    'from b': describe(end(), 'near end of the b wire; current is positive from here'),
    'to a': describe(end(), 'far end of the a wire'),
    'to b': describe(end(), 'far end of the b wire'),
    length: describe(quantity('length', { min: 0 }), 'length of the cable, there'),
    'resistance per km': describe(
      quantity('resistance'),
      'resistance of a kilometre of the loop, both wires together',
    ),
    'capacitance per km': describe(quantity('capacitance'), 'capacitance of a kilometre between the wires'),
    'inductance per km': z.optional(
      describe(quantity('inductance'), 'inductance of a kilometre of the loop; 0 H when absent'),
    ),
    'leakance per km': z.optional(
      describe(quantity('conductance'), 'conductance of a kilometre between the wires; 0 S when absent'),
    ),
  }) as unknown as z.ZodMiniType<CableSpec>,
  branches: (spec) => cableBranches(wiresOf(spec)),
  law: (spec, at, _gate, sink) => cableLaw(constantsOf(spec), 2, at, sink),
  modes: () => cableModes(['a', 'b']),
  outline: (spec) => cableOutline(Object.values(wiresOf(spec))),
}
