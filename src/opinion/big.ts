/** A decimal number; `plus` and its like round to the digits of the context that made it. */
export interface Big {
  plus(other: Big): Big
  minus(other: Big): Big
  times(other: Big): Big
  div(other: Big): Big
  neg(): Big
  abs(): Big
  sqrt(): Big
  cmp(other: Big): number
  isZero(): boolean
  toNumber(): number
  /** Digits before and behind the point, no exponent. */
  toFixed(): string
  toPrecision(digits: number): string
  /** Power of ten of the first digit. */
  readonly e: number
}
