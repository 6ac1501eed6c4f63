import { all, create } from 'mathjs'

/** A second opinion in 40 digits, by bisection alone: no formula of the parts is used. */
const { bignumber } = create(all ?? {}, { number: 'BigNumber', precision: 40 })

/** What the tests need of a number of 40 digits. */
export interface Big {
  plus(other: Big | number): Big
  minus(other: Big | number): Big
  times(other: Big | number): Big
  div(other: Big | number): Big
  pow(exponent: number): Big
  ln(): Big
  isNegative(): boolean
  toNumber(): number
}

/** Where a rising function crosses zero between two numbers, to 30 digits, as a double. */
export function crossing(f: (x: Big) => Big, from: number, to: number): number {
  let low = bignumber(from) as unknown as Big
  let high = bignumber(to) as unknown as Big
  for (let step = 0; step < 110; step += 1) {
    const middle = low.plus(high).div(2)
    if (f(middle).isNegative()) low = middle
    else high = middle
  }
  return low.plus(high).div(2).toNumber()
}
