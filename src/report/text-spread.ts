/** The answer to `spread` as text. */
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import type { Figure } from '../figures/figure.ts'
import { formatNumber, formatQuantity } from '../quantities/format.ts'
import type { FigureSpread, PartShare } from '../spread/study.ts'
import { figureName, figureText, silentBells } from './amounts.ts'
import { caution, heading } from './heading.ts'
import type { Page } from './paint.ts'
import { shortId, solePlace, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { spreadVerdicts } from './text-spread-verdicts.ts'
import { approximations } from './text-verdicts.ts'
import { conditionWords, counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Figures whose worst case is within this share of what they are as stated are told in one line. */
const HARDLY = 1e-3

/** What is less than this in its unit is what rounding leaves of nothing. */
const NOTHING = 1e-12

const NO_LINE = 'No figures: they need a set that is plugged into a line; name one with `--on`.'
const NONE = 'No figure of that name is worked out here.'

/** Figures by condition with their worst case and draws, then the verdicts that this changes. */
export function spreadText(answer: SpreadAnswer, page: Page): string[] {
  const { figures, request } = answer
  const { on } = request
  const head = heading(answer, page)
  const place = solePlace(figures.map(({ figure }) => figure.condition))
  const moved = figures.filter((one) => !isStill(one))
  const still = figures.filter(isStill)
  const reasons = figures.flatMap(({ figure: { approximate } }) =>
    approximate === undefined ? [] : [approximate],
  )
  return [
    ...head,
    ...valueLines(answer, place, page),
    ...(figures.length === 0 ? [...wrap(on === 'none' ? NO_LINE : NONE, page.width), ''] : []),
    ...groups(moved).flatMap(([words, members]) => [
      page.paint.bold(capital(words)),
      ...figureTable(members, place, page),
      '',
    ]),
    ...stillLines(still, place, page),
    ...footnotes(moved, place, page),
    ...approximations(reasons, page),
    ...spreadVerdicts(answer, place, page),
    ...caution(page),
  ]
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** What lies within limits, what stays, how it was drawn, and what age did. */
function valueLines(answer: SpreadAnswer, place: string | undefined, page: Page): string[] {
  const { values, aged, request } = answer
  const { draws, seed, law } = request
  const rest = `${counted(answer['without tolerance'], 'value')} without a stated tolerance stay as they are.`
  const drawn =
    law === 'normal' ? 'normal with three standard deviations at the limits' : 'evenly between the limits'
  return [
    ...agedLines(aged, page),
    ...hanging(
      '',
      values.length === 0
        ? `No value of these sheets states a tolerance, so that nothing spreads; ${rest}`
        : `${counted(values.length, 'value')} may lie anywhere within their limits; ${rest}`,
      page.width,
    ),
    ...hanging('  ', limitWords(values, place), page.width).filter((line) => line.trim() !== ''),
    ...wrap(`${counted(Number(draws), 'set')} drawn, ${drawn}, seed ${String(seed)}.`, page.width),
    '',
  ]
}

/** `balance-r resistance 371 to 410 Ω`; values of one name and one range by their parts together. */
function limitWords(values: SpreadAnswer['values'], place: string | undefined): string {
  const parts = new Map<string, string[]>()
  for (const { id, part, least, most, unit } of values) {
    const range = joined(formatQuantity(least, unit, 3), formatQuantity(most, unit, 3))
    const words = `${id.slice(part.length + 1)} ${range}`
    parts.set(words, [...(parts.get(words) ?? []), shortId(part, place)])
  }
  return [...parts].map(([words, names]) => `${names.join(', ')} ${words}`).join('; ')
}

/** `14.4 to 15.3 mA`: the unit once where both have the same. */
function joined(low: string, high: string): string {
  const [, unit] = /( \S+)$/.exec(high) ?? []
  return `${unit === undefined || !low.endsWith(unit) ? low : low.slice(0, -unit.length)} to ${high}`
}

function agedLines(aged: SpreadAnswer['aged'], page: Page): string[] {
  if (aged === undefined) return []
  const changes = aged.changes
    .filter(({ parts }) => parts > 0)
    .map(({ part, value, factor, seconds }) =>
      factor === undefined
        ? `a ${value} of ${formatQuantity((seconds ?? 0) / 1e-6, 'Ω', 3)} beside each µF of a ${part}`
        : `${part} ${value} × ${formatNumber(factor, 3)}`,
    )
  return [
    ...wrap(
      `Aged by ${counted(aged.years, 'year')}: ${changes.join('; ')}. From memory, no measurement; parts differ.`,
      page.width,
    ),
    '',
  ]
}

function isStill({ figure, worst }: FigureSpread): boolean {
  if (worst === undefined || figure.value === null) return true
  if ([worst.least, worst.most].every((end) => Math.abs(end) < NOTHING)) return true
  const width = Math.max(Math.abs(worst.least - figure.value), Math.abs(worst.most - figure.value))
  return width <= HARDLY * Math.abs(figure.value)
}

/** Figures by their condition in words, in the order in which these come. */
function groups(figures: readonly FigureSpread[]): readonly (readonly [string, readonly FigureSpread[]])[] {
  const byWords = new Map<string, FigureSpread[]>()
  for (const one of figures) {
    const words = conditionWords(one.figure.condition)
    byWords.set(words, [...(byWords.get(words) ?? []), one])
  }
  return [...byWords]
}

const HEADS = [
  { heading: 'figure' },
  { heading: 'as stated', align: 'right' },
  { heading: 'worst case' },
  { heading: '5 % to 95 %' },
  { heading: 'matters most' },
] as const

function figureTable(figures: readonly FigureSpread[], place: string | undefined, page: Page): string[] {
  const names = figures.map(({ figure }) => figureName(figure))
  const named = (figure: Figure): string => {
    const name = figureName(figure)
    const isOne = place !== undefined && names.filter((one) => one === name).length === 1
    return isOne ? name : `${subjectText(figure.subject, place)}: ${name}`
  }
  const rows = figures.map(({ figure, worst, percentiles, parts }) => [
    named(figure),
    figureText(figure),
    worst === undefined ? '' : rangeText(figure, worst.least, worst.most) + (worst.steady ? '' : ' *'),
    percentiles === undefined ? '' : rangeText(figure, percentiles[5], percentiles[95]),
    shareText(parts[0], place),
  ])
  return table(HEADS, rows, page)
}

function rangeText(figure: Figure, least: number, most: number): string {
  const { approximate: _, ...plain } = figure
  return joined(figureText({ ...plain, value: least }), figureText({ ...plain, value: most }))
}

/** `transmitter 99 %`. */
export function shareText(one: PartShare | undefined, place: string | undefined): string {
  if (one === undefined) return ''
  const percent = Math.round(100 * one.share)
  return `${shortId(one.part, place)} ${percent < 1 ? 'below 1' : percent} %`
}

function stillLines(still: readonly FigureSpread[], place: string | undefined, page: Page): string[] {
  if (still.length === 0) return []
  const silent = silentBells(still.map(({ figure }) => figure))
  const names = still.map(({ figure }) => {
    const subject = place === undefined ? ` (${figure.subject})` : ''
    return `${figureName(figure)}${subject} ${figureText(figure, silent)}`
  })
  return [
    ...wrap(`Hardly moved, by a thousandth at most: ${[...new Set(names)].join('; ')}.`, page.width),
    '',
  ]
}

/** What the marks in the table mean, and which slopes are no adjoint ones. */
function footnotes(moved: readonly FigureSpread[], place: string | undefined, page: Page): string[] {
  const lines: string[] = []
  if (moved.some(({ worst }) => worst?.steady === false)) {
    const says =
      'some value moves it one way here and the other way there: the worst that was found by trying single values and by all draws, no proof that nothing is worse.'
    lines.push(...hanging('* ', says, page.width))
  }
  const stepped = moved.filter(({ by }) => by === 'differences')
  if (stepped.length > 0) {
    const names = [...new Set(stepped.map(({ figure }) => shortId(figure.id, place)))]
    const says = `What matters most by differences of whole solves, not by the adjoint method: ${names.join(', ')}.`
    lines.push(...wrap(says, page.width))
  }
  const lost = moved.filter((one) => one.lost > 0)
  for (const { figure, lost: count } of lost)
    lines.push(...wrap(`${figureName(figure)} is no number in ${counted(count, 'draw')}.`, page.width))
  return lines.length === 0 ? [] : [...lines, '']
}
