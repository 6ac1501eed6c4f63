import { type Choice, chooseAndFactor } from './sparse-choice.ts'
import { type Columns, columnsOf } from './sparse-columns.ts'
import { emptyFactors, type Factors } from './sparse-factors.ts'
import { learnFloors } from './sparse-floors.ts'
import { destinationsOf, operationsOf } from './sparse-operations.ts'
import { placeComplex, refactorByColumnsComplex, refactorComplex } from './sparse-refactor-complex.ts'
import { placeReal, refactorByColumnsReal, refactorReal } from './sparse-refactor-real.ts'
import { residualComplex, residualReal } from './sparse-residual.ts'
import { solveComplex, solveTransposedComplex } from './sparse-solve-complex.ts'
import { solveReal, solveTransposedReal } from './sparse-solve-real.ts'
import { largestOfA, largestOfU, steepestAt, watchSize } from './sparse-watch.ts'
import type { Factored, LinearSystem, Pattern } from './system.ts'

/**
 * A longer list of operations is not made. The list saves a third of the time where there is little fill-in and nothing
 * where there is much, and then its making costs more than it ever saves.
 */
const mostOperations = 2_000_000
/** A kept pivot may be smaller than an entry under it by this factor; a fresh one by 10. */
const steepest = 1e3
/** A refactorisation that grew beyond this is not trusted, unless the fresh choice grew about as much. */
const mostGrowth = 1e6

/**
 * The sparse engine: columns matched with rows and ordered for little fill, pivots chosen once by `factor()`, and
 * afterwards only sums on a fixed pattern. Time and space grow with the entries of the factors.
 *
 * `refactor()` allocates nothing and hands out one and the same object, written anew each time; but where kept pivots
 * no longer serve, it chooses fresh ones by `factor()`, which does allocate. A refusal names the first dependent
 * column; beyond 500 unknowns, where their own order would take too long, one of those that depend on each other.
 *
 * @throws RangeError where an entry of the pattern stands outside the order; in `factor()` and `refactor()` where a
 * value is not finite
 */
export function createSparse(pattern: Pattern, complex: boolean): LinearSystem {
  return new Sparse(columnsOf(pattern), complex)
}

/**
 * An empty system of the pattern of another one. It starts with the order of columns that served there, which changes
 * nothing but the time: order and pivots are a function of pattern and values.
 */
export function sparseLike(other: LinearSystem): LinearSystem {
  return other instanceof Sparse ? other.kin() : other.twin()
}

/** Whether a system is one of this engine. */
export function isSparse(system: LinearSystem): boolean {
  return system instanceof Sparse
}

class Sparse implements LinearSystem {
  readonly order: number
  readonly complex: boolean
  readonly slots: Int32Array
  readonly #columns: Columns
  readonly #a: Float64Array
  /** workspaces: a vector, zero between calls where `refactor()` needs it so, and sizes of rows */
  readonly #w: Float64Array
  readonly #rows: Float64Array
  readonly #outcome: { ok: true; growth: number } = { ok: true, growth: 0.5 }
  readonly #floors: Float64Array
  readonly #watch: Float64Array = new Float64Array(watchSize)
  #choice: Choice | undefined
  #factors: Factors
  /** Where in a vector the row of each place of the factors is. */
  #places: Int32Array = new Int32Array(0)
  /** Where A goes in the factors, and the operations; an empty list where it would be too long. */
  #to: Int32Array = new Int32Array(0)
  #list: Int32Array = new Int32Array(0)
  #mostGrowth = mostGrowth
  #ordered = false
  #factored = false

  constructor(columns: Columns, complex: boolean) {
    this.#columns = columns
    this.order = this.#columns.order
    this.complex = complex
    this.slots = this.#columns.slots
    const width = complex ? 2 : 1
    this.#a = new Float64Array(width * this.#columns.rows.length)
    this.#w = new Float64Array(width * this.order)
    this.#rows = new Float64Array(this.order)
    this.#floors = new Float64Array(this.order)
    this.#factors = emptyFactors(0, 0, complex)
  }

  clear(): void {
    this.#a.fill(0)
    this.#factored = false
  }

  add(slot: number, re: number, im: number): void {
    const a = this.#a
    if (this.complex) {
      a[2 * slot] = a[2 * slot]! + re
      a[2 * slot + 1] = a[2 * slot + 1]! + im
    } else {
      a[slot] = a[slot]! + re
    }
  }

  factor(): Factored {
    this.#factored = false
    this.#ordered = false
    for (const value of this.#a) {
      if (!Number.isFinite(value)) throw new RangeError('the system holds a value that is not finite')
    }
    const chosen = chooseAndFactor(this.#columns, this.#a, this.complex, this.#choice)
    if (!chosen.ok) return chosen
    this.#choice = chosen.choice
    this.#factors = chosen.factors
    const { index } = chosen.factors
    this.#places = this.complex ? index.map((step) => 2 * step) : index
    this.#to = destinationsOf(this.#columns, this.#factors, this.complex)
    this.#list =
      this.#factors.operations > mostOperations
        ? new Int32Array(0)
        : operationsOf(this.#factors, this.complex)
    this.#firstRun()
    this.#ordered = true
    this.#factored = true
    const growth = this.#growth()
    this.#mostGrowth = Math.max(mostGrowth, 16 * growth)
    return { ok: true, growth }
  }

  /** Fills the factors by the kernel of `refactor()`, so that both give the same bits; learns what is usual here. */
  #firstRun(): void {
    const watch = this.#watch
    this.#floors.fill(0)
    watch[steepestAt] = Number.POSITIVE_INFINITY // fresh pivots are what they are
    this.#run()
    watch[steepestAt] = steepest
    learnFloors(this.#factors, this.complex, this.#floors)
  }

  refactor(): Factored {
    this.#factored = false
    if (!this.#ordered || !this.#run()) return this.factor()
    const outcome = this.#outcome
    outcome.growth = this.#growth()
    if (!(outcome.growth <= this.#mostGrowth)) return this.factor()
    this.#factored = true
    return outcome
  }

  #growth(): number {
    const largest = this.#watch[largestOfA]!
    return largest === 0 ? 1 : this.#watch[largestOfU]! / largest
  }

  /** Factors with the kept pivots; `false` where one is too small, or A not finite. */
  #run(): boolean {
    const { values, starts, diagonals, index } = this.#factors
    const list = this.#list
    const watch = this.#watch
    const complex = this.complex
    if (complex) placeComplex(this.#a, this.#to, values, watch)
    else placeReal(this.#a, this.#to, values, watch)
    if (!(watch[largestOfA]! < Number.POSITIVE_INFINITY)) return false
    if (list.length > 0 || this.order === 0)
      return complex
        ? refactorComplex(values, list, this.order, this.#floors, watch)
        : refactorReal(values, list, this.order, this.#floors, watch)
    const w = this.#w.fill(0)
    return complex
      ? refactorByColumnsComplex(values, starts, diagonals, index, w, this.#floors, watch)
      : refactorByColumnsReal(values, starts, diagonals, index, w, this.#floors, watch)
  }

  kin(): LinearSystem {
    const own = new Sparse(this.#columns, this.complex)
    own.#choice = this.#choice
    return own
  }

  /** The pattern, the choice and the lists are shared; they are never written again once they are made. */
  twin(): LinearSystem {
    const own = new Sparse(this.#columns, this.complex)
    own.#a.set(this.#a)
    own.#floors.set(this.#floors)
    own.#watch.set(this.#watch)
    own.#choice = this.#choice
    own.#factors = { ...this.#factors, values: this.#factors.values.slice() }
    own.#places = this.#places
    own.#to = this.#to
    own.#list = this.#list
    own.#mostGrowth = this.#mostGrowth
    own.#ordered = this.#ordered
    own.#factored = this.#factored
    return own
  }

  solve(b: Float64Array, columns: number): void {
    const { values, starts, diagonals, rowOf, columnOf } = this.#factors
    const step = this.#stepThrough(b, columns)
    const way = this.complex ? solveComplex : solveReal
    for (let k = 0; k < columns; k++)
      way(values, starts, diagonals, this.#places, rowOf, columnOf, b, k * step, this.#w)
  }

  solveTransposed(b: Float64Array, columns: number): void {
    const { values, starts, diagonals, rowOf, columnOf } = this.#factors
    const step = this.#stepThrough(b, columns)
    const way = this.complex ? solveTransposedComplex : solveTransposedReal
    for (let k = 0; k < columns; k++)
      way(values, starts, diagonals, this.#places, rowOf, columnOf, b, k * step, this.#w)
  }

  /** Length of one right side, once it is sure that there are factors and that all of them fit. */
  #stepThrough(b: Float64Array, columns: number): number {
    if (!this.#factored) throw new Error('solve() without factors: factor() was not called, or it refused')
    const step = this.#w.length
    if (b.length < step * columns)
      throw new RangeError(`${columns} right sides of ${step} numbers do not fit into ${b.length}`)
    return step
  }

  residual(x: Float64Array, b: Float64Array): number {
    return (this.complex ? residualComplex : residualReal)(this.#columns, this.#a, x, b, this.#w, this.#rows)
  }
}
