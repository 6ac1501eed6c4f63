/** How parts change with the years: data of `netlists/ageing.yaml`, read and checked here. */
import * as z from 'zod/mini'
import { quantity } from '../parts/fields.ts'
import type { Quantity } from '../quantities/quantity.ts'
import { readDelivered } from '../sheet/delivered.ts'

const factor = z.number().check(z.positive())

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  years: factor,
  changes: z.array(
    z.strictObject({
      part: z.string(),
      value: z.string(),
      factor: z.optional(factor),
      seconds: z.optional(factor),
      usual: z.optional(quantity('resistance', { above: 0 }) as z.ZodMiniType<Quantity>),
      spread: z.number().check(z.gte(1)),
      source: z.string(),
    }),
  ),
})

/** What the years do to one value of one kind of part. */
export interface AgeingRow {
  /** The kind of part. */
  readonly part: string
  /** Which of its values. */
  readonly value: string
  /** By how much the value is multiplied after the table's years. */
  readonly factor?: number | undefined
  /** Resistance times capacitance of the leakage after the table's years, Ω·F. */
  readonly seconds?: number | undefined
  /** The value where a sheet is silent. */
  readonly usual?: Quantity | undefined
  /** Factor up and down within which parts differ after the table's years. */
  readonly spread: number
  readonly source: string
}

/** The table. */
export interface Ageing {
  /** Years after which values are as the rows say. */
  readonly years: number
  readonly changes: readonly AgeingRow[]
}

/** Reads the table; a broken one is a mistake of the installation. @throws ProblemError `syntax` */
export function readAgeing(text: string, file: string): Ageing {
  return readDelivered(SCHEMA, text, file, 'ageing')
}
