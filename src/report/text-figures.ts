/** The answer to `figures` as text. */
import type { FiguresAnswer } from '../answer/answer.ts'
import type { Figure } from '../figures/figure.ts'
import { figureName, figureText, silentBells } from './amounts.ts'
import { caution, heading } from './heading.ts'
import type { Page } from './paint.ts'
import { solePlace, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { curvesOf, curveTables } from './text-curves.ts'
import { opinionText } from './text-opinion.ts'
import { placeTables } from './text-places.ts'
import { approximations } from './text-verdicts.ts'
import { conditionWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

const NONE = 'No figures: they need a set that is plugged into a line; name one with `--on`.'

/** A table of figures with their conditions, and why some are approximate. */
export function figureTable(figures: readonly Figure[], place: string | undefined, page: Page): string[] {
  return [...bareTable(figures, place, page), ...approximations(reasonsOf(figures), page)]
}

function bareTable(figures: readonly Figure[], place: string | undefined, page: Page): string[] {
  if (figures.length === 0) return []
  const heads = [
    { heading: 'figure' },
    { heading: 'of' },
    { heading: 'with' },
    { heading: 'value', align: 'right' },
  ] as const
  const silent = silentBells(figures)
  const rows = figures.map((figure) => [
    figureName(figure),
    subjectText(figure.subject, place),
    conditionWords(figure.condition),
    figureText(figure, silent),
  ])
  return [...table(heads, rows, page), '']
}

function reasonsOf(figures: readonly Figure[]): string[] {
  return figures.flatMap(({ approximate }) => (approximate === undefined ? [] : [approximate]))
}

/** Figures, their ids for whoever wants only some, and the second opinion where there is one. */
export function figuresText(answer: FiguresAnswer, page: Page): string[] {
  const { figures } = answer
  const place = solePlace(figures.map(({ condition }) => condition))
  const head = heading(answer, page)
  if (figures.length === 0) return [...head, ...wrap(NONE, page.width)]
  const ids = [...new Set(figures.map(({ id }) => id))].sort()
  const { curves, others: rest } = curvesOf(figures)
  const { tables, others } = placeTables(rest, page)
  return [
    ...head,
    ...tables,
    ...bareTable(others, place, page),
    ...curveTables(curves, place, page),
    ...approximations(reasonsOf(figures), page),
    ...opinionText(answer['second opinion'], place, page),
    ...caution(page),
    ...hanging('ids  ', ids.join(', '), page.width),
  ]
}
