import { type Decimal, finest, isTooFine, leadingDecimal, toDouble } from './decimal.ts'
import { type Refused, refuse, wanted } from './fault.ts'
import { formatExactly } from './format.ts'
import { leadingLetterCode } from './letter-code.ts'
import { readBands } from './read-bands.ts'
import { unitFault } from './unit-fault.ts'
import { DIMENSIONS, type Dimension, type Quantity, type Scale } from './units.ts'

/** A quantity, or why the text is none. */
export type QuantityResult = { readonly ok: true; readonly quantity: Quantity } | Refused

/** Limits of one key, in the base unit: `min` and `max` are allowed themselves, `above` is not. */
export interface QuantityRange {
  readonly min?: number
  readonly max?: number
  readonly above?: number
}

/** Longer texts are no quantity, and are not searched for one. */
export const longestQuantity = 64

/**
 * Reads one quantity as people write it: `3.3 kΩ`, `3k3`, `1.8uF`, `25 Hz`, `2 km`, `-12 dB`, `30°`, `3.3 kΩ ± 5 %`.
 * A resistance may be written by its bands: `orange orange red gold`, which is 3.3 kΩ ± 5 %.
 *
 * The value is the double nearest to what is written. A bare number is refused where a unit is due (only a ratio may be
 * bare), as are decimal commas, other dimensions, and values outside the sane limits of `DIMENSIONS` or of `range`.
 * Never throws; offsets in faults count in the text as given.
 */
export function readQuantity(text: string, dimension: Dimension, range: QuantityRange = {}): QuantityResult {
  if (text.length > longestQuantity) {
    return refuse(
      'quantity-unreadable',
      text,
      `${wanted(dimension)}, in at most ${longestQuantity} characters`,
      undefined,
      longestQuantity,
    )
  }
  const plain = flatten(text)
  const mark = toleranceMark.exec(plain)
  const part = mark === null ? plain : plain.slice(0, mark.index)
  const { unit } = DIMENSIONS[dimension]
  const bands = dimension === 'resistance' ? readBands(text, part) : undefined
  if (bands !== undefined) {
    if (!('decimal' in bands)) return bands
    if (mark !== null)
      return refuse(
        'quantity-unreadable',
        text,
        'bands alone, which tell the tolerance',
        undefined,
        mark.index,
      )
    const value = checkedValue(text, part, { decimal: bands.decimal, scale: 0 }, dimension, range)
    if (typeof value !== 'number') return value
    return { ok: true, quantity: { value, unit, tolerance: bands.tolerance, text: text.trim() } }
  }
  const value = readValue(text, part, dimension, range)
  if (typeof value !== 'number') return value
  if (mark === null) return { ok: true, quantity: { value, unit, text: text.trim() } }
  const tolerance = readTolerance(text, plain, mark.index, mark.index + mark[0].length, dimension)
  if (typeof tolerance !== 'number') return tolerance
  return { ok: true, quantity: { value, unit, tolerance, text: text.trim() } }
}

const toleranceMark = /±|\+\/?-/

/** Look-alikes to one form, character by character, so that offsets stay. */
function flatten(text: string): string {
  return text
    .replace(/\s/g, ' ')
    .replace(/\u2126/g, 'Ω')
    .replace(/\u03bc/g, 'µ')
    .replace(/\u2212/g, '-')
}

interface Scaled {
  readonly decimal: Decimal
  readonly scale: Scale
}

/** The value in the base unit from the part before any tolerance; `whole` is what messages quote. */
function readValue(
  whole: string,
  part: string,
  dimension: Dimension,
  range: QuantityRange,
): number | Refused {
  const at = part.length - part.trimStart().length
  const scaled = readScaled(whole, part.trim(), at, dimension)
  return 'decimal' in scaled ? checkedValue(whole, part, scaled, dimension, range) : scaled
}

/** The value in the base unit where it lies within the sane limits and those of the key. */
function checkedValue(
  whole: string,
  part: string,
  scaled: Scaled,
  dimension: Dimension,
  range: QuantityRange,
): number | Refused {
  const at = part.length - part.trimStart().length
  const value = toDouble(scaled.decimal, scaled.scale)
  const row = DIMENSIONS[dimension]
  if (isTooFine(scaled.decimal, value))
    return refuse(
      'quantity-out-of-range',
      whole,
      `${row.says} of 0 or at least ${formatExactly(finest, row.unit)} in size`,
      undefined,
      at,
    )
  // compared so that an infinite value is refused too
  if (!(value >= row.least && value <= row.most))
    return refuse('quantity-out-of-range', whole, between(dimension, row.least, row.most), undefined, at)
  if (isWithin(value, range)) return value
  const percent = dimension === 'ratio' && scaled.scale === 0 && isWithin(value / 100, range)
  const mend = percent ? `write \`${part.trim()} %\` if a percentage is meant` : undefined
  return refuse('quantity-out-of-range', whole, described(dimension, range), mend, at)
}

function readScaled(whole: string, part: string, at: number, dimension: Dimension): Scaled | Refused {
  if (/^[+-]?(?:nan|inf(?:inity)?|∞)(?![a-z])/i.test(part))
    return refuse('quantity-out-of-range', whole, wanted(dimension), undefined, at)
  const { spellings } = DIMENSIONS[dimension]
  const code = leadingLetterCode(part, dimension)
  // behind a letter code the unit itself may still stand: 3k3 Ω
  if (code?.scale !== undefined) {
    const unit = part.slice(code.decimal.end).trim()
    if (unit === '' || (unit !== 'R' && spellings.get(unit) === 0))
      return { decimal: code.decimal, scale: code.scale }
  }
  const decimal = leadingDecimal(part)
  if (decimal === undefined) return unitFault(whole, part, 0, at, dimension)
  const scale = spellings.get(part.slice(decimal.end).trim())
  return scale === undefined ? unitFault(whole, part, decimal.end, at, dimension) : { decimal, scale }
}

function readTolerance(
  whole: string,
  plain: string,
  mark: number,
  start: number,
  dimension: Dimension,
): number | Refused {
  const row = DIMENSIONS[dimension]
  if (!row.tolerated)
    return refuse(
      'quantity-unreadable',
      whole,
      `${wanted(dimension)}, without a percentage behind it`,
      undefined,
      mark,
    )
  const part = plain.slice(start).trim()
  const expected = 'a tolerance in percent such as ± 5 %, behind the value'
  const decimal = leadingDecimal(part)
  if (decimal === undefined || /^[+-]/.test(part))
    return refuse('quantity-unreadable', whole, expected, undefined, mark)
  const unit = part.slice(decimal.end).trim()
  if (unit === '') return refuse('unit-missing', whole, expected, `write \`± ${part} %\``, mark)
  if (unit !== '%') return refuse('unit-wrong', whole, expected, undefined, mark)
  const fraction = toDouble(decimal, -2)
  return fraction < 1
    ? fraction
    : refuse('quantity-out-of-range', whole, 'a tolerance below 100 %', undefined, mark)
}

function isWithin(value: number, { min, max, above }: QuantityRange): boolean {
  return (
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above)
  )
}

function between(dimension: Dimension, least: number, most: number): string {
  const { says, unit } = DIMENSIONS[dimension]
  return `${says} from ${formatExactly(least, unit)} to ${formatExactly(most, unit)}`
}

function described(dimension: Dimension, { min, max, above }: QuantityRange): string {
  const { says, unit } = DIMENSIONS[dimension]
  if (min !== undefined && max !== undefined && above === undefined) return between(dimension, min, max)
  const bounds: string[] = []
  if (above !== undefined) bounds.push(`above ${formatExactly(above, unit)}`)
  if (min !== undefined) bounds.push(`of at least ${formatExactly(min, unit)}`)
  if (max !== undefined) bounds.push(`of at most ${formatExactly(max, unit)}`)
  return `${says} ${bounds.join(' and ')}`
}
