/** Figures and limits as text. */
import type { VerdictLimit } from '../checks/rule.ts'
import type { Figure, FigureUnit } from '../figures/figure.ts'
import { formatExactly, formatNumber, formatQuantity } from '../quantities/format.ts'
import { FIGURE_WORDS, GRADE_WORDS, STATE_WORDS } from './words.ts'

/** Put before what rests on a stand-in. */
export const ABOUT = '≈ '

/** Below this, in volts, amperes or ohms, a figure is what rounding leaves of nothing. */
const LEAST = 1e-12

/** A value with its unit to `digits` significant digits; `< 1 pA` for what rounding leaves of nothing. */
export function valueText(value: number, unit: FigureUnit, digits: number = 3): string {
  if (value !== 0 && Math.abs(value) < LEAST) return unit === '1' ? '< 1e-12' : `< 1 p${unit}`
  if (unit === '1' && Number.isInteger(value)) return String(value)
  return unit === '1' ? formatNumber(value, digits) : formatQuantity(value, unit, digits)
}

/** Figures that are parts of a whole. */
const SHARES: ReadonlySet<string> = new Set(['ringing.share', 'ringing.trip-margin'])

/** What a figure shows: `≈ 38.2 mA`, `open`. */
export function figureText(figure: Figure): string {
  if (figure.value === null) return figure.state === undefined ? '–' : STATE_WORDS[figure.state]
  const text = SHARES.has(figure.id)
    ? `${formatNumber(100 * figure.value, 3)} %`
    : valueText(figure.value, figure.unit)
  // nothing is nothing, whatever stands in for a part
  const isAbout = figure.approximate !== undefined && figure.value !== 0 && !text.startsWith('<')
  return isAbout ? ABOUT + text : text
}

/** What a figure is: `speech received at 1 kHz`. */
export function figureName({ id, frequency }: Figure): string {
  const words: string = FIGURE_WORDS[id] ?? id
  return frequency === undefined ? words : `${words} at ${formatExactly(frequency, 'Hz')}`
}

/** The side of a limit in words. */
export const SIDES: Readonly<Record<VerdictLimit['side'], string>> = {
  'at-most': 'at most',
  'at-least': 'at least',
}

/** A limit without its source: `at least 25 mA`. */
export function limitAmount({ value, side, unit }: VerdictLimit): string {
  const exact = formatExactly(value, unit)
  // a limit that was computed has more digits than a meaning
  return `${SIDES[side]} ${exact.length <= 12 ? exact : valueText(value, unit)}`
}

/** A limit with its source: `at least 25 mA (a standard, clause 4; from memory)`. */
export function limitText(limit: VerdictLimit): string {
  const { source, clause, grade } = limit
  const known = GRADE_WORDS[grade] ?? grade
  const from = [source, clause === '-' ? '' : clause].filter((one) => one !== '').join(', ')
  return `${limitAmount(limit)} (${from === known ? from : `${from}; ${known}`})`
}
