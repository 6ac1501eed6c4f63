/**
 * The contract of every linear engine: a square system `A x = b` on a fixed pattern.
 *
 * Alphabet of this folder: `A` matrix, `L U` factors, `b` right side, `x` solution, `n` order,
 * `p` row order, `slot` place of one entry in the engine's own storage.
 * This folder knows no electricity.
 */

/** Where entries may stand: the k-th entry is at (`rows[k]`, `columns[k]`). Entries may repeat. */
export interface Pattern {
  /** Number of unknowns, n. */
  readonly order: number
  readonly rows: ArrayLike<number>
  readonly columns: ArrayLike<number>
}

/** What a factorisation came to: usable, or stopped at the first dependent column. */
export type Factored =
  | { readonly ok: true /** largest |U| over largest |A|; about 1 when healthy */; readonly growth: number }
  | { readonly ok: false /** first column that depends on those before it */; readonly column: number }

/**
 * A system whose pattern is made once and whose values are refilled from zero.
 * Complex systems keep every vector interleaved: re at 2k, im at 2k + 1.
 */
export interface LinearSystem {
  readonly order: number
  readonly complex: boolean
  /** `slots[k]` is where the k-th entry of the pattern is kept; repeated entries share a slot. */
  readonly slots: Int32Array
  /** All values to zero; forgets the factors. */
  clear(): void
  /** Adds to one entry. During a refill only; never to undo an earlier add. `im` is ignored when real. */
  add(slot: number, re: number, im: number): void
  /** Chooses pivots and factors; may allocate. */
  factor(): Factored
  /**
   * Factors with the pivots of the last `factor()`; allocates nothing, unless these pivots no longer serve and fresh
   * ones are chosen. The outcome may be one object that the next call writes anew.
   */
  refactor(): Factored
  /** A system of its own with the same values and factors; what is done to one changes nothing of the other. */
  twin(): LinearSystem
  /** Solves for `columns` right sides kept one after the other in `b`, which becomes x. */
  solve(b: Float64Array, columns: number): void
  /** The same with Aᵀ (not conjugated). */
  solveTransposed(b: Float64Array, columns: number): void
  /** Scaled residual ‖A x − b‖∞ / (‖A‖∞ ‖x‖∞ n ε + tiny); about 1 when healthy. One right side. */
  residual(x: Float64Array, b: Float64Array): number
}
