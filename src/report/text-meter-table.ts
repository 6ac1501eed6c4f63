/** The tables of a meter: its points, a page for each condition, and what tells the cores of a cord apart. */
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { CordTable } from '../meter/cords.ts'
import type { MeterReading } from '../meter/reading.ts'
import { formatQuantity } from '../quantities/format.ts'
import { bandText } from './meter-display.ts'
import { readingText, shortKick, wayText } from './meter-words.ts'
import { numbersBehind } from './numbers-behind.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { plugLine } from './plug-text.ts'
import { type Column, table } from './table.ts'
import { conditionWords } from './words.ts'
import { hanging } from './wrap.ts'

/** The points and what is always joined to each; terminals by themselves stand in one line. */
export function pointLines({ points, place, what }: MeterAnswer, page: Page): string[] {
  const named = points.map(({ ids, colours }) =>
    ids.map((id) => {
      const colour = colours[id] === undefined ? '' : ` (${colours[id]})`
      return shortId(id, place) + colour + numbersBehind(id, page)
    }),
  )
  if (what === 'live') {
    const all = `${named.flat().join(', ')}: the contacts of the plug, held at the socket; the set stays shut`
    return [...hanging('Points: ', all, page.width), '']
  }
  const rows = named
    .filter((ids, k) => ids.length > 1 || Object.keys(points[k]?.colours ?? {}).length > 0)
    .map(([first = '', ...others]) => [first, others.join(', ')])
  const alone = named.filter(
    (ids, k) => ids.length === 1 && Object.keys(points[k]?.colours ?? {}).length === 0,
  )
  const heads = [{ heading: 'point' }, { heading: 'always joined to it' }]
  return [
    page.paint.bold('Points'),
    ...(rows.length === 0 ? [] : table(heads, rows, page)),
    ...(alone.length === 0 ? [] : hanging('  by themselves: ', alone.flat().join(', '), page.width)),
    '',
  ]
}

/** Room for what a restorer's own instrument shows. */
export const BLANK = '______'

interface Cells {
  readonly head: Column
  readonly cell: (reading: MeterReading, place: string) => string
}

const COLUMNS: readonly Cells[] = [
  { head: { heading: 'red – black' }, cell: pairOf },
  { head: { heading: 'reads', align: 'right' }, cell: readingText },
  {
    head: { heading: 'within' },
    cell: (reading) => (reading.band === undefined ? '' : bandText(reading.band, reading)),
  },
  { head: { heading: 'yours' }, cell: () => BLANK },
  { head: { heading: 'its top', align: 'right' }, cell: ({ peak }) => topText(peak?.between) },
  { head: { heading: 'top to earth', align: 'right' }, cell: ({ peak }) => topText(peak?.['to earth']) },
  {
    head: { heading: 'through' },
    cell: (reading, place) =>
      [rangeWord(reading), wayText(reading, place), shortKick(reading), ...notes(reading)]
        .filter((one) => one)
        .join('; '),
  },
]

function topText(volts: number | undefined): string {
  return volts === undefined ? '' : formatQuantity(volts, 'V')
}

/** The column of ohms holds what other ranges show as well. */
export function rangeWord({ id }: MeterReading): string {
  return id === 'meter.diode' ? 'diode range' : ''
}

/** `plug.a – plug.b`, the red lead first. */
export function pairOf({ red, black }: MeterReading, place: string): string {
  return `${shortId(red, place)} – ${shortId(black, place)}`
}

/** A page for each condition. One with the dial off normal shows only what differs from the page before the dial. */
export function pageLines({ readings, place, what }: MeterAnswer, page: Page): string[] {
  const pages = new Map<string, MeterReading[]>()
  for (const reading of readings) {
    const words = conditionWords(reading.condition)
    pages.set(words, [...(pages.get(words) ?? []), reading])
  }
  let resting: readonly MeterReading[] = []
  let before = ''
  return [...pages].flatMap(([words, all]) => {
    const turning =
      what === 'table' && Object.values(all[0]?.condition.sets ?? {}).some(({ dial }) => dial !== 'rest')
    const shown = turning ? all.filter((reading) => isNew(reading, resting)) : all
    const title = words.charAt(0).toUpperCase() + words.slice(1)
    const rest = turning
      ? [
          `  ${shown.length === 0 ? `Nothing reads otherwise than on the page “${before}”` : `All else reads as on the page “${before}”`}.`,
        ]
      : []
    if (!turning) {
      resting = all
      before = title
    }
    return [page.paint.bold(title), ...bodyLines(shown, place, page), ...rest, '']
  })
}

function bodyLines(all: readonly MeterReading[], place: string, page: Page): string[] {
  const numbers = all.filter(({ value, kick }) => value !== null || kick !== undefined)
  const rows = numbers.map((reading) => COLUMNS.map(({ cell }) => cell(reading, place)))
  const filled = COLUMNS.map((_, k) => rows.some((row) => row[k] !== ''))
  const chosen = <T>(all: readonly T[]): readonly T[] => all.filter((_, k) => filled[k])
  const states = new Map<string, string[]>()
  for (const reading of all) {
    if (reading.value !== null || reading.kick !== undefined) continue
    const state = stateWords(reading, numbers)
    states.set(state, [...(states.get(state) ?? []), pairOf(reading, place)])
  }
  return [
    ...(rows.length === 0 ? [] : table(chosen(COLUMNS.map(({ head }) => head)), rows.map(chosen), page)),
    ...[...states].flatMap(([state, pairs]) => hanging(`  ${state}: `, pairs.join(', '), page.width)),
  ]
}

/** `open`; `open on ohms` where another range shows something between the same two points. */
function stateWords(reading: MeterReading, shown: readonly MeterReading[]): string {
  const words = readingText(reading)
  if (reading.id === 'meter.capacitance') return `capacitance ${words}`
  const ends = [reading.red, reading.black]
  const elsewhere =
    reading.id === 'meter.ohms' &&
    shown.some(({ id, red, black }) => id !== reading.id && ends.includes(red) && ends.includes(black))
  return elsewhere ? `${words} on ohms` : words
}

/** In a table a capacitance that is none is said in a word, and what no ear bears. */
function notes(reading: MeterReading): string[] {
  return [
    ...misreadWord(reading),
    ...(reading.heard.some(({ loud }) => loud === true) ? ['not at the ear'] : []),
  ]
}

/** A word for a capacitance that is not that of the part on its way alone. */
export function misreadWord({ id, remarks }: MeterReading): string[] {
  return id === 'meter.capacitance' && remarks.length > 0 ? ['misread'] : []
}

function isNew(reading: MeterReading, before: readonly MeterReading[]): boolean {
  const same = before.find(
    ({ id, red, black }) => id === reading.id && red === reading.red && black === reading.black,
  )
  return same === undefined || readingText(same) !== readingText(reading)
}

/** The readings that tell the cores of one cord apart, and what they leave alike. */
export function cordLines(cord: CordTable, place: string, page: Page): string[] {
  const where = cord.loose
    ? 'loose ends, off their terminals, through the handset'
    : 'at its plug, through the set'
  const conditions = [...new Set(cord.readings.map(({ condition }) => conditionWords(condition)))]
  const pairs = [...new Set(cord.readings.map((reading) => pairOf(reading, place)))]
  const rows = pairs.map((pair) => {
    const mine = cord.readings.filter((reading) => pairOf(reading, place) === pair)
    const sounds = new Set(mine.flatMap(({ heard }) => heard.map(({ says }) => says)))
    return [pair, ...mine.map(readingText), [...sounds].join(', ')]
  })
  const heads: Column[] = [
    { heading: 'between' },
    ...conditions.map((heading): Column => ({ heading, align: 'right' })),
    { heading: 'ear' },
  ]
  return [
    page.paint.bold(`Which core of the cord ${cord.cord} is which`),
    ...hanging('  ', `Read ${where}, whatever the colours say.`, page.width),
    ...(cord.loose ? [] : plugLine(cord.cores, place, page)),
    ...table(heads, rows, page),
    ...toldLines(cord, page),
    '',
  ]
}

/** Which cores the readings single out, and which they leave alike. */
export function toldLines({ groups }: CordTable, page: Page): string[] {
  const known = groups.filter((group) => group.length === 1).flat()
  const unknown = groups.filter((group) => group.length > 1)
  const core = (name: string): string => name.slice(name.indexOf('.') + 1)
  return [
    ...(known.length === 0 ? [] : hanging('  told: ', known.map(core).join(', '), page.width)),
    ...unknown.flatMap((group) =>
      hanging('  not told from each other: ', group.map(core).join(', '), page.width),
    ),
  ]
}

/** The resistors with their bands: what to look for, and what to buy. */
export function markingLines({ markings, place }: MeterAnswer, page: Page): string[] {
  if (markings.length === 0) return []
  const rows = markings.map(({ part, value, bands, preferred }) => [
    shortId(part, place),
    formatQuantity(value, 'Ω'),
    bands?.join(' ') ?? 'no tolerance, or more digits than bands tell',
    preferred === undefined ? '' : `nearest of E24: ${formatQuantity(preferred, 'Ω')}`,
  ])
  const heads: Column[] = [
    { heading: 'part' },
    { heading: 'value', align: 'right' },
    { heading: 'bands' },
    { heading: '' },
  ]
  const told = rows.some(([, , , note]) => note !== '')
  return [
    page.paint.bold('How its resistors are marked'),
    ...table(told ? heads : heads.slice(0, 3), told ? rows : rows.map((row) => row.slice(0, 3)), page),
    '',
  ]
}
