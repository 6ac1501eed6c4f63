import { isTooFine, leadingDecimal, toDouble } from './decimal.ts'
import { type Refused, refuse, wanted } from './fault.ts'
import { leadingLetterCode, lettersOf } from './letter-code.ts'
import { DIMENSIONS, type Dimension } from './units.ts'

/**
 * Says what is wrong with a text that is no quantity of this dimension: no number, no unit, a foreign unit,
 * a slip of letter case, a decimal comma.
 *
 * @param whole what the message quotes
 * @param part the value's part of it, trimmed, look-alikes already in one form
 * @param end where in `part` the number ends; 0 where there is none
 * @param at where `part` starts in `whole`
 */
export function unitFault(
  whole: string,
  part: string,
  end: number,
  at: number,
  dimension: Dimension,
): Refused {
  const expected = wanted(dimension)
  const rest = part.slice(end).trim()
  const restAt = at + part.length - rest.length
  const written = part.slice(0, end)
  if (/^,\d/.test(rest))
    return refuse('quantity-unreadable', whole, `${expected}, with a decimal point`, commaMend(part), restAt)
  const letters = codeMend(part, dimension)
  if (letters !== undefined) return refuse('unit-wrong', whole, expected, letters, at)
  if (foreignCode(part, dimension)) return refuse('unit-wrong', whole, expected, undefined, at)
  if (end === 0) return refuse('quantity-unreadable', whole, expected, undefined, at)
  if (rest === '')
    return refuse(
      'unit-missing',
      whole,
      `${expected}, with its unit`,
      `name the unit, for instance ${withUnit(written, DIMENSIONS[dimension].usual)}`,
      at,
    )
  if (!/^[\p{L}°℃%‰/. ]+$/u.test(rest))
    return refuse('quantity-unreadable', whole, expected, undefined, restAt)
  const meant = likelyUnits(written, rest, dimension)
  const mend =
    meant.length === 0 ? undefined : `write ${meant.map((unit) => withUnit(written, unit)).join(' or ')}`
  return refuse('unit-wrong', whole, expected, mend, restAt)
}

function withUnit(number: string, unit: string): string {
  return unit === '°' ? `\`${number}°\`` : `\`${number} ${unit}\``
}

/** `1,000` may be one or a thousand: then both are named. */
function commaMend(part: string): string {
  const point = `write \`${part.replace(',', '.')}\``
  return /^[+-]?\d{1,3},\d{3}(?!\d)/.test(part) && !/^[+-]?0/.test(part)
    ? `${point} or, if thousands are meant, \`${part.replace(',', '')}\``
    : point
}

/** Units of this dimension that differ from the text in letter case or blanks, or are known to be meant by it; sane values only. */
function likelyUnits(written: string, unit: string, dimension: Dimension): string[] {
  const { least, most, slips, spellings } = DIMENSIONS[dimension]
  const decimal = leadingDecimal(written)
  const slip = slips?.get(unit)
  const folded = unit.replaceAll(' ', '').toLowerCase()
  const byValue = new Map<number, string>()
  for (const [spelling, scale] of spellings) {
    const likely = slip === undefined ? spelling.toLowerCase() === folded : spelling === slip
    if (decimal === undefined || !likely) continue
    const value = toDouble(decimal, scale)
    const sane = value >= least && value <= most && !isTooFine(decimal, value)
    // two spellings of one unit are one answer: the first of the table
    if (sane && !byValue.has(value)) byValue.set(value, spelling)
  }
  return [...byValue.values()]
}

/** `4r7` → `4R7`: a letter code in the wrong case. */
function codeMend(part: string, dimension: Dimension): string | undefined {
  const code = leadingLetterCode(part, dimension)
  if (code === undefined || code.scale !== undefined) return undefined
  const { letter, decimal } = code
  for (const known of lettersOf(dimension)?.keys() ?? []) {
    if (known.toLowerCase() === letter.toLowerCase())
      return `write \`${part.slice(0, decimal.end).replace(letter, known)}\``
  }
  return undefined
}

/** A letter code of another dimension: `4n7` where a resistance is due. */
function foreignCode(part: string, dimension: Dimension): boolean {
  const others: readonly Dimension[] = ['resistance', 'capacitance']
  return others.some((other) => {
    if (other === dimension) return false
    const code = leadingLetterCode(part, other)
    return code?.scale !== undefined && code.decimal.end === part.length
  })
}
