/** The answer to `meter` as text: one reading with its explanation, or the table of a set. */
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { MeterReading } from '../meter/reading.ts'
import type { Spread } from '../meter/spread.ts'
import { formatQuantity } from '../quantities/format.ts'
import { heading } from './heading.ts'
import { bandText, type Display } from './meter-display.ts'
import { kickText, readingText, wayText } from './meter-words.ts'
import { numbersBehind } from './numbers-behind.ts'
import type { Page } from './paint.ts'
import { pathText, shortId } from './place-names.ts'
import { blindLines, currentsText, legendLines } from './text-meter-legend.ts'
import { shortLines, shortReadings } from './text-meter-short.ts'
import { cordLines, markingLines, pageLines, pointLines } from './text-meter-table.ts'
import { approximations } from './text-verdicts.ts'
import { conditionWords, counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

const LEADS = {
  positive: 'On ohms its red lead is positive.',
  negative: 'On ohms its red lead is the negative one: the battery stands the other way round.',
} as const

/** Less than this through the leads is what rounding leaves of nothing, A. */
const LEAST_CURRENT = 1e-12

/** One reading in full, or a table by conditions; what it does not show and the approximations at its end. */
export function meterText(answer: MeterAnswer, page: Page): string[] {
  const { instrument, cautions } = answer
  const leads = answer.readings.some(({ live }) => live) ? '' : ` ${LEADS[instrument['red lead']]}`
  const about = `${instrument.name}: ${instrument.says}.${leads}`
  return [
    ...heading({ ...answer, request: shownRequest(answer) }, page),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    '',
    ...wrap(about, page.width),
    '',
    ...(answer.what === 'one'
      ? answer.readings.flatMap((one) => oneLines(one, answer, page))
      : tableLines(answer, page)),
    ...approximations(
      answer.readings.flatMap(({ approximate }) => (approximate === undefined ? [] : [approximate])),
      page,
    ),
    counted(isShort(answer) ? printed(answer).length : answer.readings.length, 'reading'),
  ]
}

/** What stands with the reading already is left out. */
function shownRequest({ request }: MeterAnswer): MeterAnswer['request'] {
  const { meter, on } = request
  return { meter, on }
}

function oneLines(reading: MeterReading, { place }: MeterAnswer, page: Page): string[] {
  const { band, spread, value, condition, peak } = reading
  const row = (label: string, text: string | undefined): string[] =>
    text === undefined || text === '' ? [] : hanging(`  ${label.padEnd(13)}`, text, page.width)
  const name = (id: string): string => shortId(id, place)
  return [
    page.paint.bold(`${readingText(reading)}${buzz(reading)}`),
    ...row('red', name(reading.red) + numbersBehind(reading.red, page)),
    ...row('black', name(reading.black) + numbersBehind(reading.black, page)),
    ...row('with', conditionWords(condition)),
    ...row('range', reading.range),
    ...row('within', band && `${bandText(band, reading)}, parts and instrument within their tolerances`),
    ...row('parts alone', spread && spreadText(spread, reading)),
    ...row('top', peakText(peak)),
    ...row('through', wayText(reading, place)),
    ...row('path', pathText(reading.path, place, page)),
    ...row(
      'current',
      value === null || Math.abs(reading.current) < LEAST_CURRENT
        ? undefined
        : `${formatQuantity(reading.current, 'A')} through the leads`,
    ),
    ...row('needle', kickText(reading)),
    ...row('ear', earText(reading, name)),
    ...reading.remarks.flatMap((one) => row('remark', one)),
    ...reading.blind.flatMap(({ branch, says, current }) =>
      row('not shown', `${name(branch)}: ${says}${currentsText(current === undefined ? [] : [current])}`),
    ),
    '',
  ]
}

function spreadText({ interval, worst, exact }: Spread, reading: MeterReading): string {
  if (interval.least === interval.most) return 'no part on the way has a stated tolerance'
  const ends = exact ? 'with every part at its end' : 'with every part at the end that counts'
  return `${bandText(interval, ownOf(reading))} ${ends}, ${bandText(worst, ownOf(reading))} by the sum of what each does alone`
}

/** What the parts alone do is not tied to the instrument's last digit. */
function ownOf({ value, unit, 'full scale': full }: MeterReading): Display {
  return { value, unit, 'full scale': full }
}

/** `156 V between the points, 156 V to earth`. */
function peakText(peak: MeterReading['peak']): string | undefined {
  if (peak === undefined) return undefined
  const { between, 'to earth': toEarth } = peak
  return [
    ...(between === undefined ? [] : [`${formatQuantity(between, 'V')} between the points`]),
    ...(toEarth === undefined ? [] : [`${formatQuantity(toEarth, 'V')} to earth`]),
  ].join(', ')
}

function buzz({ buzzes }: MeterReading): string {
  return buzzes === undefined ? '' : buzzes ? ', buzzes' : ', silent'
}

function earText({ heard }: MeterReading, name: (id: string) => string): string | undefined {
  if (heard.length === 0) return undefined
  return heard
    .map(({ branch, current, says }) => {
      const amps = formatQuantity(current, 'A', 2)
      return says === 'click'
        ? `a click in ${name(branch)} as the leads touch and leave (${amps})`
        : `the reading wavers while ${name(branch)} is blown into or tapped (${amps})`
    })
    .join('; ')
}

/** Where a restorer notes when, and on which set, he read what stands in the column `yours`. */
const NOTED = 'Date ____________   Mark of the set ____________'

function tableLines(answer: MeterAnswer, page: Page): string[] {
  const ends = [...legendLines(printed(answer), page), ...blindLines(answer, page)]
  if (isShort(answer)) return [NOTED, '', ...shortLines(answer, page), ...ends]
  return [
    NOTED,
    '',
    ...pointLines(answer, page),
    ...pageLines(answer, page),
    ...answer.cords.flatMap((cord) => cordLines(cord, answer.place, page)),
    ...markingLines(answer, page),
    ...ends,
  ]
}

/** A live table is short as it is. */
function isShort({ request, what }: MeterAnswer): boolean {
  return request.short === true && what === 'table'
}

/** The readings that the text shows. */
function printed(answer: MeterAnswer): readonly MeterReading[] {
  if (isShort(answer)) return shortReadings(answer)
  return [...answer.readings, ...answer.cords.flatMap(({ readings }) => readings)]
}
