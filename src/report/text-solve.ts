/** The answer to `solve` as text. */
import type { Amount, SolveAnswer } from '../answer/answer.ts'
import { EARTH } from '../netlist/netlist.ts'
import { formatQuantity } from '../quantities/format.ts'
import { caution, heading } from './heading.ts'
import { numbersBehind } from './numbers-behind.ts'
import type { Page } from './paint.ts'
import { commonPlace, shortId } from './place-names.ts'
import { type Column, table } from './table.ts'
import { digitLines } from './text-digits.ts'
import { opinionText } from './text-opinion.ts'
import { approximations } from './text-verdicts.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

const DIGITS = 4
/** Smaller parts of the largest amount in its table are what rounding leaves of nothing. */
const NOTHING = 1e-12

const size = (amount: Amount): number =>
  amount === null ? 0 : typeof amount === 'number' ? Math.abs(amount) : Math.hypot(amount.re, amount.im)

function cells(
  amount: Amount,
  unit: 'V' | 'A',
  largest: number,
  state: string | undefined,
  alternating: boolean,
): string[] {
  if (amount === null) return [state ?? 'undetermined']
  if (size(amount) <= NOTHING * largest) return [`0 ${unit}`]
  if (typeof amount === 'number')
    return [formatQuantity(amount, unit, DIGITS), ...(alternating ? ['0°'] : [])]
  const angle = Math.atan2(amount.im, amount.re)
  return [formatQuantity(size(amount), unit, DIGITS), formatQuantity(angle, 'rad', DIGITS)]
}

function amounts(
  title: string,
  of: string,
  all: Readonly<Record<string, Amount>>,
  unit: 'V' | 'A',
  answer: SolveAnswer,
  page: Page,
): string[] {
  const alternating = answer.analysis === 'alternating'
  const place = commonPlace([...Object.keys(answer.voltages), ...Object.keys(answer.currents)])
  const largest = Math.max(0, ...Object.values(all).map(size))
  const heads: Column[] = [{ heading: of }, { heading: alternating ? 'size (rms)' : 'value', align: 'right' }]
  if (alternating) heads.push({ heading: 'angle', align: 'right' })
  const rows = Object.entries(all).map(([id, amount]) => [
    shortId(id, place) + numbersBehind(id, page),
    ...cells(amount, unit, largest, answer.states[id], alternating),
  ])
  return rows.length === 0 ? [] : [title, ...table(heads, rows, page), '']
}

/** Voltages against earth and currents to four significant digits, islands, shared currents, source and grade. */
export function solveText(answer: SolveAnswer, page: Page): string[] {
  const { analysis, frequency, islands, shared, source, grade } = answer
  const place = commonPlace([...Object.keys(answer.voltages), ...Object.keys(answer.currents)])
  const short = (ids: readonly string[]): string => ids.map((id) => shortId(id, place)).join(', ')
  const lines = heading(answer, page)
  const at = frequency === null ? '' : ` at ${formatQuantity(frequency, 'Hz', 6)}`
  lines.push(analysis === 'direct' ? 'Direct current' : `Alternating current${at}`)
  if (source !== undefined) lines.push(...hanging('Source: ', source, page.width))
  if (grade !== undefined) lines.push(...hanging('Grade: ', grade, page.width))
  lines.push('')
  lines.push(...amounts('Voltages against earth', 'node', answer.voltages, 'V', answer, page))
  lines.push(...amounts('Currents', 'branch', answer.currents, 'A', answer, page))
  const apart = islands.filter((island) => !island.includes(EARTH))
  if (apart.length > 0) {
    lines.push(`Islands: ${counted(apart.length, 'part')} that nothing joins to earth`)
    for (const island of apart) lines.push(...hanging('  ', short(island), page.width))
    lines.push('')
  }
  if (shared.length > 0) {
    const says = 'Currents shared among links without resistance, one of many ways to share them: '
    lines.push(...wrap(says + short(shared), page.width), '')
  }
  if (answer.approximate !== undefined) lines.push(...approximations([answer.approximate], page))
  if ('exchange/a' in answer.voltages) lines.push(...caution(page))
  lines.push(...digitLines(answer, place, page), ...opinionText(answer['second opinion'], place, page))
  const residual = answer.residual === 0 ? '0' : answer.residual.toExponential(1)
  lines.push(`scaled residual ${residual} (healthy up to about 1)`)
  return lines
}
