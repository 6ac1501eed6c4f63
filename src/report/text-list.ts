/** The answer to `list` as text. */
import type { ListAnswer } from '../answer/answer.ts'
import type { FigureUnit } from '../figures/figure.ts'
import { formatExactly } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { counted, GRADE_WORDS } from './words.ts'

type Row = ListAnswer['rows'][number]
type Cell = Row[string] | undefined

const GRADES: Readonly<Record<string, string>> = GRADE_WORDS
const UNITS: ReadonlySet<Cell> = new Set<FigureUnit>(['Ω', 'A', 'V', '1'])

/** A value with its unit in one cell; a grade in words. */
function readable(row: Row): Row {
  const { value, unit, grade } = row
  const entries = Object.entries(row).flatMap(([key, one]): [string, Cell][] => {
    if (key === 'grade' && typeof grade === 'string')
      return [[key, Object.hasOwn(GRADES, grade) ? GRADES[grade] : grade]]
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

/** One row a thing, under the keys of the rows; how many on the last line. */
export function listText(answer: ListAnswer, page: Page): string[] {
  const { what } = answer
  const rows = answer.rows.map(readable)
  const keys = [...new Set(rows.flatMap((row) => Object.keys(row)))]
  const heads = keys.map((heading) => {
    const isNumber = answer.rows.every((row) => typeof row[heading] === 'number' || row[heading] == null)
    return { heading, align: isNumber ? 'right' : 'left' } as const
  })
  const body = table(
    heads,
    rows.map((row) => keys.map((key) => cell(row[key]))),
    page,
    0,
  )
  const total = what === ALIKE ? `${rows.length} ${what}` : counted(rows.length, what.replace(/s$/, ''))
  return rows.length === 0 ? [`no ${what} in reach`] : [...body, '', total]
}
