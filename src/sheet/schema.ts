/** One schema per kind of sheet: the closed version 1 of the format. */
import type { ZodMiniType } from 'zod/mini'
import type { SheetKind } from './model.ts'
import { lineSchema } from './schema-line.ts'
import { circuitSchema, unitSchema } from './schema-network.ts'
import { premisesSchema } from './schema-premises.ts'
import { jobSchema, rewireSchema } from './schema-record.ts'
import { setSchema } from './schema-set.ts'

/** The kinds of sheet with their schemas, in the order of the reference. */
export const SCHEMAS: Readonly<Record<SheetKind, ZodMiniType<object>>> = {
  set: setSchema,
  unit: unitSchema,
  line: lineSchema,
  premises: premisesSchema,
  rewire: rewireSchema,
  job: jobSchema,
  circuit: circuitSchema,
}

/** The words behind `sheet:`. */
export const SHEET_KINDS: readonly SheetKind[] = Object.keys(SCHEMAS) as SheetKind[]
