/** The fault book: every fault's signature, which is what each test would show, and how far that spreads. */
import type { BenchTest } from './bench-test.ts'
import type { BookFault } from './fault.ts'
import type { Loadings } from './loadings.ts'

/** A book. Row 0 is the set as its sheet says; row 1 + f is fault f. Rows of `tests.length` numbers, one after the other. */
export interface Book {
  readonly tests: readonly BenchTest[]
  readonly faults: readonly BookFault[]
  /** Scores with all values as stated; `Amount` codes: +∞ open, NaN unfixed, −∞ unsettled. */
  readonly scores: Float64Array
  /** One standard deviation of u = asinh(score / scale) by the parts' tolerances alone; 0 where the score is no number. */
  readonly spreads: Float64Array
  /** What the spreads are made of, value by value; absent where that is not known. */
  readonly loadings?: Loadings
}

/** Where a row's score of a test stands; row 0 is the sound set. */
export function at({ tests }: Pick<Book, 'tests'>, row: number, test: number): number {
  return row * tests.length + test
}
