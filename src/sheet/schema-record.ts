/** The schemas of a rewire and of a job, version 1. */
import * as z from 'zod/mini'
import { quantity } from '../parts/fields.ts'
import type { Dimension, Quantity } from '../quantities/quantity.ts'
import { readQuantity } from '../quantities/quantity.ts'
import type { JobSheet, ReadingSpec, RewireSheet } from './model.ts'
import { condition, date, head, list, name, optional, otherwise, says, text } from './schema-fields.ts'
import { move } from './schema-moves.ts'

export type RewireBody = Omit<RewireSheet, 'file' | 'places'>
export type JobBody = Omit<JobSheet, 'file' | 'places'>

export const rewireSchema: z.ZodMiniType<RewireBody> = z.strictObject({
  ...head('rewire'),
  set: name('the set from which the moves start'),
  moves: list(move(), 'moves in order'),
}) as unknown as z.ZodMiniType<RewireBody>

/** What a meter may show, by the unit that is written. */
const SHOWN: readonly Dimension[] = [
  'resistance',
  'voltage',
  'current',
  'capacitance',
  'inductance',
  'frequency',
]

/** `450 Ω`, or words such as `open` and `kicks, then open`: a text that begins with a digit must be a quantity. */
const shows = z.pipe(
  says(z.union([z.string(), z.number()]), 'what the instrument shows: a quantity, or words such as `open`', {
    examples: ['450 Ω'],
  }),
  z.transform((value, context): Quantity | string => {
    const written = String(value)
    const results = SHOWN.map((dimension) => readQuantity(written, dimension))
    const read = results.find((result) => result.ok)
    if (read?.ok === true) return read.quantity
    if (!/^[-+−.]?[0-9]/.test(written.trim())) return written
    const refused = results.find((result) => !result.ok && result.fault.code !== 'unit-wrong') ?? results[0]
    const problem = refused?.ok === false ? refused.fault : undefined
    context.issues.push({ code: 'custom', input: value, message: 'a reading', params: { problem } })
    return z.NEVER
  }),
)

const reading: z.ZodMiniType<ReadingSpec> = z.strictObject({
  between: says(
    z.array(z.string()).check(z.minLength(2), z.maxLength(2)),
    'the two points: terminals, or ends such as `plug.a`',
    { examples: ['[plug.a, plug.b]'] },
  ),
  condition: condition('condition of the set'),
  instrument: name('the instrument', 'digital'),
  range: text('its range'),
  shows,
  date: optional(date('day of the reading')),
}) as unknown as z.ZodMiniType<ReadingSpec>

const moves = (description: string): z.ZodMiniType<unknown[]> =>
  otherwise(list(move(), description), () => []) as never
const readings = (): z.ZodMiniType<unknown[]> => otherwise(list(reading, 'readings'), () => []) as never

const instrument = z.strictObject({
  set: name('the set sheet that describes it'),
  'found by': optional(text('how it was identified')),
  sure: optional(says(quantity('ratio', { min: 0, max: 1 }), 'how sure that is')),
  mark: optional(
    says(
      z.union([z.string(), z.number()]),
      'what is written or stamped on it',
    ) as unknown as z.ZodMiniType<unknown>,
  ),
})

export const jobSchema: z.ZodMiniType<JobBody> = z.strictObject({
  ...head('job'),
  instrument: says(instrument, 'the instrument on the bench'),
  opened: date('day on which the job was opened'),
  closed: optional(date('day on which it was closed')),
  line: optional(name('the line for which it is judged')),
  found: otherwise(
    says(
      z.strictObject({
        moves: moves('how its wiring differed from the sheet of the set'),
        readings: readings(),
      }),
      'as found',
    ),
    () => ({ moves: [], readings: [] }),
  ),
  moves: moves('what was done'),
  left: otherwise(
    says(
      z.strictObject({
        verdicts: otherwise(
          list(z.unknown(), 'verdicts at closing, with the version that computed them'),
          () => [],
        ),
        readings: readings(),
      }),
      'as left',
    ),
    () => ({ verdicts: [], readings: [] }),
  ),
  photos: otherwise(list(text('name of a picture file'), 'pictures'), () => []),
}) as unknown as z.ZodMiniType<JobBody>
