/** The answer to `check` as text. */
import type { CheckAnswer } from '../answer/answer.ts'
import type { Figure } from '../figures/figure.ts'
import { figureName, figureText } from './amounts.ts'
import { caution, heading } from './heading.ts'
import type { Page } from './paint.ts'
import { solePlace, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { approximations, countsLine, leadsHand, verdictLines } from './text-verdicts.ts'
import { conditionWords } from './words.ts'

/** Figures between two points belong to the verdicts that quote them; a table of them would drown the rest. */
const isQuotedOnly = ({ id }: Figure): boolean => id.endsWith('.between')

function figureLines(figures: readonly Figure[], place: string | undefined, page: Page): string[] {
  const shown = figures.filter((figure) => !isQuotedOnly(figure))
  if (shown.length === 0) return []
  const heads = [
    { heading: 'figure' },
    { heading: 'of' },
    { heading: 'with' },
    { heading: 'value', align: 'right' },
  ] as const
  const rows = shown.map((figure) => [
    figureName(figure),
    subjectText(figure.subject, place),
    conditionWords(figure.condition),
    figureText(figure),
  ])
  const reasons = shown.flatMap(({ approximate }) => (approximate === undefined ? [] : [approximate]))
  return ['Figures', ...table(heads, rows, page), '', ...approximations(reasons, page)]
}

/** Verdicts, figures, and the counts on the last line. */
export function checkText(answer: CheckAnswer, page: Page): string[] {
  const { verdicts, figures, counts } = answer
  const place = solePlace([...verdicts, ...figures].map(({ condition }) => condition))
  const rings = figures.some(({ id, condition }) => id.startsWith('ringing.') || condition.line === 'ringing')
  return [
    ...heading(answer, page),
    ...verdictLines(verdicts, place, page),
    ...figureLines(figures, place, page),
    ...(rings || leadsHand(verdicts) ? caution(page) : []),
    countsLine(counts, page),
  ]
}
