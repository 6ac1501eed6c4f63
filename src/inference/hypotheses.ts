/**
 * Hypotheses and what can be observed of them, in numbers alone; this floor knows no electricity. Faults of one set
 * are hypotheses, and so are the sets that may lie on the bench.
 */

/** What can be observed: a number x, or one of some answers by where x lies. */
export interface Observable {
  /** Numbers are compared as u = asinh(x / scale). */
  readonly scale: number
  /** Standard deviation of an observation of x by itself, in the unit of x. */
  error(x: number): number
  /** Where one answer gives way to the next, in x, rising; absent for a number. */
  readonly cuts?: readonly number[]
  /** How often an answer, or a reading, is simply mistaken: it is then any other with equal chance. */
  readonly slip: number
  /** Relative cost of the observation, above 0. */
  readonly effort: number
}

/**
 * What several observations share: values that nobody knows, one carbon transmitter's resistance say, each a standard
 * normal variable z of its own hypothesis. What z moves, it moves in every observation at once.
 */
export interface Loose {
  /** Values that move u in proportion. */
  readonly straight: number
  /** Values that spread so widely that u bends. */
  readonly curved: number
  /**
   * By how much each value moves u of an observable under hypothesis k: for each straight one the step for z = 1, then
   * for each curved one the steps for z = −2, −1, 1 and 2. All of `into` is overwritten; where no steps are known, by 0.
   */
  steps(k: number, observable: number, into: Float64Array): void
}

/** Numbers that a `Loose` writes. */
export function widthOf({ straight, curved }: Pick<Loose, 'straight' | 'curved'>): number {
  return straight + 4 * curved
}

/** Hypotheses by their index, rows of one number an observable. */
export interface Hypotheses {
  readonly observables: readonly Observable[]
  readonly count: number
  /** Probabilities before anything is observed; their sum and that of `none` is 1. */
  readonly prior: Float64Array
  /** Probability that it is none of these: it answers anything with a broad likelihood. */
  readonly none: number
  /** Expected x: a number, +∞ for `open`, NaN where anything might be observed, −∞ likewise. */
  readonly expected: Float64Array
  /** Standard deviation of u around its expected value, besides the observation's own error. */
  readonly spread: Float64Array
  /** What the spread is made of; absent where every observation spreads by itself. */
  readonly loose?: Loose
  /** What these were before anything was observed; whatever no hypothesis explains knows nothing of evidence. */
  readonly origin?: Hypotheses
}

/** What was observed: the number (+∞ for `open`), the answer by its index, or that it was one of several answers. */
export interface Observation {
  readonly observable: number
  readonly x?: number
  readonly answer?: number
  readonly answers?: readonly number[]
}

/** How probable each hypothesis is, and that it is none of them; the sum is 1. */
export interface Belief {
  readonly of: Float64Array
  readonly none: number
}
