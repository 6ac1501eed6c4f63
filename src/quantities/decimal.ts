import type { Scale } from './units.ts'

/** A decimal number as written, exact: sign · digits · 10^exponent. */
export interface Decimal {
  readonly negative: boolean
  /** decimal digits without point, at least one */
  readonly digits: string
  readonly exponent: number
  /** length of the text that was used */
  readonly end: number
}

// sign, then 12.5 or .5, whole part perhaps in groups of three, then a power of ten
const number = /^([+-]?)(\d{1,3}(?: \d{3})+(?!\d)|\d+)?(?:\.(\d*))?(?:[eE]([+-]?\d+))?/

/** Beyond any double, and small enough to stay an exact integer. */
const farExponent = 9999

/** Reads the number at the start of a text; `undefined` where none starts. Blanks must be plain ones. */
export function leadingDecimal(text: string): Decimal | undefined {
  const match = number.exec(text)
  if (match === null) return undefined
  const whole = (match[2] ?? '').replaceAll(' ', '')
  const fraction = match[3] ?? ''
  if (whole === '' && fraction === '') return undefined
  const power = Math.max(-farExponent, Math.min(farExponent, Number(match[4] ?? '0')))
  return {
    negative: match[1] === '-',
    digits: whole + fraction,
    exponent: power - fraction.length,
    end: match[0].length,
  }
}

/** π/180 · 10^42 */
const degree = 17453292519943295769236907684886127134428n
const degreeDigits = 42

/**
 * The double nearest to the decimal times its scale. The point is moved in the text and the text converted
 * once, so nothing is rounded twice; degrees are multiplied by 41 digits of π/180 as integers first.
 * Beyond the range of doubles: ±Infinity or 0.
 */
export function toDouble(decimal: Decimal, scale: Scale): number {
  const sign = decimal.negative ? '-' : ''
  const value =
    scale === 'degree'
      ? Number(`${sign}${BigInt(decimal.digits) * degree}e${decimal.exponent - degreeDigits}`)
      : Number(`${sign}${decimal.digits}e${decimal.exponent + scale}`)
  return value === 0 ? 0 : value // no negative zero
}

/** No part of a telephone is smaller than this in any base unit, zero excepted. */
export const finest = 1e-18

/** Whether a value is too small to mean anything, though what is written is not zero. */
export function isTooFine(decimal: Decimal, value: number): boolean {
  return Math.abs(value) < finest && !/^0*$/.test(decimal.digits)
}
