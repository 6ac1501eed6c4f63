/** Findings and what might be found, as observables of known sets in numbers. */
import type { Hypotheses, Observable, Observation } from '../inference/hypotheses.ts'
import { type Finding, partsOfTerminal, reachedStrips, standingFindings } from './evidence.ts'
import { type Pair, type Reader, SCALE } from './expected.ts'
import type { KnownSet } from './known.ts'
import type { SightingOdds } from './odds.ts'
import { lengthOf } from './seen/inside.ts'
import type { Sighting } from './seen/sighting.ts'

/** One observable with what each known set lets expect of it. */
export interface Column {
  readonly observable: Observable
  expected(known: KnownSet): { readonly x: number; readonly spread: number }
  /** How often it is another one in a set that somebody changed. */
  readonly differs: number
}

/** Answers in words, by their index. */
const cutsFor = (count: number): readonly number[] => Array.from({ length: count - 1 }, (_, k) => k + 0.5)
const exact = (): number => 0

/** What is seen. */
export function sightingColumn(sighting: Sighting, { sightings, unknown }: SightingOdds): Column {
  const { slip, effort } = sightings[sighting.sort]
  return {
    observable: { scale: 1, error: exact, cuts: cutsFor(sighting.answers.length), slip, effort },
    expected: (known) => ({ x: sighting.answerOf(known), spread: 0 }),
    differs: unknown['sighting-differs'].probability,
  }
}

/** Whoever reads the same twice is so much less often mistaken. from memory */
const AGAIN = 0.1

/** What is read so many times; a set without one of the terminals says nothing of it. */
export function readingColumn(
  pair: Pair,
  reader: Reader,
  { reading, unknown }: SightingOdds,
  times: number = 1,
): Column {
  return {
    observable: {
      scale: SCALE,
      error: (ohms) => reader.error(ohms),
      slip: reading.slip.value * AGAIN ** (times - 1),
      effort: reading.effort.value,
    },
    expected: (known) => {
      const { ohms, spread } = reader.read(known, pair) ?? { ohms: Number.NaN, spread: 0 }
      return { x: ohms, spread }
    },
    differs: unknown['reading-differs'].probability,
  }
}

/** Whether something is there, told by the attempt to read at it. */
function thereColumn(is: (known: KnownSet) => boolean, { reading, unknown }: SightingOdds): Column {
  const { value: slip } = reading['absent-slip']
  return {
    observable: { scale: 1, error: exact, cuts: cutsFor(2), slip, effort: reading.effort.value },
    expected: (known) => ({ x: Number(is(known)), spread: 0 }),
    differs: unknown['sighting-differs'].probability,
  }
}

/** Whether both terminals of a pair are there. */
export function bothThere(pair: Pair, odds: SightingOdds): Column {
  return thereColumn((known) => hasTerminal(known, pair.red) && hasTerminal(known, pair.black), odds)
}

/** Whether a set has this terminal. */
export function hasTerminal({ sheet }: KnownSet, terminal: string): boolean {
  const { strip, number } = partsOfTerminal(terminal)
  return number >= 1 && lengthOf(sheet.strips, strip) >= number
}

/** Columns of what was found, with the observation in each. */
export interface Observed {
  readonly columns: readonly Column[]
  readonly observations: readonly Observation[]
}

/** Everything that the findings say, each thing once: readings also say that their terminals are there. */
export function observedOf(findings: readonly Finding[], reader: Reader, odds: SightingOdds): Observed {
  const columns: Column[] = []
  const observations: Observation[] = []
  const add = (column: Column, what: Omit<Observation, 'observable'>): void => {
    observations.push({ observable: columns.push(column) - 1, ...what })
  }
  const standing = standingFindings(findings)
  const counted = new Set(standing.flatMap((one) => (one.found === 'sighting' ? [one.sighting.id] : [])))
  for (const finding of standing) {
    if (finding.found === 'sighting') add(sightingColumn(finding.sighting, odds), { answer: finding.answer })
    else if (finding.found === 'absent') add(bothThere(finding.pair, odds), { answer: 0 })
    else add(readingColumn(finding.pair, reader, odds, finding.times), { x: finding.ohms })
  }
  for (const [strip, number] of reachedStrips(standing)) {
    // whoever counted the screws has said it already
    if (counted.has(`strip.${strip}`)) continue
    add(
      thereColumn(({ sheet }) => lengthOf(sheet.strips, strip) >= number, odds),
      { answer: 1 },
    )
  }
  return { columns, observations }
}

/** The known sets as hypotheses about these columns; `slip` takes the place of each column's own where given. */
export function hypothesesOf(
  known: readonly KnownSet[],
  columns: readonly Column[],
  none: number,
  slip: (column: Column) => number = ({ observable }) => observable.slip,
): Hypotheses {
  const expected = new Float64Array(known.length * columns.length)
  const spread = new Float64Array(known.length * columns.length)
  known.forEach((one, k) => {
    columns.forEach((column, j) => {
      const { x, spread: wide } = column.expected(one)
      expected[k * columns.length + j] = x
      spread[k * columns.length + j] = wide
    })
  })
  return {
    observables: columns.map((column) => ({ ...column.observable, slip: slip(column) })),
    count: known.length,
    prior: Float64Array.from(known, ({ share }) => share * (1 - none)),
    none,
    expected,
    spread,
  }
}
