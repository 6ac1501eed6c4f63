import { type Refused, refuse, wanted } from './fault.ts'
import { longestQuantity, type QuantityRange, type QuantityResult, readQuantity } from './read-quantity.ts'
import { DIMENSIONS, type Dimension, type Quantity } from './units.ts'

/** A quantity that holds at a value of another one: `150 Ω at 40 mA`. */
export interface At {
  readonly value: Quantity
  readonly at: Quantity
}

/** Two ends of a span, `least` not above `most`. */
export interface Span {
  readonly least: Quantity
  readonly most: Quantity
}

/** An alternating quantity: its magnitude, and its angle in radians against the reference. */
export interface Phasor {
  readonly magnitude: Quantity
  readonly angle: number
}

/** What was read, or why nothing could be. */
export type PairResult<T> = { readonly ok: true; readonly value: T } | Refused

/**
 * Reads `150 Ω at 40 mA`, `3 mA at 25 Hz`. Both halves follow the rules of `readQuantity`, each with its own range.
 * Never throws; a fault quotes its half, its offset counts in the whole text.
 */
export function readAt(
  text: string,
  dimension: Dimension,
  atDimension: Dimension,
  range: QuantityRange = {},
  atRange: QuantityRange = {},
): PairResult<At> {
  const [first, second, start] = split(text, /\sat\s/)
  const value = readQuantity(first, dimension, range)
  if (!value.ok) return value
  if (second === undefined) {
    const mend = `write \`${value.quantity.text} at\` and ${wanted(atDimension)}`
    return refuse(
      'quantity-unreadable',
      text,
      `${wanted(dimension)} at ${wanted(atDimension)}`,
      mend,
      text.trimEnd().length,
    )
  }
  const at = moved(readQuantity(second, atDimension, atRange), start)
  return at.ok ? { ok: true, value: { value: value.quantity, at: at.quantity } } : at
}

/** Reads `20 mA to 100 mA`, `63 % to 72 %`: both ends with their unit, the smaller first, no tolerances. Never throws. */
export function readSpan(text: string, dimension: Dimension, range: QuantityRange = {}): PairResult<Span> {
  const { says, example } = DIMENSIONS[dimension]
  const [first, second, start] = split(text, /\sto\s/)
  if (second === undefined) {
    return refuse(
      'quantity-unreadable',
      text,
      `two values such as ${example} with the word \`to\` between, for ${says}`,
      undefined,
      0,
    )
  }
  const least = readQuantity(first, dimension, range)
  const most = moved(readQuantity(second, dimension, range), start)
  if (!least.ok) return withUnitOf(least, first, second, most)
  if (!most.ok) return most
  if (least.quantity.tolerance !== undefined || most.quantity.tolerance !== undefined) {
    return refuse(
      'quantity-unreadable',
      text,
      `${wanted(dimension)} at each end, without tolerance`,
      undefined,
      0,
    )
  }
  if (least.quantity.value > most.quantity.value) {
    return refuse(
      'quantity-out-of-range',
      text,
      'the smaller value first',
      `write \`${second.trim()} to ${first.trim()}\``,
      0,
    )
  }
  return { ok: true, value: { least: least.quantity, most: most.quantity } }
}

/** Reads `1 V at 30°`, or `10 V` for an angle of 0. A magnitude has no sign: opposite phase is `at 180°`. Never throws. */
export function readPhasor(
  text: string,
  dimension: Dimension = 'voltage',
  range: QuantityRange = {},
): PairResult<Phasor> {
  const [first, second, start] = split(text, /\sat\s/)
  const magnitude = readQuantity(first, dimension, range)
  if (!magnitude.ok) return magnitude
  if (magnitude.quantity.value < 0) {
    const mend =
      second === undefined
        ? `write \`${first.trim().slice(1).trim()} at 180°\``
        : 'turn its angle by 180° instead'
    return refuse('quantity-out-of-range', text, 'a magnitude without a sign', mend, 0)
  }
  if (second === undefined) return { ok: true, value: { magnitude: magnitude.quantity, angle: 0 } }
  const angle = moved(readQuantity(second, 'angle'), start)
  return angle.ok
    ? { ok: true, value: { magnitude: magnitude.quantity, angle: angle.quantity.value } }
    : angle
}

/** The two sides of the first separator and where the second begins; no second side where there is none, or the text is too long. */
function split(text: string, separator: RegExp): readonly [string, string | undefined, number] {
  const match = text.length > longestQuantity ? null : separator.exec(text)
  if (match === null) return [text, undefined, text.length]
  const start = match.index + match[0].length
  return [text.slice(0, match.index), text.slice(start), start]
}

/** The same result, its offset counted from `start` characters earlier. */
function moved(result: QuantityResult, start: number): QuantityResult {
  if (result.ok || result.fault.at === undefined) return result
  return { ok: false, fault: { ...result.fault, at: result.fault.at + start } }
}

/** `20 to 100 mA`: where the unit is written once, the mend writes it twice. */
function withUnitOf(least: Refused, first: string, second: string, most: QuantityResult): Refused {
  const unit = most.ok ? /\p{L}.*$|[%°].*$/u.exec(most.quantity.text)?.[0] : undefined
  if (least.fault.code !== 'unit-missing' || unit === undefined) return least
  return {
    ok: false,
    fault: { ...least.fault, mend: `write \`${first.trim()} ${unit} to ${second.trim()}\`` },
  }
}
