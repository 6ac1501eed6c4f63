/** How often people are mistaken in what they see of a set, what looking costs: data of `netlists/sightings.yaml`. */
import * as z from 'zod/mini'
import { quantity } from '../parts/fields.ts'
import { refuse } from '../problem.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { Dimension } from '../quantities/units.ts'
import { parseRaw } from '../sheet/issues.ts'
import type { SheetText } from '../sheet/shelf.ts'
import { readSource } from '../sheet/source.ts'

/** Everything that can be seen, by what sort of thing it is. */
export const SIGHTING_SORTS = [
  'handset',
  'dial',
  'key',
  'plug',
  'line-cores',
  'handset-cores',
  'colours',
  'board',
  'slot',
  'unit',
  'sounder',
  'strip',
  'strap',
  'part',
  'marking',
] as const
export type SightingSort = (typeof SIGHTING_SORTS)[number]

const share = z.number().check(z.gt(0), z.lt(1))
const source = z.string()
const likely = z.strictObject({ probability: share, source })
const amount = (of: z.ZodMiniType<number>) => z.strictObject({ value: of, source })
const measured = (dimension: Dimension) =>
  amount(
    z.pipe(
      quantity(dimension, { above: 0 }) as z.ZodMiniType<Quantity, unknown>,
      z.transform(({ value }: Quantity) => value),
    ) as z.ZodMiniType<number>,
  )

const SCHEMA = z.strictObject({
  ringproof: z.literal(1),
  sightings: z.record(
    z.enum(SIGHTING_SORTS),
    z.strictObject({ slip: share, effort: z.number().check(z.positive()), source }),
  ),
  reading: z.strictObject({
    effort: amount(z.number().check(z.positive())),
    slip: amount(share),
    'absent-slip': amount(share),
    contacts: measured('resistance'),
    build: measured('ratio'),
    open: measured('resistance'),
    joined: measured('resistance'),
  }),
  unknown: z.strictObject({
    foreign: likely,
    changed: likely,
    'reading-differs': likely,
    'sighting-differs': likely,
  }),
})

/** How reliable a sighting is, and what it costs. */
export interface Seeing {
  /** Share of wrong answers. */
  readonly slip: number
  /** Minutes of a practised hand. */
  readonly effort: number
  readonly source: string
}

/** A figure with where it is from. */
export interface Sourced {
  readonly value: number
  readonly source: string
}

/** A probability with where it is from. */
export interface Chance {
  readonly probability: number
  readonly source: string
}

/** The table. */
export interface SightingOdds {
  readonly sightings: Readonly<Record<SightingSort, Seeing>>
  readonly reading: {
    readonly effort: Sourced
    readonly slip: Sourced
    readonly 'absent-slip': Sourced
    /** One standard deviation of what old contacts and test leads add, ohms. */
    readonly contacts: Sourced
    /** One standard deviation of a reading from set to set, as a share of it. */
    readonly build: Sourced
    /** Above this a reading counts as open, ohms. */
    readonly open: Sourced
    /** Below this two terminals count as joined, ohms. */
    readonly joined: Sourced
  }
  readonly unknown: {
    /** That the set is like none that is known. */
    readonly foreign: Chance
    /** That it is a known one which somebody changed in some places. */
    readonly changed: Chance
    /** How often a reading of a changed set is another one. */
    readonly 'reading-differs': Chance
    readonly 'sighting-differs': Chance
  }
}

/** Reads the table; a broken one is a mistake of the installation. @throws ProblemError `syntax` */
export function readSightingOdds(given: SheetText): SightingOdds {
  const { root, problems } = readSource(given)
  const parsed = root === undefined ? undefined : parseRaw(SCHEMA, root)
  const [first] = [...problems, ...(parsed?.problems ?? [])]
  if (parsed?.value === undefined || first !== undefined) {
    refuse({
      code: 'syntax',
      found: `${given.file}: ${first?.found ?? 'no YAML'}`,
      expected: 'the table of sightings as it was delivered',
      mend: 'install the package again',
    })
  }
  return parsed.value as SightingOdds
}
