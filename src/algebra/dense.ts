import {
  columnMaximaComplex,
  factorComplex,
  residualComplex,
  solveComplex,
  solveTransposedComplex,
} from './dense-complex.ts'
import { columnMaximaReal, factorReal, residualReal, solveReal, solveTransposedReal } from './dense-real.ts'
import type { Factored, LinearSystem, Pattern } from './system.ts'

/** Keeps the residual of the zero solution of a zero right side at 0 instead of 0/0. */
const tiny = 2.2250738585072014e-308

/**
 * The dense engine: LU with partial pivoting by rows. Oracle of the contract suite, and the fallback that names the
 * first dependent column of a singular system.
 *
 * A column is dependent where all that is left of it is below 1e-14 of its largest entry in A *and* lost in the rounding
 * of what was subtracted: a small conductance that met nothing larger is small, not singular.
 *
 * @throws RangeError where an entry of the pattern stands outside the order
 */
export function createDense(pattern: Pattern, complex: boolean): LinearSystem {
  return new Dense(pattern.order, slotsOf(pattern), complex)
}

class Dense implements LinearSystem {
  readonly order: number
  readonly complex: boolean
  readonly slots: Int32Array
  /** n·n values by rows, and their factors in the row order p */
  readonly #a: Float64Array
  readonly #lu: Float64Array
  readonly #p: Int32Array
  /** 1 / U(k,k); complex only */
  readonly #inverse: Float64Array
  /** workspaces: largest entry by column (n), one right side */
  readonly #maxima: Float64Array
  readonly #w: Float64Array
  #ordered = false
  #factored = false

  constructor(n: number, slots: Int32Array, complex: boolean) {
    const parts = complex ? 2 : 1
    this.order = n
    this.complex = complex
    this.slots = slots
    this.#a = new Float64Array(parts * n * n)
    this.#lu = new Float64Array(parts * n * n)
    this.#p = new Int32Array(n)
    this.#inverse = new Float64Array(complex ? 2 * n : 0)
    this.#maxima = new Float64Array(n)
    this.#w = new Float64Array(parts * n)
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
    return this.#run(true)
  }

  /**
   * Where there is no kept order, or one of its pivots is lost in rounding, the rows are ordered anew:
   * a refusal always means a dependent column.
   */
  refactor(): Factored {
    const kept = this.#ordered ? this.#run(false) : undefined
    return kept?.ok ? kept : this.#run(true)
  }

  #run(choose: boolean): Factored {
    const n = this.order
    const largest = this.complex
      ? columnMaximaComplex(this.#a, n, this.#maxima)
      : columnMaximaReal(this.#a, n, this.#maxima)
    if (!Number.isFinite(largest)) throw new RangeError('the system holds a value that is not finite')
    const outcome = this.complex
      ? factorComplex(this.#a, n, this.#lu, this.#p, this.#inverse, this.#maxima, choose)
      : factorReal(this.#a, n, this.#lu, this.#p, this.#maxima, choose)
    this.#factored = outcome >= 0
    if (outcome < 0) {
      this.#ordered = false // rows ordered only so far are no order to keep
      return { ok: false, column: -1 - outcome }
    }
    this.#ordered = true
    return { ok: true, growth: largest === 0 ? 1 : outcome / largest }
  }

  twin(): LinearSystem {
    const own = new Dense(this.order, this.slots, this.complex)
    own.#a.set(this.#a)
    own.#lu.set(this.#lu)
    own.#p.set(this.#p)
    own.#inverse.set(this.#inverse)
    own.#ordered = this.#ordered
    own.#factored = this.#factored
    return own
  }

  solve(b: Float64Array, columns: number): void {
    const step = this.#stepThrough(b, columns)
    for (let k = 0; k < columns; k++) {
      if (this.complex) solveComplex(this.#lu, this.order, this.#p, this.#inverse, b, k * step, this.#w)
      else solveReal(this.#lu, this.order, this.#p, b, k * step, this.#w)
    }
  }

  solveTransposed(b: Float64Array, columns: number): void {
    const step = this.#stepThrough(b, columns)
    for (let k = 0; k < columns; k++) {
      if (this.complex)
        solveTransposedComplex(this.#lu, this.order, this.#p, this.#inverse, b, k * step, this.#w)
      else solveTransposedReal(this.#lu, this.order, this.#p, b, k * step, this.#w)
    }
  }

  /** Length of one right side, once it is sure that there are factors and that all of them fit. */
  #stepThrough(b: Float64Array, columns: number): number {
    if (!this.#factored) throw new Error('solve() without factors: factor() was not called, or it refused')
    const step = this.complex ? 2 * this.order : this.order
    if (b.length < step * columns)
      throw new RangeError(`${columns} right sides of ${step} numbers do not fit into ${b.length}`)
    return step
  }

  residual(x: Float64Array, b: Float64Array): number {
    const value = this.complex
      ? residualComplex(this.#a, this.order, x, b, tiny)
      : residualReal(this.#a, this.order, x, b, tiny)
    // a solution that is no number has no good residual
    return value >= 0 ? value : Number.POSITIVE_INFINITY
  }
}

function slotsOf({ order, rows, columns }: Pattern): Int32Array {
  if (!Number.isInteger(order) || order < 0) throw new RangeError(`a system of order ${order}`)
  if (rows.length !== columns.length)
    throw new RangeError(`${rows.length} rows beside ${columns.length} columns`)
  const slots = new Int32Array(rows.length)
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k]!
    const column = columns[k]!
    if (!(row >= 0 && row < order && column >= 0 && column < order)) {
      throw new RangeError(`entry ${k} at (${row}, ${column}) is outside a system of order ${order}`)
    }
    slots[k] = row * order + column
  }
  return slots
}
