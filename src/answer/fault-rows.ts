/** The faults of a book as rows: what a person notices of each, and which readings tell it. */
import type { BenchTest } from '../book/bench-test.ts'
import { at, type Book } from '../book/book.ts'
import type { BookFault } from '../book/fault.ts'
import type { Pairs } from '../book/pairs.ts'
import { answerAt, bestReadings, clearness } from '../book/tell-apart.ts'
import { type AskedSymptom, showsAll } from './asked-symptoms.ts'
import type { FaultRow, Notice, PairRow, PairsAnswer, Shown, Telling } from './faults-answer.ts'

/** Answers that are not as they should be. */
export function noticesOf(tests: readonly BenchTest[], scoreOf: (test: number) => number): readonly Notice[] {
  return tests.flatMap((test, k): Notice[] => {
    const answer = answerAt(test, scoreOf(k))
    if (answer === undefined || answer.fine) return []
    return [{ test: test.id, asks: test.asks, answer: answer.id, says: answer.says }]
  })
}

/** The scores of one row of a book. */
export function scoresOf(book: Book, row: number): (test: number) => number {
  return (test) => book.scores[at(book, row, test)] ?? Number.NaN
}

/** A fault's row. */
export function faultRow(book: Book, index: number, fault: BookFault): FaultRow {
  const { id, subjects, family, says, sign, mend, weight, source } = fault
  return {
    ...{ fault: id, subjects, family, says, sign, mend, weight, source },
    notices: noticesOf(book.tests, scoresOf(book, 1 + index)),
    tells: bestReadings(book, index).flatMap((test) => tellingOf(book, index, test)),
  }
}

function tellingOf(book: Book, fault: number, index: number): readonly Telling[] {
  const test = book.tests[index]
  if (test === undefined) return []
  const { id, asks, how, site, live, condition, unit, scale } = test
  return [
    {
      ...{ test: id, asks, how, site, live, condition, unit, resolution: scale },
      sound: shownOf(scoresOf(book, 0)(index)),
      faulty: shownOf(scoresOf(book, 1 + fault)(index)),
      clearness: clearness(book, fault, index),
    },
  ]
}

function shownOf(score: number): Shown {
  if (Number.isFinite(score)) return { value: score }
  if (Number.isNaN(score)) return { value: null, state: 'undetermined' }
  return { value: null, state: score > 0 ? 'open' : 'no-convergence' }
}

/** Whether nobody can tell a fault from the sound set: no answer differs, no reading tells. */
export function movesNothing(book: Book, index: number, { tells }: FaultRow): boolean {
  const [sound, faulty] = [scoresOf(book, 0), scoresOf(book, 1 + index)]
  return (
    tells.length === 0 &&
    book.tests.every((test, k) => answerAt(test, sound(k))?.id === answerAt(test, faulty(k))?.id)
  )
}

/** So many pairs are shown. */
const SHOWN = 100

/** The pairs that show all symptoms asked for; shown are those of which neither fault shows them alone, the likeliest first. */
export function pairsAnswer(book: Book, pairs: Pairs, asked: readonly AskedSymptom[]): PairsAnswer {
  const { tests, faults } = book
  const scoreOf = (pair: number) => (test: number) => pairs.scores[pair * tests.length + test] ?? Number.NaN
  const weight = (pair: number): number =>
    (faults[pairs.first[pair] ?? 0]?.weight ?? 0) * (faults[pairs.second[pair] ?? 0]?.weight ?? 0)
  const matching = Array.from({ length: pairs.count }, (_, pair) => pair).filter((pair) =>
    showsAll(tests, asked, scoreOf(pair)),
  )
  const alone = faults.map((_, k) => asked.length > 0 && showsAll(tests, asked, scoresOf(book, 1 + k)))
  const together = matching.filter(
    (pair) => alone[pairs.first[pair] ?? 0] !== true && alone[pairs.second[pair] ?? 0] !== true,
  )
  const likeliest = [...together].sort((p, q) => weight(q) - weight(p) || p - q).slice(0, SHOWN)
  return {
    count: pairs.count,
    matching: matching.length,
    'only together': together.length,
    likeliest: likeliest.flatMap((pair): PairRow[] => {
      const [one, other] = [faults[pairs.first[pair] ?? 0], faults[pairs.second[pair] ?? 0]]
      if (one === undefined || other === undefined) return []
      return [
        {
          faults: [one.id, other.id],
          says: [one.says, other.says],
          notices: noticesOf(tests, scoreOf(pair)),
        },
      ]
    }),
  }
}
