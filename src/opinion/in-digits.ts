/**
 * The tableau solved in as many digits as are asked for. mathjs has no complex numbers of many digits, so that
 * alternating current is the real system of twice the size. Its own elimination is for full matrices, which would
 * take hours here; the order of elimination is ours, every operation on a number is mathjs's.
 */
import type { Big } from './big.ts'
import type { Digits } from './digits.ts'
import { eliminate, type RealRow } from './eliminate.ts'
import type { Solved } from './in-doubles.ts'
import type { Tableau } from './tableau.ts'

/** What came out, and how far it is to be believed. */
export interface Exact extends Solved {
  /** The largest correction that a second pass asks for, as a share of what it corrects. */
  readonly doubt: number
}

/** Solves a tableau; `complex` doubles it. undefined where the matrix is singular. */
export function solveInDigits(tableau: Tableau, digits: Digits, complex: boolean): Exact | undefined {
  const rows = complex ? doubled(tableau) : tableau.rows.map(plainRow)
  const solved = eliminate(rows, digits)
  if (solved === undefined) return undefined
  const { x, rounding, doubt } = solved
  const nil = digits.of(0)
  const at = (k: number): Big => x[k] ?? nil
  const order = tableau.rows.length
  return {
    x: tableau.rows.map((_, k) => (complex ? { re: at(k), im: at(order + k) } : { re: at(k), im: nil })),
    rounding: tableau.rows.map((_, k) => Math.hypot(rounding[k] ?? 0, rounding[order + k] ?? 0)),
    doubt,
  }
}

function plainRow({ terms, right }: Tableau['rows'][number]): RealRow {
  return { terms: new Map([...terms].map(([column, { re }]) => [column, re])), right: right.re }
}

/** (A + jB)(x + jy) = c + jd as A·x − B·y = c and B·x + A·y = d. */
function doubled({ rows }: Tableau): RealRow[] {
  const order = rows.length
  const upper: RealRow[] = []
  const lower: RealRow[] = []
  for (const { terms, right } of rows) {
    const above = new Map<number, Big>()
    const below = new Map<number, Big>()
    for (const [column, { re, im }] of terms) {
      if (!re.isZero()) {
        above.set(column, re)
        below.set(order + column, re)
      }
      if (!im.isZero()) {
        above.set(order + column, im.neg())
        below.set(column, im)
      }
    }
    upper.push({ terms: above, right: right.re })
    lower.push({ terms: below, right: right.im })
  }
  return [...upper, ...lower]
}
