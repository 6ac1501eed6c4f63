/** What is judged of the line as a whole: the worst of each check, with its limit. */
import type { Verdict } from '../checks/rule.ts'
import { placeAbout } from './about-place.ts'
import { figureName, figureText, limitAmount } from './amounts.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { stateWord } from './text-verdicts.ts'

const GRAVITY: readonly Verdict['state'][] = ['fails', 'marginal', 'unknown', 'holds']

/** A row for each check of the line that has a figure. */
export function lineTable(verdicts: readonly Verdict[], places: readonly string[], page: Page): string[] {
  const judged = verdicts.filter(
    (one) => one.figure !== null && (one.check.startsWith('line.') || placeAbout(one, places) === undefined),
  )
  const checks = [...new Set(judged.map(({ check }) => check))]
  const rows = checks.flatMap((check) => {
    const worst = worstOf(judged.filter((one) => one.check === check))
    if (worst === undefined || worst.figure === null) return []
    const place = placeAbout(worst, places)
    const name = figureName(worst.figure)
    const limit = worst.limit === null ? 'no limit' : limitAmount(worst.limit)
    const of = place === undefined ? name : `${name}, ${place}`
    return [[check, stateWord(worst.state), figureText(worst.figure), limit, of]]
  })
  if (rows.length === 0) return []
  const heads = [
    { heading: 'check' },
    { heading: '' },
    { heading: 'worst', align: 'right' },
    { heading: 'limit' },
    { heading: 'of what' },
  ] as const
  return [page.paint.bold('The line'), ...table(heads, rows, page), '']
}

/** The gravest, and of those the one with the least margin. */
function worstOf(all: readonly Verdict[]): Verdict | undefined {
  const order = ({ state, margin }: Verdict): readonly [number, number] => [
    GRAVITY.indexOf(state),
    margin ?? Number.POSITIVE_INFINITY,
  ]
  return [...all].sort((p, q) => {
    const [mine, its] = [order(p), order(q)]
    return mine[0] - its[0] || (mine[1] === its[1] ? 0 : mine[1] - its[1])
  })[0]
}
