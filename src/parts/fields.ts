/**
 * Schema fields that parts and sheets share. A quantity that cannot be read becomes a zod issue
 * whose `params.problem` carries code, found, expected, mend and the offset of the trouble.
 */
import * as z from 'zod/mini'
import {
  type At,
  type Phasor,
  type Quantity,
  type QuantityFault,
  readAt,
  readPhasor,
  readQuantity,
  readSpan,
  type Span,
} from '../quantities/quantity.ts'
import { DIMENSIONS, type Dimension } from '../quantities/units.ts'

/** Bounds of a field, in SI units: at least, at most, or strictly above. */
export interface Bounds {
  readonly min?: number
  readonly max?: number
  readonly above?: number
}

type Read<T> = { ok: true; value: T } | { ok: false; fault: QuantityFault }

/** A text field that is read into something, a bare number too where that has a meaning; `example` shows the form in the JSON Schema and the reference. */
function field<T>(
  read: (text: string) => Read<T>,
  what: string,
  example: string,
  bare = false,
): z.ZodMiniType<T> {
  const text = z.union([z.string(), z.number()]).register(z.globalRegistry, {
    ...(bare ? {} : { type: 'string' }),
    description: what,
    examples: [example],
  })
  return z.pipe(
    text,
    z.transform((written, context) => {
      const result = read(String(written))
      if (result.ok) return result.value
      context.issues.push({
        code: 'custom',
        input: written,
        message: result.fault.code,
        params: { problem: result.fault },
      })
      return z.NEVER
    }),
  ) as unknown as z.ZodMiniType<T>
}

/** A quantity with its unit, perhaps with a tolerance: `3.3 kΩ ± 5 %`. */
export function quantity(dimension: Dimension, bounds: Bounds = {}): z.ZodMiniType<Quantity> {
  const { says, example } = DIMENSIONS[dimension]
  return field<Quantity>(
    (text) => {
      const result = readQuantity(text, dimension, bounds)
      return result.ok ? { ok: true, value: result.quantity } : result
    },
    says,
    example,
    dimension === 'ratio', // the one quantity that may stand bare
  )
}

/** A quantity at another, each within its bounds: `150 Ω at 40 mA`. */
export function quantityAt(
  dimension: Dimension,
  at: Dimension,
  bounds: Bounds = {},
  atBounds: Bounds = {},
): z.ZodMiniType<At> {
  return field<At>(
    (text) => readAt(text, dimension, at, bounds, atBounds),
    `${DIMENSIONS[dimension].says} at ${DIMENSIONS[at].says}`,
    `${DIMENSIONS[dimension].example} at ${DIMENSIONS[at].example}`,
  )
}

/** A source's value, rms, with its angle: `1 V at 30°`. */
export function phasor(dimension: 'voltage' | 'current'): z.ZodMiniType<Phasor> {
  const { says, example } = DIMENSIONS[dimension]
  return field<Phasor>(
    (text) => readPhasor(text, dimension),
    `${says}, rms, with its angle`,
    `${example} at 30°`,
  )
}

/** From … to …: `20 mA to 100 mA`. */
export function span(dimension: Dimension): z.ZodMiniType<Span> {
  const { says, example } = DIMENSIONS[dimension]
  return field<Span>(
    (text) => readSpan(text, dimension),
    `${says}, from the least to the most`,
    `${example} to ${example}`,
  )
}

/** A name: lower-case letters, digits and hyphens. */
export const NAME: RegExp = /^[a-z][a-z0-9-]*$/
/** A terminal: the strip's letters and a number. */
export const TERMINAL: RegExp = /^[A-Z]+[1-9][0-9]*$/

/** An end of a part: a terminal, a joint, a core's far end, a free node or `earth`. */
export function end(): z.ZodMiniType<string> {
  return z.string().check(z.regex(/^(?:[a-z][a-z0-9-]*|[A-Z]+[1-9][0-9]*)$/))
}

/** A plain number without unit within bounds. */
export function plain(least: number, most: number): z.ZodMiniType<number> {
  return z.number().check(z.gte(least), z.lte(most))
}

/** `yes`, `no`, `true` or `false`. */
export function yesNo(): z.ZodMiniType<boolean> {
  return z.pipe(
    z.union([z.boolean(), z.enum(['yes', 'no'])]),
    z.transform((written) => written === true || written === 'yes'),
  ) as unknown as z.ZodMiniType<boolean>
}
