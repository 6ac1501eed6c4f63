import type { UnitName } from './units.ts'

type Prefixes = readonly (readonly [exponent: number, symbol: string])[]

const electrical: Prefixes = [
  [-12, 'p'],
  [-9, 'n'],
  [-6, 'µ'],
  [-3, 'm'],
  [0, ''],
  [3, 'k'],
  [6, 'M'],
  [9, 'G'],
]
const ofLength: Prefixes = [
  [-3, 'm'],
  [0, ''],
  [3, 'k'],
]
const ofTime: Prefixes = [
  [-6, 'µ'],
  [-3, 'm'],
  [0, ''],
]
const noPrefix: Prefixes = [[0, '']]

function prefixesOf(unit: UnitName): Prefixes {
  switch (unit) {
    case 'm':
      return ofLength
    case 's':
      return ofTime
    case '°C':
    case 'rad':
    case '1':
    case 'dB':
      return noPrefix
    default:
      return electrical
  }
}

/** Positional notation holds from 0.00123 to 123456 before the unit; beyond it the power of ten is written out. */
const leastPower = -3
const mostPower = 5

interface Written {
  readonly number: string
  readonly prefix: string
}

/** `value` · 10^`raise`. Rounds once, in decimal, and then only moves the point: the prefix is chosen after rounding. */
function write(value: number, prefixes: Prefixes, digits: number | undefined, raise: number = 0): Written {
  if (!Number.isFinite(value))
    throw new TypeError(`cannot format ${value}: a figure that has no value has a state instead`)
  if (value === 0) return { number: '0', prefix: '' }
  // 999.96 to four digits is already 1.000e+3 here
  const exponential = digits === undefined ? value.toExponential() : value.toExponential(digits - 1)
  const [mantissa = '', power = '0'] = exponential.split('e')
  const exponent = Number(power) + raise
  const sign = mantissa.startsWith('-') ? '-' : ''
  const figures = mantissa.replace(/[-.]/g, '')
  let chosen = prefixes[0] ?? ([0, ''] as const)
  for (const candidate of prefixes) if (candidate[0] <= exponent) chosen = candidate
  const shift = exponent - chosen[0]
  if (shift < leastPower || shift > mostPower) return { number: `${mantissa}e${exponent}`, prefix: '' }
  if (shift < 0) return { number: `${sign}0.${'0'.repeat(-shift - 1)}${figures}`, prefix: chosen[1] }
  const whole = figures.slice(0, shift + 1).padEnd(shift + 1, '0')
  const fraction = figures.slice(shift + 1)
  return { number: sign + whole + (fraction === '' ? '' : `.${fraction}`), prefix: chosen[1] }
}

function attach({ number, prefix }: Written, unit: UnitName): string {
  return unit === '1' ? number : `${number} ${prefix}${unit}`
}

/** Degrees in print lose their idle zeros: `30°`. */
function inDegrees(radians: number, digits: number | undefined): string {
  const { number } = write((radians * 180) / Math.PI, noPrefix, digits ?? 15)
  const [mantissa = '', power] = number.split('e')
  const short = mantissa.includes('.') ? mantissa.replace(/\.?0+$/, '') : mantissa
  return `${short}${power === undefined ? '' : `e${power}`}°`
}

/**
 * A value as a person reads it: `3.30 kΩ`, `1.000 kΩ` for 999.96 Ω to four digits, `0 Ω`, `-12.0 dB`, `30°`.
 * Reading the text back gives the value rounded to `digits`.
 *
 * @param value in the base unit
 * @param digits significant digits, 1 … 17; idle zeros are kept, except in angles
 * @throws TypeError for NaN and infinities, RangeError for impossible `digits`: both are the programmer's errors
 */
export function formatQuantity(value: number, unit: UnitName, digits: number = 3): string {
  checkDigits(digits)
  return unit === 'rad' ? inDegrees(value, digits) : attach(write(value, prefixesOf(unit), digits), unit)
}

/** A value in as few digits as give it back exactly: `1.8 µF`. For limits in messages. @throws TypeError for NaN and infinities */
export function formatExactly(value: number, unit: UnitName): string {
  return unit === 'rad'
    ? inDegrees(value, undefined)
    : attach(write(value, prefixesOf(unit), undefined), unit)
}

/** A pure number to so many significant digits: `0.985`, `1.20e7`. @throws as `formatQuantity` */
export function formatNumber(value: number, digits: number = 3): string {
  checkDigits(digits)
  return write(value, noPrefix, digits).number
}

/** A fraction in percent: `63.0 %` for 0.63. @throws as `formatQuantity` */
export function formatPercent(fraction: number, digits: number = 3): string {
  checkDigits(digits)
  return `${write(fraction, noPrefix, digits, 2).number} %`
}

function checkDigits(digits: number): void {
  if (!Number.isInteger(digits) || digits < 1 || digits > 17)
    throw new RangeError(`${digits} significant digits: 1 to 17 can be written`)
}
