/** The faults of a book under what a person notices of them, short or whole. */
import type { FaultRow, FaultsAnswer } from '../answer/faults-answer.ts'
import { namesText } from './fault-book-names.ts'
import { leading, leadingText, type NoticedGroup, noticedGroups, noticeText } from './fault-book-notices.ts'
import { readingText, shownText } from './fault-book-readings.ts'
import type { Page } from './paint.ts'
import { subjectText } from './place-names.ts'
import { type Column, table } from './table.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/**
 * All groups, the largest first. Of faults that nobody notices the short form gives the names alone where there are
 * others: nobody comes to the bench with them.
 */
export function groupsLines({ faults, place, request }: FaultsAnswer, page: Page): string[] {
  const isWhole = request.whole === true
  const groups = noticedGroups(faults, isWhole ? (all) => all : leading)
  return groups.flatMap((group) => {
    const isBrief = !isWhole && group.notices.length === 0 && groups.length > 1
    const lines = isBrief ? briefLines : isWhole ? wholeLines : shortLines
    return [...titleLines(group, isWhole, isBrief, page), ...lines(group, place, page), '']
  })
}

function titleLines(
  { notices, rows }: NoticedGroup,
  isWhole: boolean,
  isBrief: boolean,
  page: Page,
): string[] {
  const count = ` (${counted(rows.length, 'fault')})${isBrief ? '; --whole says which' : ''}`
  const told =
    notices.length === 0
      ? ['Nothing is noticed; readings alone tell']
      : isWhole
        ? notices.map((one) => noticeText([one]))
        : [leadingText(notices)]
  return told.flatMap((text, k) =>
    wrap(text + (k === told.length - 1 ? count : ''), page.width).map((line) => page.paint.bold(line)),
  )
}

function briefLines({ rows }: NoticedGroup, place: string, page: Page): string[] {
  return paragraph(namesText(rows.map(({ says }) => subjectText(says, place))), page)
}

/** Faults of one reading, by what it shows then. */
interface ReadAlike {
  readonly text: string
  readonly sound: string
  /** What it shows, and the faults with which it does. */
  readonly shown: Map<string, string[]>
}

/** One paragraph a reading: what it shows of the sound set, then what with which faults. */
function shortLines({ rows }: NoticedGroup, place: string, page: Page): string[] {
  const { alike, unread } = readAlike(rows, place)
  const none = unread.length === 0 ? [] : paragraph(`no reading tells: ${namesText(unread)}`, page)
  return [
    ...alike.flatMap(({ text, sound, shown }) => {
      const values = [...shown].map(([value, names]) => `${value}: ${namesText(names)}`)
      return paragraph(`${text}, not ${sound} but ${values.join(' | ')}`, page)
    }),
    ...none,
  ]
}

/** Indented, and further from its second line on. */
function paragraph(text: string, page: Page): string[] {
  return wrap(text, page.width - 4).map((line, k) => (k === 0 ? '  ' : '    ') + line)
}

function readAlike(
  rows: readonly FaultRow[],
  place: string,
): { readonly alike: readonly ReadAlike[]; readonly unread: readonly string[] } {
  const alike = new Map<string, ReadAlike>()
  const unread: string[] = []
  for (const { says, tells } of rows) {
    const name = subjectText(says, place)
    const [best] = tells
    if (best === undefined) {
      unread.push(name)
      continue
    }
    const one = alike.get(best.test) ?? {
      text: readingText(best, place),
      sound: shownText(best.sound, best),
      shown: new Map<string, string[]>(),
    }
    const value = shownText(best.faulty, best)
    one.shown.set(value, [...(one.shown.get(value) ?? []), name])
    alike.set(best.test, one)
  }
  return { alike: [...alike.values()], unread }
}

const HEADS: readonly Column[] = [
  { heading: 'fault' },
  { heading: 'told by' },
  { heading: 'sound', align: 'right' },
  { heading: 'faulty', align: 'right' },
]

function wholeLines({ rows }: NoticedGroup, place: string, page: Page): string[] {
  return table(
    HEADS,
    rows.flatMap((row) => rowsOf(row, place)),
    page,
  )
}

/** A fault's line, and one more for its second reading. */
function rowsOf({ says, tells }: FaultRow, place: string): readonly (readonly string[])[] {
  const name = subjectText(says, place)
  if (tells.length === 0) return [[name, 'no reading', '', '']]
  return tells.map((one, k) => [
    k === 0 ? name : '',
    readingText(one, place),
    shownText(one.sound, one),
    shownText(one.faulty, one),
  ])
}

/** Faults that nobody can tell from the sound set; their signs in the long form alone. */
export function stillLines({ 'moving nothing': still, place, request }: FaultsAnswer, page: Page): string[] {
  if (still.length === 0) return []
  const name = ({ says }: FaultRow): string => subjectText(says, place)
  const isWhole = request.whole === true
  const title = isWhole
    ? 'Nothing here tells these; what may be seen or heard'
    : `Nothing here tells these (${counted(still.length, 'fault')}); --whole says what may be seen or heard`
  return [
    ...wrap(title, page.width).map((line) => page.paint.bold(line)),
    ...(isWhole
      ? still.flatMap((row) => hanging('  ', `${name(row)}: ${row.sign}`, page.width))
      : paragraph(namesText(still.map(name)), page)),
    '',
  ]
}
