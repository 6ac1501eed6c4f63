import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, leaks, opens, shorts, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { PartKind, Working } from './kind.ts'
import { openLaw } from './open-law.ts'
import { circle, line, lying } from './symbols.ts'
import { workingOf } from './working.ts'

/**
 * A gas tube: open up to its hold-off voltage; struck by more, it carries whatever current comes at its arc
 * voltage, and stays struck while a current flows. For alternating current it is what direct current leaves
 * it: open, or a struck arc.
 */
export interface GasTubeSpec extends TwoEnds {
  readonly kind: 'gas-tube'
  readonly 'holds off': Quantity
  readonly arc?: Quantity
}

/** Voltage of the arc, V, where the sheet is silent. From memory. */
export const ARC_VOLTAGE = 20
/** By how much the arc's voltage rises with its current, ohms. From memory; it lets two struck tubes share. */
export const ARC_SLOPE = 1
/** Current that still holds a struck tube, A. Our own choice: any current that a meter could tell from none. */
const HOLDING = 1e-9
/** Below this current a real tube glows at some 70 V in place of its arc, A. From memory. */
const GLOW_BELOW = 0.1
/** Newton comes to the hold-off voltage in so many steps, so that other parts find their place first. */
const STEPS_TO_STRIKE = 6

function struck(spec: GasTubeSpec, { voltage, current }: Working): boolean {
  return Math.abs(voltage) > spec['holds off'].value || (current * voltage > 0 && Math.abs(current) > HOLDING)
}

function arcOf(spec: GasTubeSpec): number {
  return Math.min(spec.arc?.value ?? ARC_VOLTAGE, spec['holds off'].value)
}

export const gasTube: PartKind<GasTubeSpec> = {
  kind: 'gas-tube',
  says: 'A gas-filled surge arrester.',
  meterBlind:
    'holds off a hundred volts or more, which no range reaches: a right reading says nothing of its health',
  schema: z.strictObject({
    kind: z.literal('gas-tube'),
    ...ENDS,
    'holds off': describe(quantity('voltage', { above: 0 }), 'voltage up to which it does not strike'),
    arc: z.optional(
      describe(quantity('voltage', { above: 0 }), 'voltage across it once struck; 20 V when absent'),
    ),
  }) as unknown as z.ZodMiniType<GasTubeSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, _gate, sink) {
    const working = workingOf(at)
    if (!struck(spec, working)) openLaw(sink)
    else if (at.analysis === 'alternating') sink.equation(0, 1, ARC_SLOPE, 0)
    else sink.equation(0, 1, ARC_SLOPE, 0, working.voltage < 0 ? -arcOf(spec) : arcOf(spec))
  },
  bends: () => ['direct'],
  settle(spec, _branch, next, before) {
    const hold = spec['holds off'].value
    if (struck(spec, before) || Math.abs(next.voltage) <= hold) return next
    const side = next.voltage < 0 ? -1 : 1
    const near = Math.max(0, side * before.voltage)
    if (near >= hold) return next
    return { voltage: side * Math.min(hold, near + hold / STEPS_TO_STRIKE), current: 0 }
  },
  standIn(spec, at) {
    const working = workingOf(at)
    if (!struck(spec, working) || Math.abs(working.current) >= GLOW_BELOW) return undefined
    return 'gas tube by its arc voltage, at a current at which it would glow at a higher one'
  },
  check(spec) {
    if (spec.arc === undefined || spec.arc.value <= spec['holds off'].value) return []
    return [
      {
        code: 'quantity-out-of-range',
        found: `an arc of ${spec.arc.text}`,
        expected: `at most what the tube holds off, ${spec['holds off'].text}`,
        at: ['arc'],
      },
    ]
  },
  modes: (spec) => [
    leaks(1e6, {
      weight: 8,
      sign: 'noise on the line; an insulation tester shows it, an ohm range does not',
    }),
    shorts({ weight: 4, sign: 'welded by a surge: an ohm range reads next to nothing' }),
    becomes(
      'strikes-low',
      { ...spec, 'holds off': times(spec['holds off'], 0.3), arc: times(spec['holds off'], 0.08) },
      {
        says: 'strikes far too low',
        family: 'drifted',
        sign: 'a glow while the line rings; ringing trips or fades',
        weight: 3,
      },
    ),
    opens({
      weight: 20,
      sign: 'nothing to be seen or measured; it no longer protects',
      says: 'no longer strikes',
      mend: 'renew it',
    }),
  ],
  outline: (spec) =>
    lying(
      spec,
      [circle(2, 1, 0.9), line([1.7, 0.6], [1.7, 1.4]), line([2.3, 0.6], [2.3, 1.4]), { dot: [2, 1.5] }],
      1.7,
      2.3,
    ),
}
