import type { Page } from './paint.ts'
import { columns, wrap } from './wrap.ts'

/** Heading of a column, and where its cells stand. */
export interface Column {
  readonly heading: string
  readonly align?: 'left' | 'right'
}

const GAP = 2
const LEAST = 6

/** Widths that fit: the widest column gives way, one step at a time, until the row does; numbers only where words cannot. */
function fitting(natural: readonly number[], heads: readonly Column[], room: number): number[] {
  const widths = [...natural]
  const total = (): number => widths.reduce((sum, width) => sum + width, GAP * (widths.length - 1))
  for (const isGiving of [(at: number) => heads[at]?.align !== 'right', () => true]) {
    while (total() > room) {
      const widest = Math.max(...widths.filter((_, at) => isGiving(at)))
      if (widest <= LEAST) break
      const at = widths.findIndex((width, k) => width === widest && isGiving(k))
      widths[at] = widest - 1
    }
  }
  return widths
}

function pad(text: string, width: number, align: Column['align']): string {
  const blank = ' '.repeat(Math.max(0, width - columns(text)))
  return align === 'right' ? blank + text : text + blank
}

/**
 * Aligned columns under dim headings, cells wrapped so that no line is wider than the page.
 * Cells that a row lacks are empty.
 */
export function table(
  heads: readonly Column[],
  rows: readonly (readonly string[])[],
  page: Page,
  indent: number = 2,
): string[] {
  const cells = [heads.map(({ heading }) => heading), ...rows]
  const natural = heads.map((_, at) => Math.max(1, ...cells.map((row) => columns(row[at] ?? ''))))
  const widths = fitting(natural, heads, page.width - indent)
  const lines = cells.map((row) => {
    const broken = heads.map((_, at) => wrap(row[at] ?? '', widths[at] ?? 1))
    const tall = Math.max(...broken.map((cell) => cell.length))
    return Array.from({ length: tall }, (_, k) => {
      const line = broken.map((cell, at) => pad(cell[k] ?? '', widths[at] ?? 1, heads[at]?.align))
      return ' '.repeat(indent) + line.join(' '.repeat(GAP)).trimEnd()
    })
  })
  const [top = [], ...body] = lines
  return [...top.map((line) => page.paint.dim(line)), ...body.flat()]
}
