/** What can still be asked about the sets that count, and what of it is worth asking. */
import type { Hypotheses } from '../inference/hypotheses.ts'
import { alikeBy } from './alike.ts'
import { type Column, observedOf, readingColumn, sightingColumn } from './columns.ts'
import { coveredBy } from './covered.ts'
import { type Finding, findingId } from './evidence.ts'
import type { Reader } from './expected.ts'
import type { Judged } from './judge.ts'
import type { KnownSet } from './known.ts'
import { type Question, questionId, rankQuestions, type Worthwhile } from './next.ts'
import type { SightingOdds } from './odds.ts'
import { candidatePairs } from './pairs.ts'
import type { Sighting } from './seen/sighting.ts'

/** Known sets with everything that is needed to ask about them. */
export interface Laid {
  readonly known: readonly KnownSet[]
  readonly odds: SightingOdds
  readonly reader: Reader
  readonly sightings: readonly Sighting[]
}

/** Whoever leads with so much is called the one. */
export const LEADS = 0.95
/** Sets that are so much less probable than the first are no longer asked about. */
const STILL_ALIVE = 1e-3

/** Known sets that still count, changed or not, by their index. */
export function stillAlive({ of, changed }: Judged): readonly number[] {
  const weight = of.map((one, k) => one + (changed[k] ?? 0))
  const most = Math.max(...weight)
  return [...weight.keys()].filter((k) => (weight[k] ?? 0) >= STILL_ALIVE * most)
}

/** Questions that are open, and the groups that they and what was found can tell apart. */
export interface Stage {
  readonly alive: readonly number[]
  readonly questions: readonly Question[]
  /** The sets that count, a column for each open question. */
  readonly among: Hypotheses
  /** The group of each set that counts. */
  readonly group: Int32Array
  /** Groups by indices of all known sets. */
  readonly groups: readonly (readonly number[])[]
}

/**
 * Lays out what can be asked. What nobody looked at and nobody will read tells nothing apart.
 *
 * @param tell hears how many of how many questions are worked out
 */
export function stageOf(
  { known, odds, reader, sightings }: Laid,
  alive: readonly number[],
  findings: readonly Finding[],
  skipped: ReadonlySet<string>,
  tell: (done: number, of: number) => void,
): Stage {
  const among = alive.flatMap((k) => known[k] ?? [])
  const done = new Set(findings.map(findingId))
  const all: readonly Question[] = [
    ...sightings
      .filter((one) => tells(one, among))
      .map((sighting) => ({ ask: 'sighting', sighting }) as const),
    ...candidatePairs(among).map((pair) => ({ ask: 'reading', pair }) as const),
  ]
  const questions = all.filter((one) => !done.has(questionId(one)) && !skipped.has(questionId(one)))
  const columns: Column[] = questions.map((question) =>
    question.ask === 'sighting'
      ? sightingColumn(question.sighting, odds)
      : readingColumn(question.pair, reader, odds),
  )
  // the first asking reads every set
  columns.forEach((column, k) => {
    tell(k, columns.length)
    for (const one of among) column.expected(one)
  })
  const found = observedOf(findings, reader, odds).columns
  const alike = alikeBy(among, [...columns, ...found], odds.unknown.foreign.probability)
  return {
    alive,
    questions,
    among: first(alike.among, columns.length),
    group: alike.index,
    groups: alike.groups.map((group) => group.flatMap((k) => alive[k] ?? [])),
  }
}

/** The hypotheses with only the first columns. */
function first(among: Hypotheses, count: number): Hypotheses {
  const width = among.observables.length
  const cells = (of: Float64Array): Float64Array => of.filter((_, at) => at % width < count)
  return {
    ...among,
    observables: among.observables.slice(0, count),
    expected: cells(among.expected),
    spread: cells(among.spread),
  }
}

/** Whether two of the sets would answer differently. */
function tells(sighting: Sighting, among: readonly KnownSet[]): boolean {
  const answers = new Set(among.map((one) => sighting.answerOf(one)).filter((one) => !Number.isNaN(one)))
  return answers.size > 1
}

/** Whoever has so much of what the known sets have is tried out in new places; twins share it. */
const LEADS_AMONG_KNOWN = 0.3

/** So little counts as nothing. */
const NOTHING = 1e-9

/**
 * What is worth asking, the most telling for its effort first. That it may be in no sheet keeps questions alive until
 * it is less than what a leader may leave to all others; then only what tells the known sets apart does.
 */
export function rankStage(
  { known, odds }: Laid,
  { alive, questions, among, group }: Stage,
  judged: Judged,
  findings: readonly Finding[],
): readonly Worthwhile[] {
  const of = Float64Array.from(alive, (k) => judged.of[k] ?? 0)
  const all = of.reduce((sum, one) => sum + one, 0)
  const isDoubted = judged.unknown >= 1 - LEADS
  const belief = isDoubted
    ? { of, none: Math.max(NOTHING, 1 - all) }
    : { of: of.map((one) => one / all), none: NOTHING }
  const best = of.indexOf(Math.max(...of))
  const lead = (of[best] ?? 0) > LEADS_AMONG_KNOWN * all ? known[alive[best] ?? -1] : undefined
  const asked = alive.flatMap((k) => known[k] ?? [])
  return rankQuestions({
    known: asked,
    among,
    questions,
    belief,
    group,
    covered: coveredBy(findings, lead),
    odds,
  })
}
