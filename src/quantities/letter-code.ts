import type { Decimal } from './decimal.ts'
import type { Dimension, Scale } from './units.ts'

/** A value written with a letter for the decimal point: its number, the letter and the letter's power of ten. */
export interface LetterCode {
  readonly decimal: Decimal
  readonly letter: string
  /** `undefined` where the dimension has no such letter */
  readonly scale: Scale | undefined
}

const resistance: ReadonlyMap<string, number> = new Map([
  ['R', 0],
  ['K', 3],
  ['k', 3],
  ['M', 6],
  ['G', 9],
  ['T', 12],
])
const capacitance: ReadonlyMap<string, number> = new Map([
  ['p', -12],
  ['n', -9],
  ['µ', -6],
  ['u', -6],
  ['m', -3],
  ['F', 0],
])

/** The letters that a dimension knows; none but resistance and capacitance have any. */
export function lettersOf(dimension: Dimension): ReadonlyMap<string, number> | undefined {
  if (dimension === 'resistance') return resistance
  return dimension === 'capacitance' ? capacitance : undefined
}

const code = /^(\d*)([A-Za-zµ])(\d+)/

/**
 * Reads `4R7`, `R47`, `47K3`, `4n7`, `p33` at the start of a text, for dimensions that have such codes.
 * A letter behind the last digit (`470R`) is an ordinary unit spelling. `e` and `E` are powers of ten, never letters.
 *
 * @source IEC 60062 (secondary copy): letters R K M G T for resistance, p n µ m F for capacitance; k and u beside K and µ are common practice
 */
export function leadingLetterCode(text: string, dimension: Dimension): LetterCode | undefined {
  const letters = lettersOf(dimension)
  const match = code.exec(text)
  if (letters === undefined || match === null) return undefined
  const [used, whole = '', letter = '', fraction = ''] = match
  if (letter === 'e' || letter === 'E') return undefined
  const decimal = { negative: false, digits: whole + fraction, exponent: -fraction.length, end: used.length }
  return { decimal, letter, scale: letters.get(letter) }
}
