/**
 * The colours of cores: from the word on a sheet to the letter code of IEC 60757 and the classes of a pattern.
 * Source of the codes: IEC 60757, code for designation of colours; from memory. Two colours on one core are written
 * one code after the other, as in `GNYE`.
 */
import type { CoreColour } from './board.ts'

const CODES: Readonly<Record<string, string>> = {
  black: 'BK',
  brown: 'BN',
  red: 'RD',
  orange: 'OG',
  yellow: 'YE',
  green: 'GN',
  blue: 'BU',
  violet: 'VT',
  grey: 'GY',
  white: 'WH',
  pink: 'PK',
  gold: 'GD',
  turquoise: 'TQ',
  silver: 'SR',
}

/** Other words for the same colours. */
const SAME: Readonly<Record<string, string>> = { purple: 'violet', slate: 'grey', gray: 'grey' }

/** What is said of a colour or of the second one without naming another. */
const ASIDES = /^(light|dark|pale|deep|bright|tracer|stripe|band|ring|mark)e?s?$/

/** What stands between two colours. */
const BETWEEN = /\s*(?:[/,+&-]|\band\b|\bwith\b|\bon\b)\s*/

/** A colour as its sheet words it; without a code where the word names no colour that the standard has. */
export function coreColour(word: string): CoreColour {
  const named = word.toLowerCase().split(BETWEEN).map(wordsIn).filter(isNamed).map(colourIn)
  const colours = named.filter((one) => one !== undefined)
  if (colours.length === 0 || colours.length !== named.length || colours.length > 2)
    return { word, colours: [] }
  return { word, code: colours.map((one) => CODES[one] ?? '').join(''), colours }
}

/** The words of one colour without what is only said of it: `blue` of `light blue`. */
function wordsIn(part: string): readonly string[] {
  return part
    .trim()
    .split(/\s+/)
    .filter((one) => !ASIDES.test(one))
}

/** `light-blue` has a part without a colour. */
function isNamed(words: readonly string[]): boolean {
  return words.length > 0
}

/** The one colour that some words name. */
function colourIn(words: readonly string[]): string | undefined {
  const [word = ''] = words
  const colour = Object.hasOwn(SAME, word) ? SAME[word] : word
  return words.length === 1 && colour !== undefined && Object.hasOwn(CODES, colour) ? colour : undefined
}

/** Every colour that has a class and a code, for look-ups and legends. */
export const CORE_COLOURS: readonly string[] = Object.keys(CODES)
