/** What may come out of a question, and which sets each outcome speaks for. */
import { hasTerminal } from './columns.ts'
import type { Pair, Reader } from './expected.ts'
import { SCALE } from './expected.ts'
import type { KnownSet } from './known.ts'
import type { Question } from './next.ts'

/** One outcome: a word, or readings between two bounds. */
export interface Outcome {
  /** The answer in words: `yes`, `open`, `no such terminal`; absent for readings in ohms. */
  readonly says?: string
  readonly least?: number
  readonly most?: number
  /** Known sets that expect it, by their index. */
  readonly sets: readonly number[]
}

/** Words for what a reading shows without a number. */
export const OPEN = 'open'
export const NO_TERMINAL = 'no such terminal'

/** Outcomes that some of the sets expect, in their order: of readings from low to high. */
export function outcomesOf(
  question: Question,
  known: readonly KnownSet[],
  counted: readonly number[],
  reader: Reader,
): readonly Outcome[] {
  if (question.ask === 'reading') return readingOutcomes(question.pair, known, counted, reader)
  const { sighting } = question
  const answered = counted.map((k) => ({ k, answer: answerOf(sighting.answerOf, known[k]) }))
  return sighting.answers.flatMap((says, at): Outcome[] => {
    const sets = answered.flatMap(({ k, answer }) => (answer === at ? [k] : []))
    return sets.length === 0 ? [] : [{ says, sets }]
  })
}

function answerOf(of: (known: KnownSet) => number, known: KnownSet | undefined): number {
  return known === undefined ? Number.NaN : of(known)
}

/** So many standard deviations apart, readings are no longer one outcome. */
const APART = 3

function readingOutcomes(
  pair: Pair,
  known: readonly KnownSet[],
  counted: readonly number[],
  reader: Reader,
): readonly Outcome[] {
  const absent: number[] = []
  const open: number[] = []
  const numbers: { readonly k: number; readonly ohms: number }[] = []
  for (const k of counted) {
    const one = known[k]
    if (one === undefined) continue
    const there = hasTerminal(one, pair.red) && hasTerminal(one, pair.black)
    const ohms = there ? reader.read(one, pair)?.ohms : undefined
    if (ohms === undefined) absent.push(k)
    else if (ohms === Number.POSITIVE_INFINITY) open.push(k)
    else if (Number.isFinite(ohms)) numbers.push({ k, ohms })
  }
  const outcomes: { least: number; most: number; sets: number[] }[] = []
  for (const { k, ohms } of numbers.sort((a, b) => a.ohms - b.ohms)) {
    const last = outcomes.at(-1)
    if (last !== undefined && isNear(last.most, ohms, reader)) {
      last.most = ohms
      last.sets.push(k)
    } else outcomes.push({ least: ohms, most: ohms, sets: [k] })
  }
  return [
    ...outcomes,
    ...(open.length === 0 ? [] : [{ says: OPEN, sets: open }]),
    ...(absent.length === 0 ? [] : [{ says: NO_TERMINAL, sets: absent }]),
  ]
}

function isNear(a: number, b: number, reader: Reader): boolean {
  const sigma = reader.error(b) / Math.hypot(b, SCALE)
  return Math.asinh(b / SCALE) - Math.asinh(a / SCALE) < APART * sigma
}
