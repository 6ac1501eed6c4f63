/** The answer to `identify` as text: what it is, how sure, why, and what to find out next. */
import type { IdentifiedGroup, IdentifyAnswer, IdentifyNext } from '../answer/identify-answer.ts'
import { heading } from './heading.ts'
import { howText, outcomeText, saidText, shareText, whereText } from './identify-words.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
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
    '',
    ...verdictLines(answer, page),
    ...groupLines(answer, page),
    ...findingLines(answer, page),
    ...hiddenLines(answer, page),
    ...differenceLines(answer, page),
    ...unreadLines(answer, page),
    ...strapLines(answer, page),
    ...nextLines(answer, page),
    `${counted(answer.compared, 'known set')} compared, each state of a slot counted for itself`,
  ]
}

const namesOf = ({ sets }: IdentifiedGroup): string => sets.map(({ name }) => name).join(', ')

/** What it is, in a sentence or two. */
export function identifyVerdict({ finds, groups, sure, unknown, findings }: IdentifyAnswer): string {
  const [lead] = groups
  if (finds === 'unknown') {
    const like = unknown.like === undefined ? '' : ` It is most like ${unknown.like}.`
    return `UNKNOWN SET: it is in none of the sheets, ${sure} (${shareText(unknown.probability)}).${unknown.changed > unknown.foreign ? like : ''}`
  }
  if (lead === undefined || findings.length === 0) return 'Nothing is found yet.'
  const names = namesOf(lead)
  const alike = lead.sets.length > 1 ? ' Nothing that may be asked tells these apart.' : ''
  if (finds === 'one') return `${names}: ${sure} (${shareText(lead.probability)}).${alike}`
  if (finds === 'like-one') {
    const changed = `that somebody changed it in a place that was not read is still possible (${shareText(unknown.probability)})`
    return `Of the known sets it is ${names}; ${changed}.${alike}`
  }
  return `Not told yet. First ${names}, ${sure} (${shareText(lead.probability)}).${alike}`
}

function verdictLines(answer: IdentifyAnswer, page: Page): string[] {
  return [...wrap(identifyVerdict(answer), page.width).map((line) => page.paint.bold(line)), '']
}

function groupLines({ groups, unknown }: IdentifyAnswer, page: Page): string[] {
  const shown = groups.slice(0, SHOWN).filter(({ probability }, k) => k === 0 || probability >= LEAST)
  const left = groups.length - shown.length
  const rows = [
    ...shown.map((group) => [shareText(group.probability), namesOf(group)]),
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

const DIFFERS = [{ heading: 'what' }, { heading: '' }, { heading: '' }]

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
    page.paint.bold(`What the sheets of this group differ in, and nothing that may be asked shows`),
    ...table(
      [{ heading: 'what' }, { heading: lead.sets[0]?.name ?? '' }, { heading: 'other' }, { heading: '' }],
      lead.hidden.map(({ set, what, first, other }) => [what, first, other, `in ${set}`]),
      page,
    ),
    '',
  ]
}

function differenceLines({ differences, groups, findings, finds }: IdentifyAnswer, page: Page): string[] {
  const [first, next] = groups
  if (findings.length === 0 || finds === 'unknown' || next === undefined || next.probability < LEAST)
    return []
  const heads = [DIFFERS[0], first, next].map((one) =>
    one !== undefined && 'sets' in one ? { heading: one.sets[0]?.name ?? '' } : { heading: 'what' },
  )
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

/** So many names of an outcome are written out. */
const NAMED = 4

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

function outcomeLines({ outcomes }: IdentifyNext, page: Page): string[] {
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
function asksText({ again, asks }: IdentifyNext): string {
  return again ? `${asks} Read it once more: what was read does not fit.` : asks
}

/** The next question as it is asked in a dialogue, its last line ended. */
export function identifyQuestion(next: IdentifyNext, page: Page): string {
  const about =
    next.ask === 'sighting'
      ? `(${next.answers.join(', ')})`
      : `${whereText(next)} (ohms, \`open\` or \`no such terminal\`)`
  const lines = [
    ...wrap(asksText(next), page.width).map((line) => page.paint.bold(line)),
    ...outcomeLines(next, page),
    ...wrap(about, page.width),
  ]
  return `${lines.join('\n')}\n`
}
