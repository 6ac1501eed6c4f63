/** The answer to `list` as text. */
import type { ListAnswer } from '../answer/answer.ts'
import type { FigureUnit } from '../figures/figure.ts'
import { formatExactly } from '../quantities/format.ts'
import { SIDES } from './amounts.ts'
import type { Page } from './paint.ts'
import { AMBIGUOUS } from './plug-text.ts'
import { table } from './table.ts'
import { counted, GRADE_WORDS } from './words.ts'
import { columns, hanging, wrap } from './wrap.ts'

type Row = ListAnswer['rows'][number]
type Cell = Row[string] | undefined

const GRADES: Readonly<Record<string, string>> = GRADE_WORDS
const UNITS: ReadonlySet<Cell> = new Set<FigureUnit>(['Ω', 'A', 'V', '1', 'dB', 'VA'])

/** A value with its unit in one cell; a grade in words. */
function readable(row: Row): Row {
  const { value, unit, grade } = row
  const entries = Object.entries(row).flatMap(([key, one]): [string, Cell][] => {
    if (key === 'grade' && typeof grade === 'string')
      return [[key, Object.hasOwn(GRADES, grade) ? GRADES[grade] : grade]]
    if (key === 'side' && (one === 'at-most' || one === 'at-least')) return [[key, SIDES[one]]]
    if (typeof value !== 'number' || !UNITS.has(unit)) return [[key, one]]
    if (key === 'value') return [[key, formatExactly(value, unit as FigureUnit)]]
    return key === 'unit' ? [] : [[key, one]]
  })
  return Object.fromEntries(entries.map(([key, one]) => [key, one ?? null]))
}

function cell(value: Cell): string {
  if (value === null || value === undefined) return ''
  return typeof value === 'number' ? formatExactly(value, '1') : value
}

/** One of them and several have the same name. */
const ALIKE = 'premises'

/** What a list wants said below it. */
const NOTES: Readonly<Record<string, string>> = { 'plug-contacts': AMBIGUOUS }

/** Columns of which a table of more than this many is given up where its page is too narrow for it. */
const MOST_COLUMNS = 4

function isCramped(keys: readonly string[], rows: readonly (readonly string[])[], page: Page): boolean {
  if (keys.length <= MOST_COLUMNS) return false
  const widths = keys.map((key, at) => Math.max(columns(key), ...rows.map((row) => columns(row[at] ?? ''))))
  return widths.reduce((sum, width) => sum + width + 2, -2) > page.width
}

/** A thing in lines of its own: its name with what is short beside it, sentences below. */
function blocks(rows: readonly (readonly string[])[], page: Page): string[] {
  const short = rows[0]?.map((_, at) => rows.every((row) => columns(row[at] ?? '') <= SHORT)) ?? []
  return rows.flatMap((row, k) => {
    const [name = '', ...others] = row
    const beside = others.filter((one, at) => one !== '' && short[at + 1] === true)
    const below = new Set(others.filter((one, at) => one !== '' && short[at + 1] !== true))
    return [
      ...(k === 0 ? [] : ['']),
      ...hanging('', beside.length === 0 ? name : `${name}: ${beside.join(' ')}`, page.width),
      ...[...below].flatMap((one) => hanging('  ', one, page.width)),
    ]
  })
}

/** Cells of at most so many columns stand beside the name. */
const SHORT = 16

/** One row a thing, under the keys of the rows; how many on the last line. */
export function listText(answer: ListAnswer, page: Page): string[] {
  const { what } = answer
  const rows = answer.rows.map(readable)
  const keys = [...new Set(rows.flatMap((row) => Object.keys(row)))]
  const heads = keys.map((heading) => {
    const isNumber = answer.rows.every((row) => typeof row[heading] === 'number' || row[heading] == null)
    return { heading, align: isNumber ? 'right' : 'left' } as const
  })
  const cells = rows.map((row) => keys.map((key) => cell(row[key])))
  const body = isCramped(keys, cells, page) ? blocks(cells, page) : table(heads, cells, page, 0)
  const note = NOTES[what] === undefined ? [] : ['', ...wrap(NOTES[what], page.width)]
  const total =
    what === ALIKE
      ? `${rows.length} ${what}`
      : counted(rows.length, what.replace(/s$/, '').replaceAll('-', ' '))
  return rows.length === 0 ? [`no ${what} in reach`] : [...body, ...note, '', total]
}
