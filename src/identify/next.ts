/** What to look at or to read next: what is expected to tell most for its effort. */
import type { Belief } from '../inference/belief.ts'
import type { Hypotheses } from '../inference/hypotheses.ts'
import { expectedInformation, type Worth, worthOf } from '../inference/information.ts'
import { bothThere, type Column, hasTerminal, hypothesesOf } from './columns.ts'
import type { Covered } from './covered.ts'
import { type Pair, pairId } from './expected.ts'
import type { KnownSet } from './known.ts'
import type { SightingOdds } from './odds.ts'
import type { Sighting } from './seen/sighting.ts'

/** Something that can be asked for. */
export type Question =
  | { readonly ask: 'reading'; readonly pair: Pair }
  | { readonly ask: 'sighting'; readonly sighting: Sighting }

/** A question with what it is worth. */
export interface Worthwhile {
  readonly question: Question
  /** Bits that it is expected to tell. */
  readonly bits: number
  readonly effort: number
}

/** What a question is about, as findings are. */
export function questionId(question: Question): string {
  return question.ask === 'reading' ? pairId(question.pair) : question.sighting.id
}

/** What a terminal that no reading has touched adds to what a reading is worth: changed sets show in new places. */
const FRESH_TERMINAL = 0.15

/** What the ranking rests on. */
export interface Asking {
  readonly known: readonly KnownSet[]
  readonly among: Hypotheses
  /** One column a question. */
  readonly questions: readonly Question[]
  readonly belief: Belief
  /** The group of each known set. */
  readonly group: Int32Array
  /** What readings have touched and led through. */
  readonly covered: Covered
  readonly odds: SightingOdds
}

/** The questions, the most telling for its effort first. */
export function rankQuestions(asking: Asking): readonly Worthwhile[] {
  const { questions, among, belief, group } = asking
  // what is seen is asked for to tell the known sets apart; that it is none of them shows in readings
  const all = belief.of.reduce((sum, one) => sum + one, 0)
  const worth = worthOf({ of: belief.of.map((one) => one / all), none: 0 }, group)
  const there = thereCache(asking)
  const rated = questions.map((question, column) => {
    const effort = among.observables[column]?.effort ?? 1
    const bits =
      question.ask === 'sighting'
        ? expectedInformation(among, worth, column)
        : readingBits(asking, column, there(question.pair))
    return { question, bits, effort, score: (bits / effort) * freshness(question, asking.covered) }
  })
  return rated
    .sort((a, b) => b.score - a.score || a.effort - b.effort)
    .map(({ question, bits, effort }) => ({ question, bits, effort }))
}

function freshness(question: Question, covered: Covered): number {
  if (question.ask === 'sighting') return 1
  const { pair } = question
  const terminals = [pair.red, pair.black].filter((one) => !covered.terminals.has(one)).length
  return 1 + FRESH_TERMINAL * terminals + covered.adds(pair)
}

/** Whether both terminals are there: what the attempt tells of it, and what is believed once they are. */
interface There {
  readonly bits: number
  readonly probability: number
  readonly worth: Worth
}

/** Pairs whose terminals the same sets have share an answer. */
function thereCache({ known, belief, group, odds }: Asking): (pair: Pair) => There {
  const kept = new Map<string, There>()
  const first = worthOf(belief, group)
  return (pair) => {
    const has = known.map((one) => hasTerminal(one, pair.red) && hasTerminal(one, pair.black))
    const key = has.map(Number).join('')
    const before = kept.get(key)
    if (before !== undefined) return before
    const column: Column = bothThere(pair, odds)
    const bits = expectedInformation(hypothesesOf(known, [column], belief.none), first, 0)
    const { slip } = column.observable
    const of = belief.of.map((one, k) => one * (has[k] === true ? 1 - slip : slip))
    const none = belief.none / 2
    const probability = of.reduce((sum, one) => sum + one, none)
    const after = { of: of.map((one) => one / probability), none: none / probability }
    const made: There = { bits, probability, worth: worthOf(after, group) }
    kept.set(key, made)
    return made
  }
}

/**
 * A reading tells twice: whether the terminals are there, and if they are, what it shows.
 * @source chain rule of mutual information; Cover and Thomas, Elements of Information Theory, 2nd ed., theorem 2.5.2
 */
function readingBits({ among }: Asking, column: number, { bits, probability, worth }: There): number {
  return bits + probability * expectedInformation(among, worth, column)
}
