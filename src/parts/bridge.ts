import * as z from 'zod/mini'
import { describe } from './ends.ts'
import { leaks, opens, shorts } from './fault-modes.ts'
import { end } from './fields.ts'
import {
  checkJunction,
  JUNCTION_KEYS,
  type JunctionSpec,
  junctionLaw,
  junctionOf,
  junctionStandIn,
  settleJunction,
} from './junction.ts'
import type { BranchPlan, PartKind, PartSpec } from './kind.ts'
import { line, outlineOf, shape } from './symbols.ts'

/** A bridge of four equal diodes; whichever way round `first` and `second` are fed, `plus` is positive to `minus`. */
export interface BridgeSpec extends PartSpec, JunctionSpec {
  readonly kind: 'bridge'
  readonly first: string
  readonly second: string
  readonly plus: string
  readonly minus: string
}

/** The four diodes, each from anode to cathode. */
function diodes({ first, second, plus, minus }: BridgeSpec): readonly BranchPlan[] {
  return [
    { suffix: 'first-plus', from: first, to: plus, form: 'admittance' },
    { suffix: 'second-plus', from: second, to: plus, form: 'admittance' },
    { suffix: 'minus-first', from: minus, to: first, form: 'admittance' },
    { suffix: 'minus-second', from: minus, to: second, form: 'admittance' },
  ]
}

export const bridge: PartKind<BridgeSpec> = {
  kind: 'bridge',
  says: 'A bridge of four equal diodes between two ends of either polarity and a positive and a negative end.',
  schema: z.strictObject({
    kind: z.literal('bridge'),
    first: describe(end(), 'one of the two ends that may have either polarity'),
    second: describe(end(), 'the other'),
    plus: describe(end(), 'end that is always positive: the cathodes'),
    minus: describe(end(), 'end that is always negative: the anodes'),
    ...JUNCTION_KEYS,
  }) as unknown as z.ZodMiniType<BridgeSpec>,
  branches: diodes,
  law(spec, at, _gate, sink) {
    const junction = junctionOf(spec)
    for (let branch = 0; branch < 4; branch += 1) junctionLaw(junction, at, branch, sink)
  },
  bends: () => ['direct'],
  settle: (spec, _branch, next, before) => settleJunction(spec, next, before),
  standIn: (_spec, at) => junctionStandIn(at, 4),
  check: checkJunction,
  modes: (spec) =>
    diodes(spec).flatMap(({ suffix }, branch) => {
      const of = { branch, name: suffix, called: `the diode ${suffix}` }
      return [
        shorts({ of, weight: 3, sign: 'dead with one polarity of the line' }),
        opens({ of, weight: 2, sign: 'dead with one polarity of the line' }),
        leaks(10_000, {
          of,
          weight: 2,
          sign: 'draws current with one polarity on-hook',
        }),
      ]
    }),
  outline: ({ first, second, plus, minus }) =>
    outlineOf(
      4,
      4,
      [
        [first, [2, 0]],
        [second, [2, 4]],
        [plus, [4, 2]],
        [minus, [0, 2]],
      ],
      [
        shape([2, 0.4], [3.6, 2], [2, 3.6], [0.4, 2]),
        line([2, 0], [2, 0.4]),
        line([2, 3.6], [2, 4]),
        line([3.6, 2], [4, 2]),
        line([0, 2], [0.4, 2]),
        shape([1.4, 1.5], [1.4, 2.5], [2.6, 2]),
        line([2.6, 1.5], [2.6, 2.5]),
        line([1, 2], [1.4, 2]),
        line([2.6, 2], [3, 2]),
      ],
    ),
}
