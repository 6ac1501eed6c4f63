import { BAND_MEANINGS, BANDS, type Band, type BandRole, bandRoles, readMarking } from './colour-code.ts'
import type { Decimal } from './decimal.ts'
import { type Refused, refuse } from './fault.ts'
import { nearest } from './nearest.ts'

/** A resistance that was written by its bands: a decimal in ohms, and its tolerance as a fraction. */
export interface Banded {
  readonly decimal: Decimal
  readonly tolerance: number
}

const EXAMPLE = 'orange orange red gold'
const NTH = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth']

/**
 * Reads `orange orange red gold`, the first band first; in any letter case, `gray` as well as `grey`.
 * @param whole what messages quote
 * @param part the value's part of it; offsets count from its start, which is that of `whole`
 * @returns undefined where the text does not speak of colours at all
 */
export function readBands(whole: string, part: string): Banded | Refused | undefined {
  const words = [...part.matchAll(/\S+/g)].map(({ 0: text, index }) => ({ text, at: index }))
  if (!words.every(({ text }) => /^[A-Za-z]+$/.test(text))) return undefined
  const meant = words.map(({ text }) => nearestBand(text.toLowerCase()))
  if (words.length === 1 ? known(words[0]?.text) === undefined : meant.every((band) => band === undefined))
    return undefined
  const strange = words.findIndex(({ text }) => known(text) === undefined)
  if (strange >= 0) {
    const mend = meant.includes(undefined) ? undefined : `write \`${meant.join(' ')}\``
    return refuse('quantity-unreadable', whole, oneOf(BANDS), mend, words[strange]?.at)
  }
  const bands = meant as Band[]
  const start = words[0]?.at ?? 0
  const roles = bandRoles(bands.length)
  if (roles === undefined)
    return refuse('quantity-unreadable', whole, `three to six bands such as ${EXAMPLE}`, undefined, start)
  const marking = readMarking(bands)
  if (marking !== undefined) {
    const { digits, power, tolerance } = marking
    return { decimal: { negative: false, digits, exponent: power, end: part.length }, tolerance }
  }
  const place = bands.findIndex((band, at) => !allowed(roles, at).includes(band))
  const turned = [...bands].reverse()
  const mend = readMarking(turned) === undefined ? undefined : `write \`${turned.join(' ')}\``
  const expected = `as ${NTH[place]} band ${oneOf(allowed(roles, place))}`
  return refuse('quantity-unreadable', whole, expected, mend, words[place]?.at)
}

/** The colours that may stand in a place; no resistance begins with the digit 0. */
function allowed(roles: readonly BandRole[], at: number): readonly Band[] {
  const meanings = BAND_MEANINGS[roles[at] ?? 'digit']
  return BANDS.filter((band) => meanings[band] !== undefined && !(at === 0 && band === 'black'))
}

function oneOf(bands: readonly Band[]): string {
  return `${bands.slice(0, -1).join(', ')} or ${bands.at(-1)}`
}

function known(word: string | undefined): Band | undefined {
  const lower = word?.toLowerCase()
  return lower === 'gray' ? 'grey' : BANDS.find((band) => band === lower)
}

/** The colour that a word most likely means: itself, or the nearest one. */
function nearestBand(word: string): Band | undefined {
  return known(word) ?? known(nearest(word, BANDS))
}
