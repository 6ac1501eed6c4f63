import * as z from 'zod/mini'
import { markedDigits, writeMarking } from '../quantities/colour-code.ts'
import { isPreferred, nearestPreferred } from '../quantities/preferred.ts'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, EQUATION_BELOW, oneBranch, type TwoEnds } from './ends.ts'
import { becomes, opens, shorts, times } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { Form, PartKind, PartMarking } from './kind.ts'
import { BOX, lying } from './symbols.ts'

/** A linear resistor, R in ohms; v = R·i. */
export interface ResistorSpec extends TwoEnds {
  readonly kind: 'resistor'
  readonly resistance: Quantity
}

function form(spec: ResistorSpec): Form {
  return spec.resistance.value < EQUATION_BELOW ? 'equation' : 'admittance'
}

/** Bands by the fewest digits that tell the value; a sheet without a tolerance has none to be told. */
function markingOf({ resistance: { value, tolerance } }: ResistorSpec): PartMarking {
  const bands = ([2, 3] as const)
    .map((digits) => markedDigits(value, digits))
    .map((told) =>
      told === undefined || tolerance === undefined ? undefined : writeMarking({ ...told, tolerance }),
    )
    .find((one) => one !== undefined)
  const preferred = value > 0 && !isPreferred(value, 'E24') ? nearestPreferred(value, 'E24') : undefined
  return {
    value,
    ...(bands === undefined ? {} : { bands }),
    ...(preferred === undefined ? {} : { preferred }),
  }
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
  elements(spec, _at, _gate, sink) {
    const r = spec.resistance.value
    if (form(spec) === 'equation') sink.series(0, r, 0)
    else sink.beside(0, r, 0)
  },
  marking: markingOf,
  modes: (spec) => [
    opens({ weight: 5, sign: 'a cracked body or a loose cap; the meter reads nothing' }),
    becomes(
      'drifted-up',
      { ...spec, resistance: times(spec.resistance, 1.4) },
      {
        says: 'has drifted up by 40 %',
        family: 'drifted',
        sign: 'old carbon rods drift upwards; look for scorched paint',
        weight: 30,
      },
    ),
    becomes(
      'drifted-down',
      { ...spec, resistance: times(spec.resistance, 0.7) },
      {
        says: 'has drifted down by 30 %',
        family: 'drifted',
        sign: 'nothing to be seen; the meter tells',
        weight: 4,
      },
    ),
    shorts({ weight: 1, sign: 'solder or a bent lead across it' }),
  ],
  outline: (spec) => lying(spec, [BOX]),
}
