/** The answer to `diagnose` as text: what it is, how sure, what mends it, what speaks for it, what to ask next. */
import type { DiagnoseAnswer, PossibleGroup, Seen, Weighed } from '../answer/diagnose-answer.ts'
import { formatQuantity } from '../quantities/format.ts'
import { heading } from './heading.ts'
import type { Page } from './paint.ts'
import { subjectText } from './place-names.ts'
import { table } from './table.ts'
import { shareText, whyLines } from './text-question.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** So many groups are shown; JSON holds all that count. */
const SHOWN = 5
/** So many causes of a group are named. */
const NAMED = 4

const DECIDED = {
  sure: 'It is, by what was found out:',
  asking: 'It is not decided yet. Most probable:',
  'nothing-tells': 'Nothing that may be asked tells more. Most probable:',
} as const

/** The whole answer. */
export function diagnosisText(answer: DiagnoseAnswer, page: Page): string[] {
  const { cautions, groups, none, decided, next, place } = answer
  const shown = decided === 'sure' ? groups.slice(0, 2) : groups.slice(0, SHOWN)
  const rest = groups.slice(shown.length)
  return [
    ...heading({ ...answer, request: shownRequest(answer) }, page),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    '',
    page.paint.bold(DECIDED[decided]),
    ...shown.flatMap((group, k) => groupLines(group, k === 0, answer, page)),
    ...(rest.length === 0
      ? []
      : row(sum(rest), `${counted(rest.length, 'other cause')} or groups of them, each less probable`, page)),
    ...row(none, 'none of these', page),
    '',
    ...evidenceLines(answer, page),
    ...(next === undefined
      ? []
      : [
          ...wrap(`Find out next: ${subjectText(next.asks, place)}`, page.width).map(page.paint.bold),
          ...whyLines(next, place, page),
          '',
        ]),
    ...countLines(answer, page),
  ]
}

const sum = (groups: readonly PossibleGroup[]): number =>
  groups.reduce((all, { probability }) => all + probability, 0)

/** What was observed stands in a table of its own. */
function shownRequest({ request }: DiagnoseAnswer): DiagnoseAnswer['request'] {
  const { diagnose, on, at, in: socket, symptoms } = request
  const symptom = Array.isArray(symptoms) ? symptoms.join(', ') : undefined
  return { diagnose, on, at, in: socket, symptom }
}

/** A share of the whole with what it belongs to. */
function row(probability: number, says: string, page: Page): string[] {
  return hanging(`${shareText(probability).padStart(12)}  `, says, page.width)
}

/** A group: its likeliest causes; what to look for and what mends it where it leads. */
function groupLines(
  { probability, causes, size, apart }: PossibleGroup,
  isLeading: boolean,
  { place }: DiagnoseAnswer,
  page: Page,
): string[] {
  const [first, ...others] = causes
  if (first === undefined) return []
  const indent = ' '.repeat(14)
  const named = others.slice(0, NAMED - 1)
  const unnamed = size - 1 - named.length
  const more = (label: string, text: string): string[] =>
    hanging(`${indent}${label.padEnd(6)}`, subjectText(text, place), page.width)
  const mending = ({ sign, mend }: typeof first): string[] => [...more('look', sign), ...more('mend', mend)]
  return [
    ...row(probability, subjectText(first.says, place), page),
    ...(isLeading ? mending(first) : []),
    ...(isLeading
      ? named.flatMap((one) => [...more('or', one.says), ...mending(one)])
      : named.slice(0, 1).flatMap((one) => more('or', one.says))),
    ...tellUnnamed(isLeading ? unnamed : size - 2, isLeading, apart, place).flatMap((text) =>
      hanging(indent, text, page.width),
    ),
  ]
}

function tellUnnamed(
  count: number,
  isLeading: boolean,
  apart: PossibleGroup['apart'],
  place: string,
): string[] {
  const others = count > 0 ? [`or ${count} more like ${count > 1 ? 'these' : 'it'}`] : []
  if (!isLeading) return others
  return apart === undefined
    ? others
    : [...others, `told apart by what was not allowed: ${subjectText(apart.asks, place)}`]
}

function evidenceLines({ evidence, place, skipped }: DiagnoseAnswer, page: Page): string[] {
  const passed = skipped.length === 0 ? [] : [`passed over: ${skipped.map(({ asks }) => asks).join('; ')}`]
  if (evidence.length === 0) return passed.flatMap((text) => [...wrap(text, page.width), ''])
  const heads = [
    { heading: 'found out' },
    { heading: 'it was' },
    { heading: 'expected of the first' },
    { heading: 'of a sound set' },
    { heading: 'speaks' },
  ]
  const rows = evidence.map((one) => [
    subjectText(one.asks, place),
    seenText(one.observed),
    one.leading === null ? 'not known' : seenText(one.leading),
    one.sound === null ? 'not known' : seenText(one.sound),
    speaksText(one),
  ])
  return [...table(heads, rows, page, 0), ...passed.flatMap((text) => wrap(text, page.width)), '']
}

/** Beyond this the exact ratio says no more. */
const CLEARLY = 100

function speaksText({ speaks, ratio }: Weighed): string {
  if (speaks === 'neither') return 'neither way'
  const times = speaks === 'for' ? ratio : 1 / ratio
  const size = times > CLEARLY ? `over ${CLEARLY}` : times.toFixed(times < 10 ? 1 : 0)
  return `${speaks} it, ${size} : 1`
}

/** What was seen, in words or as a value. */
function seenText({ says, value, state, unit }: Seen): string {
  if (state !== undefined) return 'open'
  if (says !== undefined) return says
  return typeof value === 'number' ? formatQuantity(value, unit) : 'not known'
}

function countLines({ counts, instrument }: DiagnoseAnswer, page: Page): string[] {
  const pairs = counts.pairs === undefined ? '' : ` and ${counted(counts.pairs, 'pair')} of them`
  const says = `${counted(counts.faults, 'fault')}${pairs} compared, by ${counted(counts.tests, 'test')} with the instrument ${instrument}`
  return wrap(says, page.width)
}
