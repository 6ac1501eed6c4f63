/** Numbers of as many digits as are asked for. The arithmetic is mathjs's. */
import type { Big } from './big.ts'
import type { Mathjs } from './mathjs.ts'

/** Where numbers come from. */
export interface Digits {
  /** Significant digits that every operation keeps. */
  readonly kept: number
  readonly pi: Big
  /** A double as the shortest decimal that means it: 1.8e-6 is 1.8 millionths exactly. */
  of(value: number): Big
  /** A double with the bits that it has, to a hundred digits. */
  exactly(value: number): Big
  /** 10 to this power. */
  ten(power: number): Big
}

/** A context of its own with so many digits. */
export function digitsOf(mathjs: Mathjs, kept: number): Digits {
  const { pi, bignumber } = mathjs.decimals(kept)
  return {
    kept,
    pi,
    of: (value) => bignumber(String(value)),
    // the constructor keeps all digits that it is given; only operations round
    exactly: (value) => bignumber(value.toPrecision(100)),
    ten: (power) => bignumber(`1e${power}`),
  }
}
