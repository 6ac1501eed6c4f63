/** One failing or marginal verdict, with all that speaks for it. */
import type { Consequence, Verdict } from '../checks/rule.ts'
import { figureName, figureText, limitText } from './amounts.ts'
import type { Page } from './paint.ts'
import { pathText, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { conditionWords, VERDICT_WORDS } from './words.ts'
import { columns, hanging, wrap } from './wrap.ts'

const INDENT = 2
const LABEL = 10

/** How each state is set off. */
export function stateText({ state }: Pick<Verdict, 'state'>, { paint }: Page): string {
  const colour = { fails: paint.bad, marginal: paint.warn, unknown: paint.dim, holds: paint.good }[state]
  return colour(VERDICT_WORDS[state])
}

function labelled(label: string, text: string, page: Page): string[] {
  return hanging(' '.repeat(INDENT) + label.padEnd(LABEL), text, page.width)
}

function consequences(all: readonly Consequence[], page: Page): string[] {
  if (all.length === 0) return []
  const withMend = all.some(({ mended }) => mended !== undefined)
  const heads = [{ heading: 'what follows' }, { heading: 'now', align: 'right' } as const]
  const rows = all.map(({ figure, mended }) => {
    const row = [figureName(figure), figureText(figure)]
    return withMend ? [...row, mended === undefined ? '–' : figureText(mended)] : row
  })
  return table(withMend ? [...heads, { heading: 'mended', align: 'right' }] : heads, rows, page, INDENT)
}

/** State, check, subject and condition, then what was found, the path, figure, limit, consequences and mend. */
export function verdictBlock(verdict: Verdict, place: string | undefined, page: Page): string[] {
  const word = VERDICT_WORDS[verdict.state]
  const about = [verdict.check, subjectText(verdict.subject, place), conditionWords(verdict.condition)]
  const title = hanging(`${word}  `, about.filter((one) => one !== '').join(' · '), page.width)
  const lines = [stateText(verdict, page) + (title[0] ?? '').slice(columns(word)), ...title.slice(1)]
  lines.push(...wrap(verdict.says, page.width - INDENT).map((line) => ' '.repeat(INDENT) + line))
  if (verdict.path.length > 0) lines.push(...labelled('path', pathText(verdict.path, place), page))
  const { figure, limit } = verdict
  if (figure !== null) {
    const subject = subjectText(figure.subject, place)
    lines.push(...labelled('figure', `${figureName(figure)} (${subject}): ${figureText(figure)}`, page))
  }
  if (limit !== null) lines.push(...labelled('limit', limitText(limit), page))
  lines.push(...consequences(verdict.consequences ?? [], page))
  if ('mend' in verdict) lines.push(...labelled('mend', verdict.mend, page))
  return lines
}

/** Why a verdict's figures are approximate. */
export function reasonsOf(verdict: Verdict): string[] {
  const figures = [verdict.figure, ...(verdict.consequences ?? []).flatMap((one) => [one.figure, one.mended])]
  return figures.flatMap((figure) => (figure?.approximate === undefined ? [] : [figure.approximate]))
}
