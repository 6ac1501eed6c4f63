/** A meter's readings in words. */
import type { Band } from '../meter/accuracy.ts'
import type { MeterReading } from '../meter/reading.ts'
import { formatQuantity } from '../quantities/format.ts'
import { ABOUT } from './amounts.ts'
import { shortId } from './place-names.ts'
import { STATE_WORDS } from './words.ts'

const NEEDLE_DIGITS = 2

/** What the instrument shows, to its last digit: `25.0 Ω`, `open`. Needles are read to two digits. */
export function readingText(reading: MeterReading): string {
  const { value, state, unit, resolution, approximate } = reading
  if (value === null) return state === undefined ? '–' : STATE_WORDS[state]
  const text =
    resolution === undefined
      ? formatQuantity(seen(reading, value), unit, NEEDLE_DIGITS)
      : onDisplay(value, unit, resolution, reading['full scale'])
  return approximate === undefined || value === 0 ? text : ABOUT + text
}

/** What a needle cannot tell from nothing is nothing. */
function seen({ band }: MeterReading, value: number): number {
  return band !== undefined && band.least <= 0 && (band.most ?? 0) >= 0 ? 0 : value
}

/** Digits as they stand on a display: the prefix is the range's, and so is the last digit. `0.1 Ω`, `4.300 kΩ`. */
function onDisplay(value: number, unit: MeterReading['unit'], resolution: number, full: number): string {
  const power = 3 * Math.floor(Math.log10(full * (1 + 1e-12)) / 3)
  const decimals = Math.max(0, Math.ceil(power - Math.log10(resolution) - 1e-9))
  const number = (Math.round(value / resolution) * (resolution / 10 ** power)).toFixed(decimals)
  return `${number} ${PREFIXES[power] ?? ''}${unit}`
}

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

/** `4.13 to 4.47 kΩ`; `from 4.13 kΩ` where nothing bounds it. */
export function bandText({ least, most }: Band, unit: MeterReading['unit']): string {
  if (most === null) return `from ${formatQuantity(least, unit)}`
  const high = formatQuantity(most, unit)
  if (least === 0) return `0 to ${high}`
  const low = formatQuantity(least, unit)
  if (low === high) return low
  const [number = low, own] = low.split(' ')
  return own === high.split(' ')[1] ? `${number} to ${high}` : `${low} to ${high}`
}

/** `hook, coil.a, transmitter (scrape)`: contacts and parts on the way, then what lies beside it and what is heard. */
export function wayText(reading: MeterReading, place: string): string {
  const { contacts, parts, path, heard } = reading
  if (path.length === 0) return ''
  const name = (id: string): string => {
    const sound = heard.find(({ branch }) => branch === id)
    return shortId(id, place) + (sound === undefined ? '' : ` (${sound.says})`)
  }
  const way = [...contacts, ...parts]
  const beside = [
    ...reading.beside,
    ...heard.map(({ branch }) => branch).filter((id) => ![...way, ...reading.beside].includes(id)),
  ]
  const body = way.length === 0 ? 'joined' : way.map(name).join(', ')
  return beside.length === 0 ? body : `${body}; beside it ${beside.map(name).join(', ')}`
}

const KICKS: readonly (readonly [number, string])[] = [
  [0.8, 'kicks right across the scale'],
  [0.4, 'kicks far out'],
  [0.15, 'kicks clearly'],
  [0, 'twitches'],
]

/** For a table: `kick to 23 %`. */
export function shortKick({ kick }: MeterReading): string | undefined {
  return kick === undefined ? undefined : `kick to ${percent(kick.reaches)}`
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}

/** `kicks clearly, to 23 % of the scale, and falls back to 0 % (time constant 3.6 ms)`. */
export function kickText({ kick }: MeterReading): string | undefined {
  if (kick === undefined) return undefined
  const word = KICKS.find(([from]) => kick.reaches - kick.rests >= from)?.[1] ?? 'twitches'
  return `${word}, to ${percent(kick.reaches)} of the scale, and falls back to ${percent(kick.rests)} (time constant ${formatQuantity(kick.seconds, 's', 2)})`
}
