/** The schemas of a plug-in unit and of a free circuit, version 1. */
import * as z from 'zod/mini'
import { quantity } from '../parts/fields.ts'
import { partSchema } from '../parts/index.ts'
import type { CircuitSheet, UnitSheet } from './model.ts'
import { head, list, name, named, optional, otherwise, says, text } from './schema-fields.ts'

export type UnitBody = Omit<UnitSheet, 'file' | 'places'>
export type CircuitBody = Omit<CircuitSheet, 'file' | 'places'>

export const unitSchema: z.ZodMiniType<UnitBody> = z.strictObject({
  ...head('unit'),
  pins: list(name('a pin', 'p1'), 'pins by which the unit meets its slot', 1),
  joints: otherwise(list(name('a joint'), 'meeting points of parts that have no pin'), () => []),
  parts: named(says(partSchema(), 'a part; its ends are pins and joints'), 'parts by name'),
}) as unknown as z.ZodMiniType<UnitBody>

export const circuitSchema: z.ZodMiniType<CircuitBody> = z.strictObject({
  ...head('circuit'),
  parts: named(
    says(partSchema(), 'a part; its ends are any names, `earth` is the reference'),
    'parts by name; parts whose ends carry the same name meet',
  ),
  frequency: optional(says(quantity('frequency'), 'frequency at which the alternating sources work')),
  source: optional(text('where the circuit was published')),
  grade: optional(text('how far the source is trusted')),
}) as unknown as z.ZodMiniType<CircuitBody>
