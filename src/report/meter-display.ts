/** Numbers as an instrument shows them: its last digit and its prefix, for the value and for its band alike. */
import type { Band } from '../meter/accuracy.ts'
import type { MeterReading } from '../meter/reading.ts'

/** What of a reading says how its numbers are written. */
export type Display = Pick<MeterReading, 'value' | 'unit' | 'resolution' | 'full scale'>

const PREFIXES: Readonly<Record<number, string>> = {
  [-12]: 'p',
  [-9]: 'n',
  [-6]: 'µ',
  [-3]: 'm',
  0: '',
  3: 'k',
  6: 'M',
  9: 'G',
}

/** A share of its scale by which no needle is seen to move. */
const UNSEEN = 1e-3

/** Digits of a band beyond which nobody reads, by digits and by a needle. */
const BAND_DIGITS = { digits: 3, needle: 2 }
/** What rounding leaves of a count, so that the same contact reads the same in every row. */
const SLACK = 1e-3

/** Power of ten of the prefix: the range's, or that of the value where it is less than one of the range's. */
function powerOf({ value, unit, resolution, 'full scale': full }: Display): number {
  const size = Math.abs(value ?? 0)
  const own = 3 * Math.floor(Math.log10(size * (1 + 1e-12)) / 3)
  if (resolution === undefined) return Math.max(unit === 'F' ? -12 : 0, Math.min(9, size === 0 ? 0 : own))
  const ofRange = 3 * Math.floor(Math.log10(full * (1 + 1e-12)) / 3)
  const counted = Math.round(size / resolution) * resolution
  if (unit !== 'Ω' || counted >= 10 ** ofRange) return ofRange
  return counted === 0 ? 0 : Math.max(0, Math.min(ofRange, own))
}

function written(value: number, step: number, power: number): string {
  const decimals = Math.max(0, Math.ceil(power - Math.log10(step) - 1e-9))
  const text = (value / 10 ** power).toFixed(decimals)
  return Number(text) === 0 ? text.replace('-', '') : text
}

/** Digits as they stand on a display: `0.1 Ω`, `4.300 kΩ`, `825 Ω` on a range of kilohms. */
export function onDisplay(display: Display, value: number, resolution: number): string {
  const power = powerOf(display)
  const counts = Math.sign(value) * Math.floor(Math.abs(value) / resolution + 0.5 + SLACK)
  return `${written(counts * resolution, resolution, power)} ${PREFIXES[power] ?? ''}${display.unit}`
}

/** `4.10 to 4.51 kΩ`, rounded outwards to what the instrument can show; `from 4.13 kΩ` where nothing bounds it. */
export function bandText({ least, most }: Band, display: Display): string {
  const power = powerOf(display)
  const unit = `${PREFIXES[power] ?? ''}${display.unit}`
  const digits = display.resolution === undefined ? BAND_DIGITS.needle : BAND_DIGITS.digits
  const end = (value: number, round: (counts: number) => number, slack: number): string => {
    const size = Math.abs(value)
    // nobody sees a needle move by less
    if (display.unit === 'V' && display.resolution === undefined && size < UNSEEN * display['full scale'])
      return '0'
    const fine = size === 0 ? 0 : 10 ** (Math.floor(Math.log10(size) + 1e-9) - digits + 1)
    const step = Math.max(display.resolution ?? 0, fine)
    return step === 0 ? '0' : written(round(value / step + slack) * step, step, power)
  }
  const low = Number(end(least, Math.floor, 1e-6)) === 0 ? '0' : end(least, Math.floor, 1e-6)
  if (most === null) return `from ${low} ${unit}`
  const high = end(most, Math.ceil, -1e-6)
  return low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`
}
