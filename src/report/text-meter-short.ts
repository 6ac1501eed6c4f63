/** A meter's table for one page of print: the cores of each cord, handset down and up, and what they tell. */
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { CordTable } from '../meter/cords.ts'
import type { MeterReading } from '../meter/reading.ts'
import { bandText } from './meter-display.ts'
import { readingText, shortKick } from './meter-words.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { plugLine } from './plug-text.ts'
import { type Column, table } from './table.ts'
import { BLANK, misreadWord, rangeWord, toldLines } from './text-meter-table.ts'
import { conditionWords } from './words.ts'
import { hanging } from './wrap.ts'

/** Each cord by itself: a row for each pair of its cores and each condition that reads otherwise. */
export function shortLines(answer: MeterAnswer, page: Page): string[] {
  return answer.cords.flatMap((cord) => cordPage(cord, answer, page))
}

/** The readings that stand on the short page. */
export function shortReadings(answer: MeterAnswer): readonly MeterReading[] {
  return answer.cords.flatMap((cord) =>
    cord.readings.flatMap((reading) => [reading, ...besideOhms(reading, cord, answer)]),
  )
}

const HEADS: readonly Column[] = [
  { heading: 'between' },
  { heading: 'handset' },
  { heading: 'reads', align: 'right' },
  { heading: 'within' },
  { heading: 'yours' },
  { heading: '' },
]

function cordPage(cord: CordTable, answer: MeterAnswer, page: Page): string[] {
  const where = cord.loose ? 'cores off their terminals' : 'at its plug'
  const open: string[] = []
  const rows = [...new Set(cord.readings.map(keyOf))].flatMap((pair) => {
    const mine = cord.readings
      .filter((one) => keyOf(one) === pair)
      .map((ohms) => [ohms, ...besideOhms(ohms, cord, answer)])
    const [first = []] = mine
    const [ohms] = first
    if (ohms === undefined) return []
    const name = between(ohms, answer.place)
    if (mine.every((all) => all.length === 1 && all[0]?.state === 'open' && all[0].kick === undefined)) {
      open.push(name)
      return []
    }
    const distinct = mine.filter((all, k) => k === 0 || textOf(all) !== textOf(first))
    return distinct.flatMap((all) =>
      all.map((reading, k) => {
        const hook = cord.loose ? 'either' : distinct.length === 1 ? 'down, up' : hookWord(reading)
        return rowOf(reading, answer.place, k === 0 ? hook : '')
      }),
    )
  })
  const always = cord.loose ? '  open: ' : '  open, handset down and up: '
  return [
    page.paint.bold(`Cord ${cord.cord}, ${where}`),
    ...(cord.loose ? [] : plugLine(cord.cores, answer.place, page)),
    ...table(HEADS, rows, page),
    ...(open.length === 0 ? [] : hanging(always, open.join(', '), page.width)),
    ...toldLines(cord, page),
    '',
  ]
}

function rowOf(reading: MeterReading, place: string, hook: string): string[] {
  const notes = [rangeWord(reading), ...sounds(reading), shortKick(reading) ?? '', ...misreadWord(reading)]
  return [
    between(reading, place),
    hook,
    readingText(reading),
    reading.band === undefined ? '' : bandText(reading.band, reading),
    BLANK,
    notes.filter((one) => one !== '').join(', '),
  ]
}

const keyOf = ({ red, black }: MeterReading): string => `${red} ${black}`
const textOf = (all: readonly MeterReading[]): string =>
  all.map((one) => `${keyOf(one)} ${readingText(one)}`).join()

function between({ red, black }: MeterReading, place: string): string {
  const core = (id: string): string => {
    const short = shortId(id, place)
    return short.slice(short.indexOf('.') + 1)
  }
  return `${core(red)} – ${core(black)}`
}

function hookWord({ condition }: MeterReading): string {
  return conditionWords(condition).replace(/^handset /, '')
}

function sounds({ heard }: MeterReading): string[] {
  return [...new Set(heard.map(({ says, loud }) => (loud === true ? `${says}, not at the ear` : says)))]
}

/** What other ranges show between the same two cores; of a cord off its terminals the table knows nothing more. */
function besideOhms(
  ohms: MeterReading,
  { loose }: CordTable,
  { readings }: MeterAnswer,
): readonly MeterReading[] {
  if (loose) return []
  const words = conditionWords(ohms.condition)
  const ends = [ohms.red, ohms.black]
  return readings.filter(
    ({ id, value, red, black, condition }) =>
      id !== 'meter.ohms' &&
      value !== null &&
      ends.includes(red) &&
      ends.includes(black) &&
      conditionWords(condition) === words,
  )
}
