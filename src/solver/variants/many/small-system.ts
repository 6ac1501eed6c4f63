/**
 * The small dense system M·g = r of an update of any rank, complex, interleaved re, im. Rows and columns are scaled to
 * like size first, since volts and amperes meet in it; partial pivoting. Nothing is allocated after the making.
 */
import { accumulate, accumulateProduct } from '../../../algebra/double-double.ts'

/** Most rows that a system holds. */
export const MOST_ROWS = 40

/** A row whose largest entry is less than this share of what it was made of says nothing. */
const NOTHING = 1e-14

/**
 * A scaled matrix with a smaller pivot is not to be trusted, even with twice the digits. Design 5 asks for 1e-6 in plain
 * numbers; tables with tails hold as many digits more.
 */
export const LEAST_PIVOT = 1e-11

/** Steps of refinement with twice the digits. */
const STEPS = 3

export class SmallSystem {
  /** Rows in use. */
  n = 0
  /** M as it is filled, row-major with `MOST_ROWS` entries a row, and its tails where they are wanted. */
  readonly m: Float64Array = new Float64Array(2 * MOST_ROWS * MOST_ROWS)
  readonly mTail: Float64Array = new Float64Array(2 * MOST_ROWS * MOST_ROWS)
  /** What each row was made of, to tell a small number from a lost one. */
  readonly made: Float64Array = new Float64Array(MOST_ROWS)
  /** r and g, with their tails. */
  readonly r: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly rTail: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly g: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly gTail: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly #lu: Float64Array = new Float64Array(2 * MOST_ROWS * MOST_ROWS)
  readonly #order: Int32Array = new Int32Array(MOST_ROWS)
  readonly #rows: Float64Array = new Float64Array(MOST_ROWS)
  readonly #columns: Float64Array = new Float64Array(MOST_ROWS)
  readonly #w: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly #rest: Float64Array = new Float64Array(2 * MOST_ROWS)
  readonly #restTail: Float64Array = new Float64Array(2 * MOST_ROWS)

  /**
   * Factors M. Gives the smallest pivot of the scaled matrix, whose largest entries are 1: about what can be trusted of
   * its inverse (design 5). 0 where it is singular or some row says nothing.
   */
  factor(): number {
    const { n, m } = this
    const lu = this.#lu
    const rows = this.#rows
    const columns = this.#columns
    const order = this.#order
    for (let i = 0; i < n; i += 1) {
      let most = 0
      for (let j = 0; j < n; j += 1) {
        const at = 2 * (i * MOST_ROWS + j)
        const size = Math.abs(m[at]!) + Math.abs(m[at + 1]!)
        if (!(size <= most)) most = size
      }
      if (!(most > NOTHING * this.made[i]!) || !Number.isFinite(most)) return 0
      rows[i] = 1 / most
      order[i] = i
    }
    for (let j = 0; j < n; j += 1) {
      let most = 0
      for (let i = 0; i < n; i += 1) {
        const at = 2 * (i * MOST_ROWS + j)
        const size = (Math.abs(m[at]!) + Math.abs(m[at + 1]!)) * rows[i]!
        if (size > most) most = size
      }
      if (most === 0) return 0
      columns[j] = 1 / most
    }
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < n; j += 1) {
        const at = 2 * (i * MOST_ROWS + j)
        const scale = rows[i]! * columns[j]!
        lu[at] = m[at]! * scale
        lu[at + 1] = m[at + 1]! * scale
      }
    }
    return this.#eliminate()
  }

  #eliminate(): number {
    const { n } = this
    const lu = this.#lu
    const order = this.#order
    let least = 1
    for (let k = 0; k < n; k += 1) {
      let best = k
      let most = -1
      for (let i = k; i < n; i += 1) {
        const at = 2 * (order[i]! * MOST_ROWS + k)
        const size = Math.abs(lu[at]!) + Math.abs(lu[at + 1]!)
        if (size > most) {
          most = size
          best = i
        }
      }
      if (!(most > 0)) return 0
      if (most < least) least = most
      const row = order[best]!
      order[best] = order[k]!
      order[k] = row
      const top = row * MOST_ROWS
      const pRe = lu[2 * (top + k)]!
      const pIm = lu[2 * (top + k) + 1]!
      const square = pRe * pRe + pIm * pIm
      for (let i = k + 1; i < n; i += 1) {
        const line = order[i]! * MOST_ROWS
        const at = 2 * (line + k)
        const aRe = lu[at]!
        const aIm = lu[at + 1]!
        if (aRe === 0 && aIm === 0) continue
        const lRe = (aRe * pRe + aIm * pIm) / square
        const lIm = (aIm * pRe - aRe * pIm) / square
        lu[at] = lRe
        lu[at + 1] = lIm
        for (let j = k + 1; j < n; j += 1) {
          const u = 2 * (top + j)
          const uRe = lu[u]!
          const uIm = lu[u + 1]!
          const to = 2 * (line + j)
          lu[to] = lu[to]! - (lRe * uRe - lIm * uIm)
          lu[to + 1] = lu[to + 1]! - (lRe * uIm + lIm * uRe)
        }
      }
    }
    return least
  }

  /** g = M⁻¹ r, without tails. */
  solve(): void {
    this.#apply(this.r, this.g)
  }

  #apply(r: Float64Array, g: Float64Array): void {
    const { n } = this
    const lu = this.#lu
    const order = this.#order
    const w = this.#w
    for (let i = 0; i < n; i += 1) {
      const row = order[i]!
      const line = row * MOST_ROWS
      let re = r[2 * row]! * this.#rows[row]!
      let im = r[2 * row + 1]! * this.#rows[row]!
      for (let j = 0; j < i; j += 1) {
        const at = 2 * (line + j)
        re -= lu[at]! * w[2 * j]! - lu[at + 1]! * w[2 * j + 1]!
        im -= lu[at]! * w[2 * j + 1]! + lu[at + 1]! * w[2 * j]!
      }
      w[2 * i] = re
      w[2 * i + 1] = im
    }
    for (let i = n - 1; i >= 0; i -= 1) {
      const line = order[i]! * MOST_ROWS
      let re = w[2 * i]!
      let im = w[2 * i + 1]!
      for (let j = i + 1; j < n; j += 1) {
        const at = 2 * (line + j)
        re -= lu[at]! * w[2 * j]! - lu[at + 1]! * w[2 * j + 1]!
        im -= lu[at]! * w[2 * j + 1]! + lu[at + 1]! * w[2 * j]!
      }
      const at = 2 * (line + i)
      const pRe = lu[at]!
      const pIm = lu[at + 1]!
      const square = pRe * pRe + pIm * pIm
      w[2 * i] = (re * pRe + im * pIm) / square
      w[2 * i + 1] = (im * pRe - re * pIm) / square
    }
    for (let i = 0; i < n; i += 1) {
      g[2 * i] = w[2 * i]! * this.#columns[i]!
      g[2 * i + 1] = w[2 * i + 1]! * this.#columns[i]!
    }
  }

  /** Improves g by what M, with its tails, leaves of r: twice the digits, as `refine.ts` has them. */
  refine(): void {
    const { n, m, mTail, r, rTail, g, gTail } = this
    const rest = this.#rest
    const restTail = this.#restTail
    gTail.fill(0, 0, 2 * n)
    for (let step = 0; step < STEPS; step += 1) {
      for (let i = 0; i < n; i += 1) {
        for (let part = 0; part < 2; part += 1) {
          rest[2 * i + part] = r[2 * i + part]!
          restTail[2 * i + part] = rTail[2 * i + part]!
        }
        for (let j = 0; j < n; j += 1) {
          const at = 2 * (i * MOST_ROWS + j)
          addProduct(rest, restTail, 2 * i, -1, m, mTail, at, g, gTail, 2 * j)
        }
      }
      this.#apply(rest, rest)
      for (let k = 0; k < 2 * n; k += 1) accumulate(g, gTail, k, rest[k]!)
    }
  }
}

/** sum[at] += sign · x[k] · y[j], complex, all with tails. */
export function addProduct(
  sum: Float64Array,
  sumTail: Float64Array,
  at: number,
  sign: number,
  x: Float64Array,
  xTail: Float64Array,
  k: number,
  y: Float64Array,
  yTail: Float64Array,
  j: number,
): void {
  const xRe = sign * x[k]!
  const xIm = sign * x[k + 1]!
  accumulateProduct(sum, sumTail, at, xRe, y[j]!, yTail[j]!)
  accumulateProduct(sum, sumTail, at, -xIm, y[j + 1]!, yTail[j + 1]!)
  accumulateProduct(sum, sumTail, at + 1, xRe, y[j + 1]!, yTail[j + 1]!)
  accumulateProduct(sum, sumTail, at + 1, xIm, y[j]!, yTail[j]!)
  const tRe = sign * xTail[k]!
  const tIm = sign * xTail[k + 1]!
  if (tRe === 0 && tIm === 0) return
  accumulate(sum, sumTail, at, tRe * y[j]! - tIm * y[j + 1]!)
  accumulate(sum, sumTail, at + 1, tRe * y[j + 1]! + tIm * y[j]!)
}
