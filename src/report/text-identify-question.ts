/** A question of `identify` as text: what to look at or to read, what may be answered, what that would speak for. */
import type { IdentifyAnswer, IdentifyNext } from '../answer/identify-answer.ts'
import { outcomeText, saidText, whereText } from './identify-words.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { identifyVerdict } from './text-identify-verdict.ts'
import { amountText } from './text-question.ts'
import { hanging, wrap } from './wrap.ts'

/** So many names of an outcome are written out. */
const NAMED = 4

/** The sets that each outcome speaks for. */
export function outcomeLines({ outcomes }: IdentifyNext, page: Page): string[] {
  const rows = outcomes.map((one) => {
    const named = one.sets.slice(0, NAMED).join(', ')
    const more = one.sets.length - NAMED
    return [outcomeText(one), more > 0 ? `${named} and ${more} more` : named]
  })
  return table(
    [{ heading: 'outcome' }, { heading: 'speaks for' }],
    [...rows, ['anything else', 'a set that is in no sheet, or a mistake']],
    page,
  )
}

/** A reading that does not fit is asked for again. */
export function asksText({ again, asks }: Pick<IdentifyNext, 'again' | 'asks'>): string {
  return again ? `${asks} Read it once more: what was read does not fit.` : asks
}

/** Answers that may be given by their number from 1; none of a reading, nor where a number is an answer itself. */
export function numberedAnswers({ answers }: IdentifyNext): readonly string[] {
  return answers.some((one) => /^\d+$/.test(one)) ? [] : answers
}

/** The question with its number where it has one, and its answers or what to write; its last line ended. */
export function questionText(next: IdentifyNext, page: Page, count?: number): string {
  const numbered = numberedAnswers(next)
  const says = `${count === undefined ? '' : `Question ${count}: `}${asksText(next)}`
  return lines([
    ...wrap(says, page.width).map((line) => page.paint.bold(line)),
    // leads are held somewhere: without that the question cannot be answered
    ...(next.ask === 'reading' ? hanging('  ', whereText(next), page.width) : []),
    ...numbered.flatMap((answer, k) => hanging(`  ${k + 1}  `, answer, page.width)),
    ...(numbered.length > 0 ? [] : hanging('  ', writtenText(next), page.width)),
  ])
}

function writtenText({ ask, answers }: IdentifyNext): string {
  return ask === 'reading'
    ? 'write what it shows, such as 0.2 Ω, 3k3, open or no such terminal'
    : `write how many; known sets have ${answers.filter((one) => /^\d+$/.test(one)).join(', ')}`
}

const LOOK = 'look at the set, unplugged; answer only what you have seen yourself'

/** How it is found out, how much it is expected to tell, and which sets each outcome would speak for. */
export function reasonsText(next: IdentifyNext, page: Page): string {
  const how = next.ask === 'sighting' ? LOOK : `${whereText(next)} A lead goes to a screw, never to a core.`
  return lines([
    ...hanging('  how   ', how, page.width),
    ...hanging(
      '  why   ',
      `it is expected to tell ${amountText(next.bits)}, in about ${next.effort} min`,
      page.width,
    ),
    ...outcomeLines(next, page),
  ])
}

/** What an answer was taken for, where that is not what was written, and what leads after it. */
export function soFarText(
  answer: IdentifyAnswer,
  page: Page,
  last: { readonly id: string; readonly written: string },
): string {
  const noted = answer.findings.find(({ id }) => id === last.id)
  const isWritten = noted === undefined || saidText(noted).toLowerCase() === last.written.trim().toLowerCase()
  return lines([
    ...(isWritten ? [] : hanging('noted: ', saidText(noted), page.width)),
    ...hanging('so far: ', identifyVerdict(answer), page.width),
  ])
}

function lines(all: readonly string[]): string {
  return `${all.join('\n')}\n`
}
