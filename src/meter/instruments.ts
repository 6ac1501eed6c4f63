/** Reads a table of instruments: the delivered one, or a person's own in the same shape. */
import * as z from 'zod/mini'
import { plain, quantity, yesNo } from '../parts/fields.ts'
import { ProblemError, refuse } from '../problem.ts'
import type { Dimension } from '../quantities/units.ts'
import { parseRaw } from '../sheet/issues.ts'
import type { SheetText } from '../sheet/shelf.ts'
import { readSource } from '../sheet/source.ts'
import { tidy } from '../sheet/tidy.ts'
import type { Instrument, Instruments, Shows } from './instrument.ts'
import { rangesFor, SHOWN } from './instrument.ts'

const text = z.string()
const above = (dimension: Dimension) => quantity(dimension, { above: 0 })

/** What every range says of how far it can be trusted. */
const precision = (dimension: Dimension) => ({
  'full scale': above(dimension),
  resolution: z.optional(above(dimension)),
  accuracy: z.optional(plain(0, 0.5)),
  arc: z.optional(plain(0, 0.25)),
})
const driven = { current: above('current'), 'open voltage': above('voltage') }

const RANGE = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('constant-current'), ...driven, ...precision('resistance') }),
  z.strictObject({
    method: z.literal('buzz'),
    ...driven,
    limit: above('resistance'),
    ...precision('resistance'),
  }),
  z.strictObject({ method: z.literal('diode'), ...driven, ...precision('voltage') }),
  z.strictObject({
    method: z.literal('battery'),
    battery: above('voltage'),
    'mid scale': above('resistance'),
    ...precision('resistance'),
  }),
  z.strictObject({
    method: z.literal('capacitance'),
    frequency: above('frequency'),
    voltage: above('voltage'),
    ...precision('capacitance'),
  }),
  z.strictObject({
    method: z.literal('volts'),
    'input resistance': above('resistance'),
    ...precision('voltage'),
  }),
  z.strictObject({
    method: z.literal('alternating-volts'),
    'input resistance': above('resistance'),
    'responds to': z.enum(['average', 'true-rms']),
    'blocks direct': yesNo(),
    'sure from': above('frequency'),
    ...precision('voltage'),
  }),
])

const NAME = /^[a-zA-Z0-9][a-zA-Z0-9-]*$/
const named = <T>(of: z.ZodMiniType<T>) => z.record(text.check(z.regex(NAME)), of)

const INSTRUMENT = z.strictObject({
  says: text,
  source: text,
  'red lead': z.enum(['positive', 'negative']),
  'shows by': z.enum(['digits', 'needle']),
  swing: z.optional(above('time')),
  ranges: named(RANGE),
})

const HABIT = z.strictObject({ value: plain(0, 1e6), unit: z.enum(['A', '1']), says: text, source: text })

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  instruments: named(INSTRUMENT),
  habits: z.optional(
    z.strictObject({
      'transmitter-spread': z.optional(HABIT),
      click: z.optional(HABIT),
      scrape: z.optional(HABIT),
    }),
  ),
})

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
    ([name, one]) => [name, { name, ...one } as unknown as Instrument] as const,
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
      mend: empty ? 'add a range' : 'add `swing: 1 s`',
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
