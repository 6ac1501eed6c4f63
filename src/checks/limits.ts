/** The limits that verdicts compare with: data of `netlists/limits.yaml`, read and checked here. */
import * as z from 'zod/mini'
import type { FigureUnit } from '../figures/figure.ts'
import { readDelivered } from '../sheet/delivered.ts'

/** How much a limit can be trusted. */
export type Grade = 'SEEN-P' | 'SEEN-S' | 'DERIVED' | 'MEMORY' | 'COMMON PRACTICE' | 'SHEET'

/** One limit, in SI units, with where it comes from. */
export interface Limit {
  readonly id: string
  readonly value: number
  readonly side: 'at-most' | 'at-least'
  readonly unit: FigureUnit
  /** What it limits, in a sentence. */
  readonly says: string
  readonly source: string
  readonly clause: string
  readonly grade: Grade
}

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  limits: z.record(
    z.string(),
    z.strictObject({
      value: z.number(),
      side: z.enum(['at-most', 'at-least']),
      unit: z.enum(['Ω', 'A', 'V', '1', 'dB', 'VA']),
      says: z.string(),
      source: z.string(),
      clause: z.string(),
      grade: z.enum(['SEEN-P', 'SEEN-S', 'DERIVED', 'MEMORY', 'COMMON PRACTICE', 'SHEET']),
    }),
  ),
})

/** Limits by id. */
export type Limits = ReadonlyMap<string, Limit>

/** Reads the table of limits; a broken table is a mistake of the installation, not of a sheet. */
export function readLimits(text: string, file: string): Limits {
  const { limits } = readDelivered(SCHEMA, text, file, 'limits')
  return new Map(Object.entries(limits).map(([id, one]) => [id, { id, ...one }]))
}

/** A limit that a check relies on; one that is not there is our own mistake. */
export function limitOf(limits: Limits, id: string): Limit {
  const found = limits.get(id)
  if (found === undefined) throw new RangeError(`no limit is called ${id}`)
  return found
}
