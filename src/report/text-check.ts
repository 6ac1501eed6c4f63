/** The answer to `check` as text. */
import type { CheckAnswer } from '../answer/answer.ts'
import type { Figure } from '../figures/figure.ts'
import { equalLines } from './equal-bells.ts'
import { caution, heading } from './heading.ts'
import { noteLines } from './notes.ts'
import type { Page } from './paint.ts'
import { solePlace } from './place-names.ts'
import { setTable } from './premises-sets.ts'
import { figureTable } from './text-figures.ts'
import { opinionText } from './text-opinion.ts'
import { isOfPremises, premisesHead, premisesText } from './text-premises.ts'
import { countsLine, leadsHand, verdictLines } from './text-verdicts.ts'

/** Figures between two points belong to the verdicts that quote them; a table of them would drown the rest. */
const isQuotedOnly = ({ id }: Figure): boolean => id.endsWith('.between')

function figureLines(figures: readonly Figure[], place: string | undefined, page: Page): string[] {
  const shown = figures.filter((figure) => !isQuotedOnly(figure))
  if (shown.length === 0) return []
  return ['Figures', ...figureTable(shown, place, page)]
}

/** One page of premises, unless the whole is asked for; else faults, verdicts, figures, and the counts on the last line. */
export function checkText(answer: CheckAnswer, page: Page): string[] {
  const { verdicts, faults, figures, counts, stands } = answer
  const whole = answer.request.whole === true
  const isHouse = stands !== undefined && isOfPremises(answer)
  if (isHouse && !whole) return premisesText(answer, stands, page)
  const place = solePlace([...verdicts, ...faults, ...figures].map(({ condition }) => condition))
  const rings = figures.some(({ id, condition }) => id.startsWith('ringing.') || condition.line === 'ringing')
  return [
    ...heading(answer, page),
    ...(isHouse
      ? [
          ...premisesHead(stands, page),
          ...setTable(answer, stands, page),
          ...equalLines(answer['equal bells'], page),
          '',
        ]
      : []),
    ...verdictLines({ verdicts, faults }, place, page, whole),
    ...(whole ? noteLines(stands, page) : []),
    ...figureLines(figures, place, page),
    ...opinionText(answer['second opinion'], place, page),
    ...(rings || faults.length > 0 || leadsHand(verdicts) ? caution(page) : []),
    countsLine(counts, page),
  ]
}
