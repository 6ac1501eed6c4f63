import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { LawPoint, LawSink, PartKind } from './kind.ts'
import { lying, turns } from './symbols.ts'

/** An inductor, L in henries, with its winding resistance; v = (R + jωL)·i. */
export interface InductorSpec extends TwoEnds {
  readonly kind: 'inductor'
  readonly inductance: Quantity
  readonly resistance?: Quantity
}

/** The law of a resistance and an inductance in series, for every part that is one. */
export function seriesRL(sink: LawSink, at: LawPoint, r: number, l: number): void {
  sink.equation(0, 1, r, at.analysis === 'direct' ? 0 : at.omega * l)
}

export const inductor: PartKind<InductorSpec> = {
  kind: 'inductor',
  says: 'A single coil with its winding resistance.',
  role: 'winding',
  schema: z.strictObject({
    kind: z.literal('inductor'),
    ...ENDS,
    inductance: describe(quantity('inductance'), 'inductance'),
    resistance: z.optional(describe(quantity('resistance'), 'winding resistance; 0 Ω when absent')),
  }) as unknown as z.ZodMiniType<InductorSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law: (spec, at, _gate, sink) => seriesRL(sink, at, spec.resistance?.value ?? 0, spec.inductance.value),
  elements: (spec, _at, _gate, sink) => sink.series(0, spec.resistance?.value ?? 0, spec.inductance.value),
  modes: (spec) => [
    opens({ weight: 8, sign: 'green corrosion at a lead-out wire; the meter reads nothing' }),
    becomes('shorted-turns', shortedTurns(spec), {
      says: 'has shorted turns',
      family: 'shorted-turns',
      sign: 'the direct resistance reads a little low; nothing to be seen',
      weight: 5,
    }),
    shorts({ weight: 1, sign: 'a lead touches the other' }),
  ],
  outline: (spec) => lying(spec, turns(1, 1)),
}

/** A coil some of whose turns are shorted: little of the inductance is left, most of the resistance is. From memory. */
function shortedTurns(spec: InductorSpec): InductorSpec {
  const { resistance } = spec
  return {
    ...spec,
    inductance: times(spec.inductance, 0.3),
    ...(resistance === undefined ? {} : { resistance: times(resistance, 0.9) }),
  }
}
