import * as z from 'zod/mini'
import type { At, Quantity } from '../quantities/quantity.ts'
import { type CoilPair, coilPair, type WholeCoil, wholeOf } from './coil-pair.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { quantity, quantityAt } from './fields.ts'
import { seriesRL } from './inductor.ts'
import type { FaultMode, PartKind, PartProblem } from './kind.ts'
import { line, lying } from './symbols.ts'

/**
 * A polarised bell with the clapper held, v = (R + jωL)·i: its coils as a whole, or two equal coils with the link
 * that joins them.
 */
export interface BellSpec extends TwoEnds {
  readonly kind: 'bell'
  readonly resistance?: Quantity
  readonly inductance?: Quantity
  readonly coils?: CoilPair
  readonly 'rings from': At
}

/** What a bell needs that no current rings, A: the most that a sheet may say. */
const NEVER = 1e5
const OPPOSED = {
  because: 'its two coils oppose each other',
  mend: 'exchange the two ends of one of its coils',
}

function coilOf({ coils, resistance, inductance }: BellSpec): WholeCoil {
  if (coils !== undefined) return wholeOf(coils)
  return { resistance: resistance?.value ?? 0, inductance: inductance?.value ?? 0 }
}

export const bell: PartKind<BellSpec> = {
  kind: 'bell',
  says: 'A bell: its coils as a whole or as two with their link, and the least current that makes it ring.',
  role: 'sounder',
  meterBlind:
    'a right resistance is no sound bell: magnet, clapper and gongs show only when it rings, shorted turns hardly at ' +
    'all, and two coils joined so that they oppose each other read the same',
  schema: z.strictObject({
    kind: z.literal('bell'),
    ...ENDS,
    resistance: z.optional(
      describe(quantity('resistance'), 'direct-current resistance of the coils together; or say `coils`'),
    ),
    inductance: z.optional(
      describe(quantity('inductance', { above: 0 }), 'inductance of the coils together; or say `coils`'),
    ),
    coils: z.optional(
      describe(coilPair(), 'two equal coils and their link, in place of `resistance` and `inductance`'),
    ),
    'rings from': describe(
      quantityAt('current', 'frequency', { above: 0 }, { above: 0 }),
      'least current between its two ends that rings it, coils linked rightly, and at which frequency',
    ),
  }) as unknown as z.ZodMiniType<BellSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  law(spec, at, _gate, sink) {
    const { resistance, inductance } = coilOf(spec)
    seriesRL(sink, at, resistance, inductance)
  },
  elements(spec, _at, _gate, sink) {
    const { resistance, inductance } = coilOf(spec)
    sink.series(0, resistance, inductance)
  },
  standIn: (_spec, at) => (at.analysis === 'alternating' ? 'bell with its clapper held still' : undefined),
  // equal coils that work against each other leave the clapper where it is
  sounds: (spec) => ({
    current: spec.coils?.turned === true ? NEVER : spec['rings from'].value.value,
    ...(spec.coils?.turned === true ? { never: OPPOSED } : {}),
    frequency: spec['rings from'].at.value,
  }),
  check: checkCoils,
  modes: bellModes,
  outline: (spec) =>
    lying(
      spec,
      [
        { arc: [2, 1, 0.9, 180, 360] },
        line([1.1, 1], [2.9, 1]),
        line([1.6, 1], [1.6, 1.6], [2.4, 1.6], [2.4, 1]),
      ],
      1.1,
      2.9,
    ),
}

/** The coils as a whole or as two, one of both and all of it. */
function checkCoils({ coils, resistance, inductance }: BellSpec): readonly PartProblem[] {
  const whole = [resistance, inductance].filter((one) => one !== undefined).length
  if (coils !== undefined && whole > 0) {
    return [
      {
        code: 'key-doubled',
        found: '`coils` beside `resistance` or `inductance`',
        expected: 'the coils as a whole, or as two',
        mend: 'keep `coils` alone, or delete it',
      },
    ]
  }
  if (coils !== undefined || whole === 2) return []
  const missing = resistance === undefined ? 'resistance' : 'inductance'
  return [
    {
      code: 'key-missing',
      found: whole === 0 ? 'a bell that says nothing of its coils' : `a bell without \`${missing}\``,
      expected: '`resistance` and `inductance` of the whole, or `coils`',
    },
  ]
}

function ringsFrom(spec: BellSpec, factor: number): At {
  return { ...spec['rings from'], value: times(spec['rings from'].value, factor) }
}

function bellModes(spec: BellSpec): readonly FaultMode[] {
  const { coils, resistance, inductance } = spec
  const whole = coilOf(spec)
  const left = coils === undefined ? { resistance, inductance } : coils
  const turnsGone = {
    ...(left.resistance === undefined ? {} : { resistance: times(left.resistance, 0.9) }),
    ...(left.inductance === undefined ? {} : { inductance: times(left.inductance, 0.4) }),
  }
  const modes = [
    opens({ weight: 12, sign: 'silent; green corrosion at a lead-out wire, an ohm range reads nothing' }),
    becomes(
      'shorted-turns',
      coils === undefined
        ? { ...spec, ...turnsGone, 'rings from': ringsFrom(spec, 2) }
        : { ...spec, coils: { ...coils, ...turnsGone }, 'rings from': ringsFrom(spec, 2) },
      {
        says: 'has shorted turns',
        family: 'shorted-turns',
        sign: 'weak ringing; the direct resistance reads a little low',
        weight: 5,
      },
    ),
    becomes(
      'weak-magnet',
      { ...spec, 'rings from': ringsFrom(spec, 2) },
      {
        says: 'has a weak magnet',
        family: 'weak-magnet',
        mend: 'have its magnet charged again, or renew the bell',
        sign: 'weak ringing; the magnet hardly holds a screwdriver',
        weight: 15,
      },
    ),
    becomes(
      'stiff',
      { ...spec, 'rings from': ringsFrom(spec, 3) },
      {
        says: 'has a stiff clapper or gongs out of place',
        family: 'stuck',
        mend: 'free the clapper and set the gongs so that it strikes both',
        sign: 'the clapper does not swing freely, or does not reach both gongs',
        weight: 60,
      },
    ),
    shorts({
      weight: 2,
      sign: `silent; an ohm range reads next to nothing in place of ${Math.round(whole.resistance)} Ω`,
    }),
  ]
  if (coils === undefined || coils.turned === true) return modes
  const linked = becomes(
    'coils-opposed',
    { ...spec, coils: { ...coils, turned: true } },
    {
      says: 'has the link of its coils on the wrong end of one',
      family: 'turned',
      mend: 'exchange the two ends of one of its coils',
      sign: 'silent or a weak buzz, though the direct resistance is right',
      weight: 10,
    },
  )
  return [...modes, linked]
}
