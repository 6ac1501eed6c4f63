/** The answer to `identify` as text: what it is, how sure, why, and what to find out next. */
import type { IdentifyAnswer } from '../answer/identify-answer.ts'
import { heading } from './heading.ts'
import { howText, saidText, shareText } from './identify-words.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { asksText, outcomeLines } from './text-identify-question.ts'
import { identifyVerdict } from './text-identify-verdict.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** So many groups are shown. */
const SHOWN = 8
/** Groups that are less probable are not shown beside more probable ones. */
const LEAST = 0.001

/** All of it. */
export function identifyText(answer: IdentifyAnswer, page: Page): string[] {
  return [
    ...heading({ ...answer, request: {} }, page),
    ...answer.cautions.flatMap((one) =>
      wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line)),
    ),
    ...(answer.cautions.length === 0 ? [] : ['']),
    ...verdictLines(answer, page),
    ...groupLines(answer, page),
    ...findingLines(answer, page),
    ...hiddenLines(answer, page),
    ...differenceLines(answer, page),
    ...unreadLines(answer, page),
    ...strapLines(answer, page),
    ...nextLines(answer, page),
    ...wrap(
      `${counted(answer.compared, 'known set')} compared, each state of a slot counted for itself`,
      page.width,
    ),
  ]
}

function verdictLines(answer: IdentifyAnswer, page: Page): string[] {
  return [...wrap(identifyVerdict(answer), page.width).map((line) => page.paint.bold(line)), '']
}

function groupLines({ groups, unknown }: IdentifyAnswer, page: Page): string[] {
  const shown = groups.slice(0, SHOWN).filter(({ probability }, k) => k === 0 || probability >= LEAST)
  const left = groups.length - shown.length
  const rows = [
    ...shown.map((group) => [shareText(group.probability), group.sets.map(({ name }) => name).join(', ')]),
    [
      shareText(unknown.probability),
      `in no sheet: a known one that somebody changed ${shareText(unknown.changed)}, like none ${shareText(unknown.foreign)}`,
    ],
  ]
  return [
    page.paint.bold('What it may be'),
    ...table([{ heading: 'how likely', align: 'right' }, { heading: 'set' }], rows, page),
    ...(left === 0 ? [] : [`  and ${left} less likely`]),
    '',
  ]
}

/** Of two findings about one thing the last counts; the other is not passed over in silence. */
function takenBackLines(answer: IdentifyAnswer, page: Page): string[] {
  return answer['taken back'].flatMap((one) =>
    wrap(`${one.id} was ${saidText(one)} before; the last that you gave counts.`, page.width - 2).map(
      (line) => `  ${line}`,
    ),
  )
}

function findingLines(answer: IdentifyAnswer, page: Page): string[] {
  const { findings, groups } = answer
  if (findings.length === 0) return []
  const [first, next] = groups.map(({ sets }) => sets[0]?.name ?? '')
  const heads = ['found', 'on the bench', first ?? '', ...(next === undefined ? [] : [next])]
  const expects = (fit: IdentifyAnswer['findings'][number]['first'] | undefined): string =>
    `${saidText(fit ?? {})}${fit?.agrees === false ? ' (does not fit)' : ''}`
  return [
    page.paint.bold('Why'),
    ...table(
      heads.map((one) => ({ heading: one })),
      findings.map((one) => [one.id, saidText(one), expects(one.first), expects(one.next)]),
      page,
    ),
    ...findings.flatMap(({ id, weak }) =>
      weak === undefined ? [] : hanging('  ', `${id}: ${weak}.`, page.width),
    ),
    ...takenBackLines(answer, page),
    '',
  ]
}

function hiddenLines({ groups, findings, finds }: IdentifyAnswer, page: Page): string[] {
  const [lead] = groups
  if (
    (finds !== 'one' && finds !== 'like-one') ||
    lead === undefined ||
    lead.hidden.length === 0 ||
    findings.length === 0
  )
    return []
  return [
    ...wrap('What the sheets of this group differ in, and nothing that may be asked shows', page.width).map(
      page.paint.bold,
    ),
    ...table(
      [{ heading: 'what' }, { heading: lead.sets[0]?.name ?? '' }, { heading: 'other' }, { heading: '' }],
      lead.hidden.map(({ set, what, first, other }) => [what, first, other, `in ${set}`]),
      page,
    ),
    '',
  ]
}

/** Until one is more probable than all others together, what the first two differ in tells nothing of the rest. */
const CLEARLY = 0.5
/** Nor does anybody ask what the first differs in from one that is all but out of the question. */
const WORTH_TELLING = 0.01

function differenceLines({ differences, groups, findings, finds }: IdentifyAnswer, page: Page): string[] {
  const [first, next] = groups
  if (findings.length === 0 || finds === 'unknown' || first === undefined || next === undefined) return []
  if (first.probability < CLEARLY || next.probability < WORTH_TELLING) return []
  const heads = [{ heading: 'what' }, ...[first, next].map(({ sets }) => ({ heading: sets[0]?.name ?? '' }))]
  return [
    page.paint.bold('What the first and the next differ in'),
    ...table(
      heads,
      differences.map(({ what, first: one, other }) => [what, one, other]),
      page,
    ),
    '',
  ]
}

/** What a change would not have shown in. */
function unreadLines({ unread, finds, groups }: IdentifyAnswer, page: Page): string[] {
  if ((finds !== 'one' && finds !== 'like-one') || unread.length === 0) return []
  const name = groups[0]?.sets[0]?.name ?? ''
  const text = `These straps of ${name} were neither read nor seen, so that a change there has not shown: ${unread.join(', ')}.`
  return [...wrap(text, page.width), '']
}

function strapLines({ straps, finds }: IdentifyAnswer, page: Page): string[] {
  const { groups, apart, contacts, against } = straps
  if (finds !== 'unknown' || groups.length + apart.length + contacts.length + against.length === 0) return []
  const pairs = (all: readonly (readonly [string, string])[]): string =>
    all.map((one) => one.join('–')).join(', ')
  const row = (label: string, text: string): string[] =>
    text === '' ? [] : hanging(`  ${label.padEnd(12)}`, text, page.width)
  return [
    page.paint.bold('Straps that the readings imply'),
    ...row('joined', groups.map((group) => group.join('–')).join('; ')),
    ...row('not joined', pairs(apart)),
    ...row('a contact', pairs(contacts)),
    ...row(
      'disagree',
      against.length === 0 ? '' : `${pairs(against)}: read apart, though others join them; read again`,
    ),
    ...hanging(
      '  ',
      'What is joined in the one condition that was read may be a strap or a closed contact: read it with the handset up and the dial off normal too.',
      page.width,
    ),
    '',
  ]
}

function nextLines({ next }: IdentifyAnswer, page: Page): string[] {
  if (next === undefined) return []
  return [
    page.paint.bold('Next'),
    ...wrap(asksText(next), page.width - 2).map((line) => `  ${line}`),
    ...wrap(howText(next), page.width - 2).map((line) => `  ${line}`),
    ...outcomeLines(next, page),
    '',
  ]
}
