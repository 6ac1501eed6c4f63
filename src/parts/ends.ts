/** Specs and plans shared by all parts with two ends and one branch. */
import * as z from 'zod/mini'
import { end } from './fields.ts'
import type { BranchPlan, Form, PartSpec } from './kind.ts'

/** A part with two ends. */
export interface TwoEnds extends PartSpec {
  readonly from: string
  readonly to: string
}

/** The schema's share of the two ends. */
export const ENDS: { from: z.ZodMiniType<string>; to: z.ZodMiniType<string> } = {
  from: describe(end(), 'first end; current is positive from here'),
  to: describe(end(), 'second end'),
}

/** The one branch of a two-ended part. */
export function oneBranch(spec: TwoEnds, form: Form): readonly BranchPlan[] {
  return [{ suffix: '', from: spec.from, to: spec.to, form }]
}

/** A schema with its sentence for the reference and the JSON Schema. */
export function describe<T>(schema: z.ZodMiniType<T>, description: string): z.ZodMiniType<T> {
  const known = z.globalRegistry.get(schema)
  z.globalRegistry.add(schema, { ...known, description })
  return schema
}

/** Resistances below this many ohms are branch equations, not conductances (design 5, "Trust"). */
export const EQUATION_BELOW = 1
