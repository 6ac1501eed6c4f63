/** Verdicts that tolerance and age put in doubt. */
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import type { Figure } from '../figures/figure.ts'
import { formatNumber } from '../quantities/format.ts'
import type { VerdictSpread } from '../spread/verdicts.ts'
import { figureName, figureText, limitAmount } from './amounts.ts'
import type { Page } from './paint.ts'
import { shortId, subjectText } from './place-names.ts'
import { counted, VERDICT_WORDS } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Those that fail or may, then how many hold whatever the parts are. */
export function spreadVerdicts(answer: SpreadAnswer, place: string | undefined, page: Page): string[] {
  const { verdicts } = answer
  if (verdicts.length + answer['not followed'].length === 0) return []
  const doubtful = verdicts.filter(({ state }) => state !== 'holds')
  const held = verdicts.length - doubtful.length
  const count = held === verdicts.length ? `All ${held} hold` : `${held} of ${verdicts.length} hold`
  return [
    page.paint.bold('Verdicts with a figure and a limit'),
    ...doubtful.flatMap((one) =>
      hanging('  ', `${VERDICT_WORDS[one.state]} ${verdictWords(one, place)}`, page.width),
    ),
    ...(verdicts.length === 0 ? [] : wrap(`${count} in the worst case too.`, page.width)),
    ...wrap(notFollowed(answer), page.width),
    ...(doubtful.some(({ state }) => state === 'marginal')
      ? wrap('MARGINAL: within the limit as stated, beyond it in the worst case.', page.width)
      : []),
    '',
  ]
}

/** Those of which nothing can spread, counted by their state. */
function notFollowed({ verdicts, ...answer }: SpreadAnswer): string {
  const states = answer['not followed'].map(({ state }) => state)
  if (states.length === 0) return ''
  const tally = (['holds', 'marginal', 'fails', 'unknown'] as const).flatMap((state) => {
    const count = states.filter((one) => one === state).length
    return count === 0 ? [] : [`${count} ${VERDICT_WORDS[state]}`]
  })
  const more = verdicts.length === 0 ? counted(states.length, 'verdict') : `${states.length} more`
  const verb = states.length === 1 ? 'compares' : 'compare'
  return `${more} ${verb} no figure with a limit, so that nothing can spread: ${tally.join(', ')}. \`ringproof check\` tells of them.`
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
  if (worst?.value == null) return [limitAmount(limit), 'not to be judged in the worst case']
  const { approximate: _, frequency: __, ...plain } = figure
  if (worst.rests !== undefined) {
    const other: Figure = { ...plain, ...worst.rests, value: worst.value }
    const bound =
      worst.limit === null
        ? ''
        : ` against ${limitAmount({ ...limit, unit: other.unit, value: worst.limit })}`
    return [
      limitAmount(limit),
      `in the worst case ${figureName(other)} of ${other.subject} decides, ${figureText(other)}${bound}`,
    ]
  }
  const at = `${figureText({ ...plain, value: worst.value })} in the worst case`
  const isMoved = worst.limit !== null && worst.limit !== limit.value
  // a limit that was made for a part moves with it
  const there = isMoved ? `, there ${limitAmount({ ...limit, value: worst.limit ?? 0 })}` : ''
  return [at, `${limitAmount(limit)}${there}`]
}

function shareWords(share: number): string {
  return share === 0 ? 'none' : `${formatNumber(100 * share, 2)} %`
}
