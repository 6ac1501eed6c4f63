/** A quantity as it stands in a sheet, and the number that a correct reader makes of it (SI base unit). */
export interface Quantity {
  readonly text: string
  readonly value: number
}

const PREFIXES = new Map([
  [-12, 'p'],
  [-9, 'n'],
  [-6, 'µ'],
  [-3, 'm'],
  [0, ''],
  [3, 'k'],
  [6, 'M'],
  [9, 'G'],
])

/**
 * `digits` × 10^`exponent` written with an engineering prefix: (473, -8, 'F') is `4.73 µF`.
 * The value is the double nearest to the decimal text, as the sheet reader promises.
 */
export function decimalQuantity(digits: number, exponent: number, unit: string): Quantity {
  const figures = String(digits)
  const leading = digits === 0 ? 0 : figures.length - 1 + exponent
  const group = Math.max(-12, Math.min(9, Math.floor(leading / 3) * 3))
  const prefix = PREFIXES.get(group)
  if (prefix === undefined) throw new Error(`no prefix for 10^${group}`)
  return {
    text: `${shifted(figures, exponent - group)} ${prefix}${unit}`,
    value: Number(`${figures}e${exponent}`),
  }
}

/** Any finite number of at least 0 with all its digits: the reader gets back the same double. */
export function exactQuantity(value: number, unit: string): Quantity {
  const [mantissa, exponent] = value.toExponential().split('e')
  if (mantissa === undefined || exponent === undefined) throw new Error(`${value} cannot be written`)
  const figures = mantissa.replace('.', '')
  const text = shifted(figures, Number(exponent) - figures.length + 1)
  return { text: `${text} ${unit}`, value }
}

/** The decimal number `figures` × 10^`places`, written without an exponent. */
function shifted(figures: string, places: number): string {
  if (places >= 0) return figures === '0' ? figures : figures + '0'.repeat(places)
  const padded = figures.padStart(1 - places, '0')
  const whole = padded.slice(0, padded.length + places)
  const rest = padded.slice(padded.length + places).replace(/0+$/, '')
  return rest === '' ? whole : `${whole}.${rest}`
}
