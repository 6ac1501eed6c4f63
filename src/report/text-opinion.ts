/** A second opinion as text. */
import type { Difference, FigureDifference, SecondOpinion } from '../answer/second-opinion.ts'
import { formatQuantity } from '../quantities/format.ts'
import { valueText } from './amounts.ts'
import type { Page } from './paint.ts'
import { shortId, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { conditionWords, counted, FIGURE_WORDS } from './words.ts'
import { wrap } from './wrap.ts'

/** A share without false digits: `2e-16`. */
const share = (relative: number): string => (relative === 0 ? '0' : relative.toExponential(0))

function differenceText({ at, unit, absolute, relative, ...where }: Difference, place?: string): string {
  const kind = unit === 'V' ? 'voltage' : 'current'
  const frequency = where.frequency === null ? '' : ` at ${formatQuantity(where.frequency, 'Hz', 6)}`
  const when = `${where.analysis} current${frequency}, ${conditionWords(where.condition)}`
  return `the largest difference, ${share(absolute)} ${unit} or ${share(relative)} of the largest ${kind} of its island, is at ${shortId(at, place)} (${when})`
}

/** Names of a list that are worth a line; JSON has them all. */
const FEW = 12

function fewOf(names: readonly string[]): string {
  const rest = names.length - FEW
  return names.slice(0, FEW).join(', ') + (rest > 0 ? ` and ${rest} more` : '')
}

/** What was done, what was compared, where the two differ most, and what the second took from the first. */
export function opinionText(
  opinion: SecondOpinion | undefined,
  place: string | undefined,
  page: Page,
): string[] {
  if (opinion === undefined) return []
  const { method, questions, unknowns, compared, largest, figures = [] } = opinion
  const names = (ids: readonly string[]): string => fewOf(ids.map((id) => shortId(id, place)))
  const found =
    largest === null
      ? 'all are nil in both'
      : largest.relative === 0
        ? 'no difference at all'
        : differenceText(largest, place)
  const among = questions === 1 ? 'of' : 'of at most'
  const sentences = [
    `Second opinion: ${method}.`,
    `${counted(questions, 'question')} ${among} ${unknowns} unknowns, ${compared} voltages and currents compared: ${found}.`,
  ]
  const doubles = opinion['as doubles']
  const bent = opinion['about our point']
  if (opinion.digits !== null && doubles.length > 0)
    sentences.push(`With values of double precision: ${names(doubles)}.`)
  if (bent.length > 0)
    sentences.push(`Laws that bend, taken about the point found by the solver: ${names(bent)}.`)
  return [...wrap(sentences.join(' '), page.width), '', ...figureLines(figures, place, page)]
}

function figureLines(figures: readonly FigureDifference[], place: string | undefined, page: Page): string[] {
  if (figures.length === 0) return []
  const heads = [
    { heading: 'figure, the worst of each' },
    { heading: 'of' },
    { heading: 'value', align: 'right' },
    { heading: 'apart by', align: 'right' },
  ] as const
  const rows = figures.map(({ id, subject, value, unit, relative }) => [
    FIGURE_WORDS[id] ?? id,
    subjectText(subject, place),
    valueText(value, unit),
    share(relative),
  ])
  return [...table(heads, rows, page), '']
}
