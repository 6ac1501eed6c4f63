/** A question of a diagnosis as text: what to do, what may be answered, and what that would mean. */
import type { DiagnoseAnswer, NextQuestion, Seen, WhatIf } from '../answer/diagnose-answer.ts'
import type { Problem } from '../problem.ts'
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

/** The question itself, with its number where it has one; numbered answers or what to write, and its cautions. */
export function questionText(question: NextQuestion, place: string, page: Page, count?: number): string {
  const { asks, outcomes, unit, cautions, how, site } = question
  const isWorded = outcomes.some(({ answer }) => answer !== undefined)
  return lines([
    ...wrap(`${count === undefined ? '' : `Question ${count}: `}${subjectText(asks, place)}`, page.width).map(
      (line) => page.paint.bold(line),
    ),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    // leads are held somewhere: without that the question cannot be answered
    ...(site === 'in-use' ? [] : hanging('  ', subjectText(how, place), page.width)),
    ...(isWorded
      ? outcomes.map(({ answer, says }, k) => `  ${k + 1}  ${answer}${says === answer ? '' : `: ${says}`}`)
      : [`  write what it shows, such as ${EXAMPLES[unit]}`]),
  ])
}

/** What the meter might show, as it is written. */
export const EXAMPLES: Readonly<Record<NextQuestion['unit'], string>> = {
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
    ...hanging('  why   ', `it is expected to tell ${amountText(bits)}, in about ${effort} min`, page.width),
    ...table(heads, rows, page),
  ]
}

/** From so many bits on it tells much, or something. */
const [MUCH, SOMETHING] = [0.5, 0.1] as const

/** Bits in plain words: one bit parts what is possible into two equal halves. */
export function amountText(bits: number): string {
  return bits >= MUCH ? 'much' : bits >= SOMETHING ? 'something' : 'a little'
}

/** What was seen, in words or as a value. */
export function seenText({ says, value, state, unit }: Seen): string {
  if (state !== undefined) return 'open'
  if (says !== undefined) return says
  return typeof value === 'number' ? formatQuantity(value, unit) : 'not known'
}

/**
 * What an answer was taken for, where that is not what was written, and how far it is after it: the leading cause with
 * its share.
 */
export function soFarText(
  { evidence, groups, none, place }: DiagnoseAnswer,
  page: Page,
  last: { readonly test: string; readonly written: string },
): string {
  const noted = evidence.find(({ test }) => test === last.test)?.observed
  const [first] = groups
  const percent = (share: number): string => {
    const whole = Math.round(100 * share)
    return whole < 1 ? 'under 1 %' : whole > 99 ? 'over 99 %' : `${whole} %`
  }
  const cause = first?.causes[0]
  const leads =
    first === undefined || cause === undefined || isNone(groups, none)
      ? `no cause that is known fits well, ${percent(none)}`
      : `${shortly(cause, place)}${first.size > 1 ? ` or ${first.size - 1} like it` : ''}, ${percent(first.probability)}`
  return lines([
    ...(noted === undefined || isWritten(noted, last.written)
      ? []
      : hanging('noted: ', seenText(noted), page.width)),
    ...hanging('so far: ', leads, page.width),
  ])
}

/** Whether it is rather none of the causes than the most probable of them. */
export function isNone(groups: DiagnoseAnswer['groups'], none: number): boolean {
  return none > (groups[0]?.probability ?? 0)
}

/** A cause on one line; of no fault only that. */
function shortly(
  { faults, says }: DiagnoseAnswer['groups'][number]['causes'][number],
  place: string,
): string {
  return faults.length === 0 ? (says.split(/[,;]/)[0] ?? says) : subjectText(says, place)
}

function isWritten(noted: Seen, written: string): boolean {
  const said = written.trim().toLowerCase()
  const [only, ...others] = noted.answers ?? []
  return seenText(noted).toLowerCase() === said || (others.length === 0 && only?.toLowerCase() === said)
}

/** Why a line was not understood, without the code that only programs need, and what helps. */
export function refusedText(problems: readonly Problem[], page: Page): string {
  const all = problems.flatMap(({ found, expected, mend }) =>
    wrap(
      `Not understood: ${found}. Expected: ${expected}.${mend === undefined ? '' : ` ${mend[0]?.toUpperCase()}${mend.slice(1)}.`}`,
      page.width,
    ),
  )
  return lines([
    ...all,
    ...wrap('`?` explains the question, `skip` passes over it, `back` goes back.', page.width),
  ])
}

/** A cause that an outcome would point at, those like it, and how probable it would be. */
export function pointText({ says, size, probability }: WhatIf['points'][number], place: string): string {
  const others = size > 1 ? ` or ${size - 1} like it` : ''
  return `${subjectText(says, place)}${others} (${shareText(probability)})`
}

/** An outcome of a question: an answer in words, or between what and what the meter would show. */
export function outcomeText(
  { answer, says, least = 0, most = 0, state }: WhatIf,
  { unit }: NextQuestion,
): string {
  if (state !== undefined) return 'open'
  if (answer !== undefined) return says ?? answer
  const from = unit === 'V' ? least : Math.max(0, least)
  return `${formatQuantity(from, unit, 2)} to ${formatQuantity(most, unit, 2)}`
}

function lines(all: readonly string[]): string {
  return `${all.join('\n')}\n`
}
