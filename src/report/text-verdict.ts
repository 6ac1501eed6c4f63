/** One failing or marginal verdict, with all that speaks for it. */
import type { Consequence, Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import { figureName, figureText, limitText } from './amounts.ts'
import type { Page } from './paint.ts'
import { pathText, subjectText } from './place-names.ts'
import { type Column, table } from './table.ts'
import { conditionWords, VERDICT_WORDS } from './words.ts'
import { columns, hanging, wrap } from './wrap.ts'

const INDENT = 2
const LABEL = 10

/** How each state is set off. */
export function stateText({ state }: Pick<Verdict, 'state'>, { paint }: Page): string {
  const colour = { fails: paint.bad, marginal: paint.warn, unknown: paint.dim, holds: paint.good }[state]
  return colour(VERDICT_WORDS[state])
}

/** A line of evidence below a title: its label, then the text. */
export function labelled(label: string, text: string, page: Page): string[] {
  return hanging(' '.repeat(INDENT) + label.padEnd(LABEL), text, page.width)
}

/** What follows, as it is and as the mend leaves it; of whom, where it is of several. */
export function consequenceTable(
  all: readonly Consequence[],
  place: string | undefined,
  page: Page,
  indent: number = INDENT,
): string[] {
  if (all.length === 0) return []
  const ids = new Set(all.map(({ figure }) => figureName(figure)))
  const ofSeveral = ids.size < all.length
  const withMend = all.some(({ mended }) => mended !== undefined)
  const right = 'right' as const
  const rows = new Map<string, { readonly cells: readonly string[]; readonly subjects: string[] }>()
  for (const { figure, mended } of all) {
    const now = figureText(figure)
    const cells = [figureName(figure), now, mended === undefined ? '–' : figureText(mended)]
    const key = ofSeveral ? cells.join('\n') : `${rows.size}`
    const row = rows.get(key) ?? { cells, subjects: [] }
    row.subjects.push(subjectText(figure.subject, place))
    rows.set(key, row)
  }
  const chosen = <T>(name: T, of: T, now: T, mended: T): T[] => [
    name,
    ...(ofSeveral ? [of] : []),
    now,
    ...(withMend ? [mended] : []),
  ]
  const heads = chosen<Column>(
    { heading: 'what follows' },
    { heading: 'of' },
    { heading: 'now', align: right },
    { heading: 'mended', align: right },
  )
  const body = [...rows.values()].map(({ cells: [name = '', now = '', mended = ''], subjects }) =>
    chosen(name, [...new Set(subjects)].join(', '), now, mended),
  )
  return table(heads, body, page, indent)
}

function titleLines(verdict: Verdict, place: string | undefined, page: Page): string[] {
  const word = VERDICT_WORDS[verdict.state]
  const about = [verdict.check, subjectText(verdict.subject, place), conditionWords(verdict.condition)]
  const title = hanging(`${word}  `, about.filter((one) => one !== '').join(' · '), page.width)
  return [stateText(verdict, page) + (title[0] ?? '').slice(columns(word)), ...title.slice(1)]
}

/** A verdict that a named fault explains, in short. */
export function explainedBlock(
  verdict: Verdict,
  fault: NamedFault,
  place: string | undefined,
  page: Page,
): string[] {
  const { figure, limit } = verdict
  const amounts = [
    figure === null ? '' : `${figureName(figure)} ${figureText(figure)}`,
    limit === null ? '' : limitText(limit),
  ]
  const says = [`as said above: ${fault.title}`, ...amounts.filter((one) => one !== '')].join('; ')
  return [...titleLines(verdict, place, page), ...hanging(' '.repeat(INDENT), says, page.width)]
}

/** State, check, subject and condition, then what was found, the path, figure, limit, consequences and mend. */
export function verdictBlock(verdict: Verdict, place: string | undefined, page: Page): string[] {
  const lines = titleLines(verdict, place, page)
  lines.push(...wrap(verdict.says, page.width - INDENT).map((line) => ' '.repeat(INDENT) + line))
  if (verdict.path.length > 0) lines.push(...labelled('path', pathText(verdict.path, place, page), page))
  const { figure, limit } = verdict
  if (figure !== null) {
    const subject = subjectText(figure.subject, place)
    lines.push(...labelled('figure', `${figureName(figure)} (${subject}): ${figureText(figure)}`, page))
  }
  if (limit !== null) lines.push(...labelled('limit', limitText(limit), page))
  lines.push(...consequenceTable(verdict.consequences ?? [], place, page))
  if ('mend' in verdict) lines.push(...labelled('mend', verdict.mend, page))
  return lines
}

/** Why the figures of a verdict or a fault are approximate. */
export function reasonsOf(judged: Verdict | NamedFault): string[] {
  const own = 'figure' in judged ? [judged.figure] : []
  const figures = [...own, ...(judged.consequences ?? []).flatMap((one) => [one.figure, one.mended])]
  return figures.flatMap((figure) => (figure?.approximate === undefined ? [] : [figure.approximate]))
}
