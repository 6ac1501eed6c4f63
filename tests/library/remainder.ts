import type { Complex } from '../support/complex.ts'

/** One entry of the tableau. */
export interface Entry {
  readonly row: number
  readonly column: number
  readonly value: Complex
}

/** An unknown with twice the digits: the value is the nearest double, the tail what it leaves out. */
export interface Unknown {
  readonly value: Complex
  readonly tail: Complex
}

/** The remainder b - A x with every sum carried in twice the working precision. */
export function remainder(
  entries: readonly Entry[],
  x: readonly Unknown[],
  b: readonly Complex[],
): Complex[] {
  const sums = b.map(({ re, im }) => ({ re: new Sum(re), im: new Sum(im) }))
  for (const { row, column, value } of entries) {
    const sum = sums[row]
    const unknown = x[column]
    if (!sum || !unknown) throw new Error(`no place for the entry at ${row}, ${column}`)
    for (const part of [unknown.value, unknown.tail]) {
      sum.re.addProduct(-value.re, part.re)
      sum.re.addProduct(value.im, part.im)
      sum.im.addProduct(-value.re, part.im)
      sum.im.addProduct(-value.im, part.re)
    }
  }
  return sums.map(({ re, im }) => ({ re: re.value, im: im.value }))
}

/** The unknown with a correction added, no digit of it lost. */
export function improved({ value, tail }: Unknown, correction: Complex): Unknown {
  const add = (high: number, low: number, more: number): [number, number] => {
    const sum = new Sum(high)
    sum.addProduct(1, low)
    sum.addProduct(1, more)
    return sum.pair
  }
  const [re, reTail] = add(value.re, tail.re, correction.re)
  const [im, imTail] = add(value.im, tail.im, correction.im)
  return { value: { re, im }, tail: { re: reTail, im: imTail } }
}

/**
 * A running sum with its rounding errors kept beside it.
 *
 * @source Knuth's two-sum and Dekker's product (1971), both MEMORY
 */
class Sum {
  #high: number
  #low = 0

  constructor(start: number) {
    this.#high = start
  }

  get value(): number {
    return this.#high + this.#low
  }

  get pair(): [number, number] {
    const value = this.value
    return [value, this.#high - value + this.#low]
  }

  addProduct(a: number, b: number): void {
    const product = a * b
    const [ah, al] = split(a)
    const [bh, bl] = split(b)
    const error = al * bl - (product - ah * bh - al * bh - ah * bl)
    const sum = this.#high + product
    const back = sum - this.#high
    this.#low += this.#high - (sum - back) + (product - back) + error
    this.#high = sum
  }
}

/** Two halves of 26 bits each whose products are exact. */
function split(a: number): [number, number] {
  const c = 134217729 * a
  const high = c - (c - a)
  return [high, a - high]
}
