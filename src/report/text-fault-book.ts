/** The fault book as text: faults by what a person notices of them, each with the readings that tell it. */
import type { FaultRow, FaultsAnswer, Notice, PairsAnswer, Shown, Telling } from '../answer/faults-answer.ts'
import { formatQuantity } from '../quantities/format.ts'
import { heading } from './heading.ts'
import type { Page } from './paint.ts'
import { shortId, subjectText } from './place-names.ts'
import { type Column, table } from './table.ts'
import { counted, STATE_WORDS } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Faults in groups of what is noticed, those that move nothing, pairs, and how many of all. */
export function faultsText(answer: FaultsAnswer, page: Page): string[] {
  const { cautions, sound } = answer
  return [
    ...heading({ ...answer, request: shownRequest(answer) }, page),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    ...(cautions.length === 0 ? [] : ['']),
    ...(sound.length === 0
      ? []
      : [
          ...hanging(
            'With nothing wrong: ',
            `${noticeText(sound)}; that is no fault of the set.`,
            page.width,
          ),
          '',
        ]),
    ...groupsOf(answer.faults).flatMap((rows) => groupLines(rows, answer, page)),
    ...stillLines(answer, page),
    ...pairLines(answer, page),
    ...countLines(answer, page),
  ]
}

/** The symptoms stand in the heading as they were asked for. */
function shownRequest({ request }: FaultsAnswer): FaultsAnswer['request'] {
  const { symptoms, ...rest } = request
  return Array.isArray(symptoms) ? { ...rest, symptom: symptoms.join(', ') } : rest
}

/** `Does the bell ring? it is silent`. */
function noticeText(notices: readonly Notice[]): string {
  return notices.map(({ asks, says }) => `${asks} ${says}`).join('; ')
}

/** Faults of which a person notices the same, in the order in which they come up; those of which nothing is last. */
function groupsOf(rows: readonly FaultRow[]): readonly (readonly FaultRow[])[] {
  const groups = new Map<string, FaultRow[]>()
  for (const row of rows) {
    const key = noticeText(row.notices)
    groups.set(key, [...(groups.get(key) ?? []), row])
  }
  const quiet = groups.get('')
  groups.delete('')
  return quiet === undefined ? [...groups.values()] : [...groups.values(), quiet]
}

const HEADS: readonly Column[] = [
  { heading: 'fault' },
  { heading: 'told by' },
  { heading: 'sound', align: 'right' },
  { heading: 'faulty', align: 'right' },
]

function groupLines(rows: readonly FaultRow[], { place }: FaultsAnswer, page: Page): string[] {
  const notices = rows[0]?.notices ?? []
  const title =
    notices.length === 0
      ? ['Nothing is noticed; readings alone tell']
      : notices.map((one) => noticeText([one]))
  const cells = rows.flatMap((row) => rowsOf(row, place))
  return [
    ...title.flatMap((line) => wrap(line, page.width).map((one) => page.paint.bold(one))),
    ...table(HEADS, cells, page),
    '',
  ]
}

/** A fault's line, and one more for its second reading. */
function rowsOf({ says, tells }: FaultRow, place: string): readonly (readonly string[])[] {
  const [first, ...others] = tells
  const name = subjectText(says, place)
  if (first === undefined) return [[name, 'no reading', '', '']]
  return [[name, ...cellsOf(first, place)], ...others.map((one) => ['', ...cellsOf(one, place)])]
}

function cellsOf(one: Telling, place: string): readonly string[] {
  const live = one.live ? ' (live)' : ''
  return [subjectText(one.test, place) + live, shownText(one.sound, one), shownText(one.faulty, one)]
}

function shownText({ value, state }: Shown, { unit, resolution }: Telling): string {
  if (value === null) return state === undefined ? '–' : STATE_WORDS[state]
  // what is less than the last digit is none
  return formatQuantity(Math.abs(value) < resolution / 2 ? 0 : value, unit)
}

/** Faults that nobody can tell from the sound set. */
function stillLines({ 'moving nothing': still, place }: FaultsAnswer, page: Page): string[] {
  if (still.length === 0) return []
  return [
    page.paint.bold('Nothing here tells these; what may be seen or heard'),
    ...still.flatMap(({ says, sign }) => hanging('  ', `${subjectText(says, place)}: ${sign}`, page.width)),
    '',
  ]
}

/** So many pairs are printed; JSON holds more. */
const FEW = 20

function pairLines({ pairs, place }: FaultsAnswer, page: Page): string[] {
  if (pairs === undefined) return []
  const shown = pairs.likeliest.slice(0, FEW)
  const rows = shown.map(({ says, notices }) => [
    says.map((one) => subjectText(one, place)).join(' and '),
    notices.length === 0
      ? 'nothing'
      : notices.map((one) => `${shortId(one.test, place)} ${one.answer}`).join(', '),
  ])
  const heads = [{ heading: 'two faults at once' }, { heading: 'noticed' }]
  return [
    ...wrap(pairsTitle(pairs), page.width).map((line) => page.paint.bold(line)),
    ...(rows.length === 0 ? ['  none'] : table(heads, rows, page)),
    '',
  ]
}

function pairsTitle({ count, matching, 'only together': together, likeliest }: PairsAnswer): string {
  const few =
    likeliest.length === 0 ? '' : likeliest.length > FEW ? `; the likeliest ${FEW} of these` : '; these'
  const shown = matching === count ? '' : `, ${matching} with what was asked for`
  const alone = together === matching ? '' : `, ${together} of which neither fault does it alone`
  return `Two faults at once: ${counted(count, 'pair')}${shown}${alone}${few}`
}

function countLines({ counts }: FaultsAnswer, page: Page): string[] {
  const { faults, matching, symptoms, readings } = counts
  const asked = matching === faults ? '' : `, ${matching} of them with what was asked for`
  const still = counts['moving nothing']
  const silent = still === 0 ? '' : `, ${still} that nothing here tells`
  return wrap(
    `${counted(faults, 'fault')}${asked}${silent}; ${counted(symptoms, 'symptom')} and ${counted(readings, 'reading')} looked at`,
    page.width,
  )
}
