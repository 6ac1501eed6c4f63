/** How a fault's score of a test is told from that of the sound set. */
import type { BenchAnswer, BenchTest } from './bench-test.ts'
import { at, type Book } from './book.ts'
import { compared } from './make-book.ts'

/** Two scores that differ by so many standard deviations are told apart; from memory, as for a meter that is read once. */
export const TOLD = 3

/** Beyond so many, nothing gets clearer. */
const CLEAR = 10

/** The answer that a person gives to a score; undefined where nothing is to be said of it. */
export function answerAt({ words }: BenchTest, score: number): BenchAnswer | undefined {
  if (words === undefined || Number.isNaN(score) || score === Number.NEGATIVE_INFINITY) return undefined
  return words.answers[words.cuts.filter((cut) => cut <= score).length]
}

/** What a person's reading means as a score: open above what the test takes for a number. */
export function scoreRead({ most }: BenchTest, value: number): number {
  return most !== undefined && value > most ? Number.POSITIVE_INFINITY : value
}

/** One standard deviation of u by the reading itself. */
function errorOf(test: BenchTest, score: number): number {
  return Number.isFinite(score) ? test.error(score) / Math.hypot(test.scale, score) : 0
}

/**
 * By how many standard deviations a fault's reading lies off the sound set's, 10 at most; 10 where one of them is open
 * and the other is a number, 0 where either is not known.
 */
export function clearness(book: Book, fault: number, test: number): number {
  const asked = book.tests[test]
  if (asked === undefined) throw new RangeError(`the book has no test ${test}`)
  const [sound, faulty] = [book.scores[at(book, 0, test)], book.scores[at(book, 1 + fault, test)]]
  if (sound === undefined || faulty === undefined) throw new RangeError(`the book has no fault ${fault}`)
  if ([sound, faulty].some((one) => Number.isNaN(one) || one === Number.NEGATIVE_INFINITY)) return 0
  if (sound === faulty) return 0
  if (!Number.isFinite(sound) || !Number.isFinite(faulty)) return CLEAR
  const step = compared(faulty, asked.scale) - compared(sound, asked.scale)
  const deviations = [
    book.spreads[at(book, 0, test)] ?? 0,
    book.spreads[at(book, 1 + fault, test)] ?? 0,
    errorOf(asked, sound),
  ]
  return Math.min(CLEAR, Math.abs(step) / Math.hypot(...deviations))
}

/**
 * The one or two readings that tell a fault best, by index: the one of least effort among those that tell, then one that
 * tells more clearly. Readings on a live line only where no other tells. None where no reading tells it.
 */
export function bestReadings(book: Book, fault: number): readonly number[] {
  const all = book.tests
    .map((test, index) => ({
      test,
      index,
      clear: test.words === undefined ? clearness(book, fault, index) : 0,
    }))
    .filter(({ clear }) => clear >= TOLD)
  const unplugged = all.filter(({ test }) => !test.live)
  const telling = unplugged.length > 0 ? unplugged : all
  const [first] = [...telling].sort(
    (p, q) => p.test.effort - q.test.effort || q.clear - p.clear || p.index - q.index,
  )
  if (first === undefined) return []
  const [clearest] = [...telling].sort(
    (p, q) => q.clear - p.clear || p.test.effort - q.test.effort || p.index - q.index,
  )
  return clearest === undefined || clearest.clear <= first.clear
    ? [first.index]
    : [first.index, clearest.index]
}
