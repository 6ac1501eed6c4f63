import * as z from 'zod/mini'
import { ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { leaks, opens, shorts } from './fault-modes.ts'
import {
  checkJunction,
  JUNCTION_KEYS,
  type JunctionSpec,
  junctionLaw,
  junctionOf,
  junctionStandIn,
  settleJunction,
} from './junction.ts'
import type { PartKind } from './kind.ts'
import { line, lying, shape } from './symbols.ts'

/** A diode from its anode to its cathode; for small signals its slope at the direct current. */
export interface DiodeSpec extends TwoEnds, JunctionSpec {
  readonly kind: 'diode'
}

export const diode: PartKind<DiodeSpec> = {
  kind: 'diode',
  says: 'A diode: it conducts from its first-named end, the anode, to its second, the cathode.',
  schema: z.strictObject({
    kind: z.literal('diode'),
    ...ENDS,
    ...JUNCTION_KEYS,
  }) as unknown as z.ZodMiniType<DiodeSpec>,
  branches: (spec) => oneBranch(spec, 'admittance'),
  law: (spec, at, _gate, sink) => junctionLaw(junctionOf(spec), at, 0, sink),
  bends: () => ['direct'],
  settle: (spec, _branch, next, before) => settleJunction(spec, next, before),
  standIn: (_spec, at) => junctionStandIn(at, 1),
  check: checkJunction,
  modes: () => [
    shorts({ weight: 6, sign: 'an ohm range reads next to nothing both ways round' }),
    opens({ weight: 3, sign: 'an ohm range reads nothing either way round' }),
    leaks(10_000, { weight: 3, sign: 'conducts a little the wrong way round' }),
  ],
  outline: (spec) =>
    lying(spec, [shape([1.4, 0.5], [1.4, 1.5], [2.6, 1]), line([2.6, 0.5], [2.6, 1.5])], 1.4, 2.6),
}
