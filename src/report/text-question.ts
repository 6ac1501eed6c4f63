/** A question of a diagnosis as text: what to do, what may be answered, and what that would mean. */
import type { NextQuestion, WhatIf } from '../answer/diagnose-answer.ts'
import { formatQuantity } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { subjectText } from './place-names.ts'
import { table } from './table.ts'
import { conditionWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** A probability in percent; never quite nothing, never quite sure. */
export function shareText(probability: number): string {
  if (probability > 0.999) return 'over 99.9 %'
  return probability < 0.001 ? 'under 0.1 %' : `${(100 * probability).toFixed(1)} %`
}

/** The question itself, numbered answers or what to write, and its cautions. */
export function questionText(question: NextQuestion, place: string, page: Page): string {
  const { asks, outcomes, unit, cautions, how, site } = question
  const isWorded = outcomes.some(({ answer }) => answer !== undefined)
  return lines([
    ...wrap(subjectText(asks, place), page.width).map((line) => page.paint.bold(line)),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    // leads are held somewhere: without that the question cannot be answered
    ...(site === 'in-use' ? [] : hanging('  ', subjectText(how, place), page.width)),
    ...(isWorded
      ? outcomes.map(({ answer, says }, k) => `  ${k + 1}  ${answer}${says === answer ? '' : `: ${says}`}`)
      : [`  write what it shows, such as ${EXAMPLES[unit]}`]),
  ])
}

const EXAMPLES: Readonly<Record<NextQuestion['unit'], string>> = {
  Ω: '210 Ω, 3k3 or open',
  F: '1.8 µF or open',
  V: '48 V',
  '1': '0.5',
}

/** How it is done, and what each outcome would point at. */
export function whyText(question: NextQuestion, place: string, page: Page): string {
  return lines(whyLines(question, place, page))
}

/** The same as lines. */
export function whyLines(question: NextQuestion, place: string, page: Page): string[] {
  const { how, condition, outcomes, bits, effort } = question
  const rows = outcomes.map((one) => [
    outcomeText(one, question),
    shareText(one.probability),
    one.points.map((each) => pointText(each, place)).join('; '),
  ])
  const heads = [
    { heading: 'if it is' },
    { heading: 'probable', align: 'right' },
    { heading: 'it points at' },
  ] as const
  return [
    ...(how === '' ? [] : hanging('  how   ', subjectText(how, place), page.width)),
    ...hanging('  with  ', conditionWords(condition), page.width),
    ...hanging('  why   ', `it is expected to tell ${bits.toFixed(2)} bits in ${effort} min`, page.width),
    ...table(heads, rows, page),
  ]
}

function pointText({ says, size, probability }: WhatIf['points'][number], place: string): string {
  const others = size > 1 ? ` or ${size - 1} like it` : ''
  return `${subjectText(says, place)}${others} (${shareText(probability)})`
}

function outcomeText({ answer, says, least = 0, most = 0, state }: WhatIf, { unit }: NextQuestion): string {
  if (state !== undefined) return 'open'
  if (answer !== undefined) return says ?? answer
  const from = unit === 'V' ? least : Math.max(0, least)
  return `${formatQuantity(from, unit, 2)} to ${formatQuantity(most, unit, 2)}`
}

function lines(all: readonly string[]): string {
  return `${all.join('\n')}\n`
}
