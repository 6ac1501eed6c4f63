/** Verdicts that tolerance and age put in doubt. */
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import { formatNumber } from '../quantities/format.ts'
import type { VerdictSpread } from '../spread/verdicts.ts'
import { figureText, limitAmount } from './amounts.ts'
import type { Page } from './paint.ts'
import { shortId, subjectText } from './place-names.ts'
import { VERDICT_WORDS } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Those that fail or may, then how many hold whatever the parts are. */
export function spreadVerdicts({ verdicts }: SpreadAnswer, place: string | undefined, page: Page): string[] {
  if (verdicts.length === 0) return []
  const doubtful = verdicts.filter(({ state }) => state !== 'holds')
  const held = verdicts.length - doubtful.length
  const count = held === verdicts.length ? `All ${held} hold` : `${held} of ${verdicts.length} hold`
  return [
    page.paint.bold('Verdicts with a figure and a limit'),
    ...doubtful.flatMap((one) =>
      hanging('  ', `${VERDICT_WORDS[one.state]} ${verdictWords(one, place)}`, page.width),
    ),
    ...wrap(`${count} in the worst case too.`, page.width),
    ...(doubtful.some(({ state }) => state === 'marginal')
      ? wrap('MARGINAL: within the limit as stated, beyond it in the worst case.', page.width)
      : []),
    '',
  ]
}

function verdictWords(one: VerdictSpread, place: string | undefined): string {
  const { check, subject, figure, fails, decides } = one
  const words = [
    `${check} of ${subjectText(subject, place)}: ${figureText(figure)} as stated`,
    ...worstWords(one),
    ...(fails === null ? [] : [`${shareWords(fails)} of the drawn sets fail`]),
    ...(decides === undefined
      ? []
      : [`${shortId(decides.part, place)} decides (${Math.round(100 * decides.share)} %)`]),
  ]
  return `${words.join('; ')}.`
}

function worstWords({ figure, limit, worst }: VerdictSpread): readonly string[] {
  if (worst?.value == null) return [limitAmount(limit)]
  const { approximate: _, ...plain } = figure
  const at = `${figureText({ ...plain, value: worst.value })} in the worst case`
  const isMoved = worst.limit !== null && worst.limit !== limit.value
  // a limit that was made for a part moves with it
  const there = isMoved ? `, there ${limitAmount({ ...limit, value: worst.limit ?? 0 })}` : ''
  return [at, `${limitAmount(limit)}${there}`]
}

function shareWords(share: number): string {
  return share === 0 ? 'none' : `${formatNumber(100 * share, 2)} %`
}
