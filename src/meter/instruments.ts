/** Reads a table of instruments: the delivered one, or a person's own in the same shape. */
import * as z from 'zod/mini'
import { plain, quantity } from '../parts/fields.ts'
import { ProblemError, refuse } from '../problem.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { Dimension } from '../quantities/units.ts'
import { parseRaw } from '../sheet/issues.ts'
import type { SheetText } from '../sheet/shelf.ts'
import { readSource } from '../sheet/source.ts'
import { tidy } from '../sheet/tidy.ts'
import type { Instrument, Instruments, Shows } from './instrument.ts'
import { rangesFor, SHOWN } from './instrument.ts'

/** A text; the mend of a missing one shows the example. */
const text = (example: string) => z.string().register(z.globalRegistry, { examples: [example] })
/** A quantity above nothing; the mend of a missing one shows the example. */
const above = (dimension: Dimension, example: string) =>
  z.pipe(
    z.union([z.string(), z.number()]).register(z.globalRegistry, { examples: [example] }),
    quantity(dimension, { above: 0 }) as z.ZodMiniType<Quantity, string | number>,
  )

/** `0.8 %` or 0.008. */
const share = (max: number) =>
  z.pipe(
    quantity('ratio', { min: 0, max }),
    z.transform(({ value }) => value),
  )

const yesNo = z.pipe(
  z.union([z.boolean(), z.enum(['yes', 'no'])]).register(z.globalRegistry, { examples: ['yes'] }),
  z.transform((written) => written === true || written === 'yes'),
)

/** What every range says of how far it can be trusted. */
const precision = (dimension: Dimension, fullScale: string) => ({
  'full scale': above(dimension, fullScale),
  resolution: z.optional(above(dimension, fullScale)),
  accuracy: z.optional(share(0.5)),
  counts: z.optional(plain(0, 1000)),
  arc: z.optional(share(0.25)),
})
const driven = { current: above('current', '0.5 mA'), 'open voltage': above('voltage', '3 V') }

const RANGE = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('constant-current'), ...driven, ...precision('resistance', '600 Ω') }),
  z.strictObject({
    method: z.literal('buzz'),
    ...driven,
    limit: above('resistance', '30 Ω'),
    ...precision('resistance', '600 Ω'),
  }),
  z.strictObject({ method: z.literal('diode'), ...driven, ...precision('voltage', '6 V') }),
  z.strictObject({
    method: z.literal('battery'),
    battery: above('voltage', '1.5 V'),
    'mid scale': above('resistance', '20 Ω'),
    ...precision('resistance', '600 Ω'),
  }),
  z.strictObject({
    method: z.literal('capacitance'),
    frequency: above('frequency', '100 Hz'),
    voltage: above('voltage', '0.5 V'),
    ...precision('capacitance', '6 µF'),
  }),
  z.strictObject({
    method: z.literal('volts'),
    'input resistance': above('resistance', '10 MΩ'),
    ...precision('voltage', '6 V'),
  }),
  z.strictObject({
    method: z.literal('alternating-volts'),
    'input resistance': above('resistance', '10 MΩ'),
    'responds to': z.enum(['average', 'true-rms']),
    'blocks direct': yesNo,
    'sure from': above('frequency', '40 Hz'),
    ...precision('voltage', '6 V'),
  }),
])

/** What the mends of missing keys show, each in one line. */
const RANGE_EXAMPLE =
  '{ohms: {method: constant-current, current: 0.5 mA, open voltage: 3 V, full scale: 600 Ω, resolution: 0.1 Ω, accuracy: 0.8 %}}'
const INSTRUMENT_EXAMPLE = `{mine: {says: my own, red lead: positive, shows by: digits, ranges: ${RANGE_EXAMPLE}}}`

const NAME = /^[a-zA-Z0-9][a-zA-Z0-9-]*$/
const named = <T>(of: z.ZodMiniType<T>) => z.record(z.string().check(z.regex(NAME)), of)

const INSTRUMENT = z.strictObject({
  says: text('the instrument in my box'),
  source: z.optional(z.string()),
  'red lead': z.enum(['positive', 'negative']),
  'shows by': z.enum(['digits', 'needle']),
  leads: z.optional(quantity('resistance', { min: 0 })),
  swing: z.optional(above('time', '1 s')),
  ranges: named(RANGE).register(z.globalRegistry, { examples: [RANGE_EXAMPLE] }),
})

const HABIT = z.strictObject({
  value: plain(0, 1e9).register(z.globalRegistry, { examples: ['0.00005'] }),
  unit: z.enum(['A', 'Ω', '1']),
  says: text('what it means'),
  source: text('common practice, no source'),
})

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  instruments: named(INSTRUMENT).register(z.globalRegistry, { examples: [INSTRUMENT_EXAMPLE] }),
  habits: z.optional(
    z.strictObject({
      'transmitter-spread': z.optional(HABIT),
      click: z.optional(HABIT),
      scrape: z.optional(HABIT),
      loud: z.optional(HABIT),
      open: z.optional(HABIT),
    }),
  ),
})

/** What is said of an own instrument whose file names no source. */
const NO_SOURCE = 'not said'

/**
 * Reads a table of instruments.
 * @throws ProblemError with everything that is wrong in it, each with its place.
 */
export function readInstruments(given: SheetText): Instruments {
  const { page, root, problems } = readSource(given)
  const parsed = root === undefined ? undefined : parseRaw(SCHEMA, root)
  const all = [...problems, ...(parsed?.problems ?? [])]
  if (parsed?.value === undefined || all.some(({ severity }) => severity === 'error'))
    throw new ProblemError(tidy(all, page.file, new Map([[page.file, page]])))
  const { instruments, habits } = parsed.value
  const entries = Object.entries(instruments).map(
    // the schema has read every field of it
    ([name, one]) => [name, { name, source: NO_SOURCE, ...one } as unknown as Instrument] as const,
  )
  for (const [, one] of entries) refuseUnlike(one, page.file)
  return { instruments: new Map(entries), habits: (habits ?? {}) as Instruments['habits'] }
}

/** What one field alone cannot show: ranges of one kind must measure alike, and a needle needs its swing. */
function refuseUnlike(one: Instrument, file: string): void {
  const empty = Object.keys(one.ranges).length === 0
  if (empty || (one['shows by'] === 'needle' && one.swing === undefined)) {
    refuse({
      code: 'key-missing',
      found: `${file}: \`${one.name}\` without ${empty ? 'any range' : 'the key `swing`'}`,
      expected: empty ? 'at least one range' : 'the time in which the needle would swing once to and fro',
      mend: empty ? `write \`ranges: ${RANGE_EXAMPLE}\`` : 'add `swing: 1 s`',
    })
  }
  const mixed = SHOWN.find((shows) => unlike(one, shows))
  if (mixed === undefined) return
  refuse({
    code: 'contradiction',
    found: `${file}: \`${one.name}\` with two methods for ${mixed}`,
    expected: 'one method for all ranges that show the same',
    mend: 'make two instruments of it',
  })
}

function unlike(one: Instrument, shows: Shows): boolean {
  return new Set(rangesFor(one, shows).map(({ range }) => range.method)).size > 1
}
