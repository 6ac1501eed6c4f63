/** A meter's readings in words. */
import type { MeterReading } from '../meter/reading.ts'
import { formatQuantity } from '../quantities/format.ts'
import { ABOUT } from './amounts.ts'
import { onDisplay } from './meter-display.ts'
import { shortId } from './place-names.ts'
import { STATE_WORDS } from './words.ts'

const NEEDLE_DIGITS = 2

/** Of a point that nothing joins to the line. */
const FLOATING = 'floating: it wanders'

/** What the instrument shows, to its last digit: `25.0 Ω`, `open`. Needles are read to two digits. */
export function readingText(reading: MeterReading): string {
  const { value, state, unit, resolution, approximate } = reading
  if (value === null)
    return reading.floating === true ? FLOATING : state === undefined ? '–' : STATE_WORDS[state]
  const text =
    resolution === undefined
      ? formatQuantity(seen(reading, value), unit, NEEDLE_DIGITS)
      : onDisplay(reading, value, resolution)
  return approximate === undefined || value === 0 ? text : ABOUT + text
}

/** What a needle cannot tell from nothing is nothing. */
function seen({ band }: MeterReading, value: number): number {
  return band !== undefined && band.least <= 0 && (band.most ?? 0) >= 0 ? 0 : value
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
