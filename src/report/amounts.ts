/** Figures and limits as text. */
import type { VerdictLimit } from '../checks/rule.ts'
import type { Figure, FigureUnit } from '../figures/figure.ts'
import { formatExactly, formatNumber, formatQuantity } from '../quantities/format.ts'
import { FIGURE_WORDS, GRADE_WORDS, STATE_WORDS } from './words.ts'

/** Put before what rests on a stand-in. */
export const ABOUT = '≈ '

/** Below this, in volts, amperes or ohms, a figure is what rounding leaves of nothing. */
const LEAST = 1e-12

/** A value with its unit to `digits` significant digits; `0 A` for what rounding leaves of nothing. */
export function valueText(value: number, unit: FigureUnit, digits: number = 3): string {
  const shown = Math.abs(value) < LEAST ? 0 : value
  if (unit === '1' && Number.isInteger(shown)) return String(shown)
  return unit === '1' ? formatNumber(shown, digits) : formatQuantity(shown, unit, digits)
}

const NONE: ReadonlySet<string> = new Set()

/** Figures that are parts of a whole. */
const SHARES: ReadonlySet<string> = new Set(['ringing.share', 'ringing.trip-margin'])

/** Figures that count things, which are never so many or thereabouts. */
const COUNTS: ReadonlySet<string> = new Set(['ringing.capacitors'])

/** A bell that gets less than this gets nothing of which it could have a share, A. */
const LEAST_SHARED = 1e-6

/** Bells that get nothing: their share of it is no figure worth showing. */
export function silentBells(figures: readonly Figure[]): ReadonlySet<string> {
  const silent = figures.filter(
    ({ id, value }) => id === 'ringing.current' && value !== null && value < LEAST_SHARED,
  )
  return new Set(silent.map(({ subject }) => subject))
}

/** What a figure shows: `≈ 38.2 mA`, `open`; `–` for a share of one of the `silent`. */
export function figureText(figure: Figure, silent: ReadonlySet<string> = NONE): string {
  if (figure.id === 'ringing.share' && silent.has(figure.subject)) return '–'
  if (figure.value === null) return figure.state === undefined ? '–' : STATE_WORDS[figure.state]
  const text = SHARES.has(figure.id)
    ? `${formatNumber(100 * figure.value, 3)} %`
    : valueText(figure.value, figure.unit)
  // nothing is nothing, whatever stands in for a part
  const isNothing = Math.abs(figure.value) < LEAST || COUNTS.has(figure.id)
  const isAbout = figure.approximate !== undefined && !isNothing
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
  return `${limitAmount(limit)} (${limitSource(limit)})`
}

/** Where a limit is from: `a standard, clause 4; from memory`. */
export function limitSource({ source, clause, grade }: VerdictLimit): string {
  const known = GRADE_WORDS[grade] ?? grade
  const from = [source, clause === '-' ? '' : clause].filter((one) => one !== '').join(', ')
  return from === known ? from : `${from}; ${known}`
}
