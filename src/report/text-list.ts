/** The answer to `list` as text. */
import type { ListAnswer } from '../answer/answer.ts'
import { formatExactly } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { counted } from './words.ts'

function cell(value: string | number | null | undefined): string {
  if (value === null || value === undefined) return ''
  return typeof value === 'number' ? formatExactly(value, '1') : value
}

/** One row a thing, under the keys of the rows; how many on the last line. */
export function listText({ what, rows }: ListAnswer, page: Page): string[] {
  const keys = [...new Set(rows.flatMap((row) => Object.keys(row)))]
  const heads = keys.map((heading) => {
    const isNumber = rows.every((row) => typeof row[heading] === 'number' || row[heading] == null)
    return { heading, align: isNumber ? 'right' : 'left' } as const
  })
  const body = table(
    heads,
    rows.map((row) => keys.map((key) => cell(row[key]))),
    page,
    0,
  )
  const total = counted(rows.length, what.replace(/s$/, ''))
  return rows.length === 0 ? [`no ${what} in reach`] : [...body, '', total]
}
