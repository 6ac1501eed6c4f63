/** The answer to `diagnose` as text: what it is, how sure, what mends it, what speaks for it, what to ask next. */
import type { DiagnoseAnswer, PossibleGroup, Weighed } from '../answer/diagnose-answer.ts'
import { heading } from './heading.ts'
import type { Page } from './paint.ts'
import { subjectText } from './place-names.ts'
import { table } from './table.ts'
import { isNone, seenText, shareText, whyLines } from './text-question.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** So many groups are shown; JSON holds all that count. */
const SHOWN = 5
/** So many causes of the leading group are told with what to look for; the others shortly. */
const NAMED = 4
/** So many at most: nobody reads more, and JSON holds them. */
const LISTED = 40

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
    ...(cautions.length === 0 ? [] : ['']),
    ...beginningLines(answer, page),
    ...(isNone(groups, none) ? noneLines(answer, page) : [page.paint.bold(DECIDED[decided])]),
    ...shown.flatMap((group, k) => groupLines(group, k === 0 && !isNone(groups, none), answer, page)),
    ...(rest.length === 0
      ? []
      : row(sum(rest), `${counted(rest.length, 'other cause')} or groups of them, each less probable`, page)),
    ...(isNone(groups, none) ? [] : row(none, 'none of these', page)),
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

/** What one might begin with, where nothing has been told. */
function beginningLines({ complaints, evidence, skipped }: DiagnoseAnswer, page: Page): string[] {
  if (complaints === undefined || evidence.length + skipped.length > 0) return []
  const ask = 'or let it ask you, question by question, with `--ask`'
  if (complaints.length === 0)
    return [...wrap(`You have told nothing yet. Tell readings, ${ask}.`, page.width), '']
  const width = Math.max(...complaints.map(({ id }) => id.length))
  return [
    ...wrap(`You have told nothing yet. Begin with \`--symptom\` and a complaint, ${ask}.`, page.width),
    ...complaints.flatMap(({ id, says }) => hanging(`  ${id.padEnd(width)}  `, says, page.width)),
    '',
  ]
}

/** That it is rather none of the causes, and what to do then. */
function noneLines({ none, request }: DiagnoseAnswer, page: Page): string[] {
  const pairs = request.pairs === true ? '' : ' Two faults at once are looked for with `--pairs`.'
  const advice = `Ask and read again what speaks against the first cause below.${pairs} Whether it is wired as its sheet says is what \`ringproof identify\` finds out.`
  return [
    page.paint.bold('No cause that is known fits well:'),
    ...row(none, 'none of these', page),
    ...hanging(' '.repeat(14), advice, page.width),
    page.paint.bold('The most probable of those that are known:'),
  ]
}

/** A group: all causes of the one that leads, with what to look for and what mends it; two of any other. */
function groupLines(group: PossibleGroup, isLeading: boolean, answer: DiagnoseAnswer, page: Page): string[] {
  const [first, second] = group.causes
  if (first === undefined) return []
  if (isLeading) return leadingLines(group, answer, page)
  const { place } = answer
  const or = hanging(`${INDENT}or    `, subjectText(second?.says ?? '', place), page.width)
  return [
    ...row(group.probability, subjectText(first.says, place), page),
    ...(second === undefined ? [] : or),
    ...moreLines(group.size - 2, page),
  ]
}

const INDENT = ' '.repeat(14)

function moreLines(count: number, page: Page): string[] {
  return count > 0 ? hanging(INDENT, `or ${count} more like ${count > 1 ? 'these' : 'it'}`, page.width) : []
}

/** The leading group, numbered where it has several causes. */
function leadingLines(
  { probability, causes, size, apart }: PossibleGroup,
  { place, request }: DiagnoseAnswer,
  page: Page,
): string[] {
  const told = (label: string, text: string): string[] =>
    hanging(`${INDENT}${label.padEnd(6)}`, subjectText(text, place), page.width)
  const mending = ({ sign, mend }: (typeof causes)[number]): string[] => [
    ...told('look', sign),
    ...told('mend', mend),
  ]
  const [first] = causes
  const outside = request.inside === false ? ' from outside' : ''
  const listed = causes.slice(0, LISTED)
  return [
    ...(size === 1 && first !== undefined
      ? [...row(probability, subjectText(first.says, place), page), ...mending(first)]
      : [
          ...row(probability, `${size} causes that look alike${outside}:`, page),
          ...listed.flatMap((one, k) => [
            ...told(String(k + 1), one.says),
            ...(k < NAMED ? mending(one) : []),
          ]),
          ...moreLines(size - listed.length, page),
        ]),
    ...(apart === undefined
      ? []
      : hanging(INDENT, `told apart by what was not allowed: ${subjectText(apart.asks, place)}`, page.width)),
  ]
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

/** For or against the first, and how clearly. */
export function speaksText({ speaks, ratio }: Weighed): string {
  if (speaks === 'neither') return 'neither way'
  const times = speaks === 'for' ? ratio : 1 / ratio
  const size = times > CLEARLY ? `over ${CLEARLY}` : times.toFixed(times < 10 ? 1 : 0)
  return `${speaks} it, ${size} : 1`
}

function countLines({ counts, instrument }: DiagnoseAnswer, page: Page): string[] {
  const pairs = counts.pairs === undefined ? '' : ` and ${counted(counts.pairs, 'pair')} of them`
  const says = `${counted(counts.faults, 'fault')}${pairs} compared, by ${counted(counts.tests, 'test')} with the instrument ${instrument}`
  return wrap(says, page.width)
}
