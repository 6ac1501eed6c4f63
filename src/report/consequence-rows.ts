/** What follows from a fault in several sets, a row for each figure. */
import type { Consequence } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { placesNamed, placesText } from './about-place.ts'
import { ABOUT, figureName, figureText } from './amounts.ts'
import type { Page } from './paint.ts'
import { type Column, table } from './table.ts'

/** Figures that differ by less than this share of the larger are one row. */
const ALIKE = 0.05

/** Each figure of several sets, those that are nearly alike from the least to the most, now and mended. */
export function consequenceRows(
  all: readonly Consequence[],
  places: readonly string[],
  page: Page,
  indent: number,
): string[] {
  if (all.length === 0) return []
  const clusters: Consequence[][] = []
  for (const one of all) {
    const own = clusters.find(([first]) => first !== undefined && isAlike(first, one))
    if (own === undefined) clusters.push([one])
    else own.push(one)
  }
  const rows = clusters.flatMap((some) => {
    const [first] = some
    if (first === undefined) return []
    const subjects = some.map(({ figure }) => figure.subject)
    const of = placesText(placesNamed(subjects, places), places) || [...new Set(subjects)].join(', ')
    const now = rangeText(some.map(({ figure }) => figure))
    return [[figureName(first.figure), of, now, rangeText(some.map(({ mended }) => mended))]]
  })
  const heads: Column[] = [
    { heading: 'what follows' },
    { heading: 'in' },
    { heading: 'now', align: 'right' },
    { heading: 'mended', align: 'right' },
  ]
  return table(heads, rows, page, indent)
}

function isAlike(p: Consequence, q: Consequence): boolean {
  if (figureName(p.figure) !== figureName(q.figure)) return false
  return isNear(p.figure, q.figure) && isNear(p.mended, q.mended)
}

function isNear(p: Figure | undefined, q: Figure | undefined): boolean {
  if (p === undefined || q === undefined) return p === q
  if (p.value === null || q.value === null) return p.value === q.value && p.state === q.state
  return Math.abs(p.value - q.value) <= ALIKE * Math.max(Math.abs(p.value), Math.abs(q.value))
}

/** One figure, or the least to the most of several. */
export function rangeText(all: readonly (Figure | undefined)[]): string {
  const figures = all.filter((one) => one !== undefined)
  const sorted = figures.toSorted((p, q) => (p.value ?? 0) - (q.value ?? 0)).map((one) => figureText(one))
  const [least, most] = [sorted[0], sorted.at(-1)]
  if (least === undefined || most === undefined) return '–'
  return least === most ? least : `${least} to ${most.replace(ABOUT, '')}`
}
