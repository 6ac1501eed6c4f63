/** Two handsets up at once: one row for each pair in place of a paragraph. */
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { formatNumber } from '../quantities/format.ts'
import { placeAbout, placesNamed, placesText } from './about-place.ts'
import { figureText } from './amounts.ts'
import type { Page } from './paint.ts'
import { type Column, table } from './table.ts'

/** The check whose verdicts are told in a table. */
export const PAIRS = 'speech.two-sets'

/** One pair, and what each of the two still gets. */
interface Pair {
  readonly place: string | undefined
  readonly other: string
  readonly mine?: Figure
  readonly its?: Figure
  readonly send: number | undefined
  readonly receive: number | undefined
  /** How far beyond the limit, as a share of it. */
  readonly short: number
}

/** Currents that differ by less than this share, and losses by less than half a decibel, are one row. */
const ALIKE = 0.05
const HALF_A_DECIBEL = 0.5

/** A row for each pair, alike ones together; what the columns are stands below. */
export function pairTable(verdicts: readonly Verdict[], places: readonly string[], page: Page): string[] {
  const rows: Pair[][] = []
  for (const verdict of verdicts) {
    const one = pairOf(verdict, places)
    const own = rows.find(([first]) => first !== undefined && isAlike(first, one))
    if (own === undefined) rows.push([one])
    else own.push(one)
  }
  const heads: readonly Column[] = [
    { heading: 'set' },
    { heading: 'gets', align: 'right' },
    { heading: 'beside' },
    { heading: 'gets', align: 'right' },
    { heading: 'send', align: 'right' },
    { heading: 'receive', align: 'right' },
    { heading: 'short', align: 'right' },
  ]
  const cells = rows.map((some) => [
    placesText(
      some.map(({ place }) => place),
      places,
    ),
    leastText(some.map(({ mine }) => mine)),
    some[0]?.other ?? '',
    leastText(some.map(({ its }) => its)),
    lostText(some.map(({ send }) => send)),
    lostText(some.map(({ receive }) => receive)),
    `${Math.round(100 * Math.max(...some.map(({ short }) => short)))} %`,
  ])
  return table(heads, cells, page)
}

function pairOf(verdict: Verdict, places: readonly string[]): Pair {
  const { consequences = [], margin } = verdict
  const place = placeAbout(verdict, places)
  const currents = consequences.flatMap(({ figure }) => (figure.id === 'loop.current' ? [figure] : []))
  const isMine = ({ subject }: Figure): boolean => placesNamed([subject], places).some((one) => one === place)
  const mine = currents.find(isMine)
  const its = currents.find((one) => !isMine(one))
  const [other = ''] = its === undefined ? [] : placesNamed([its.subject], places)
  const lost = (id: Figure['id']): number | undefined => {
    const one = consequences.find(({ figure }) => figure.id === id)
    const [now, alone] = [one?.figure.value, one?.mended?.value]
    return now && alone ? 20 * Math.log10(alone / now) : undefined
  }
  return {
    place,
    other,
    ...(mine === undefined ? {} : { mine }),
    ...(its === undefined ? {} : { its }),
    send: lost('speech.send'),
    receive: lost('speech.receive'),
    short: Math.max(0, -(margin ?? 0)),
  }
}

function isAlike(p: Pair, q: Pair): boolean {
  const near = (one: Figure | undefined, two: Figure | undefined): boolean =>
    Math.abs((one?.value ?? 0) - (two?.value ?? 0)) <= ALIKE * Math.abs(one?.value ?? 0)
  const close = (one: number | undefined, two: number | undefined): boolean =>
    one === undefined || two === undefined ? one === two : Math.abs(one - two) < HALF_A_DECIBEL
  return (
    p.other === q.other &&
    near(p.mine, q.mine) &&
    near(p.its, q.its) &&
    close(p.send, q.send) &&
    close(p.receive, q.receive) &&
    Math.abs(p.short - q.short) < ALIKE
  )
}

/** Of several the least. */
function leastText(all: readonly (Figure | undefined)[]): string {
  const figures = all.filter((one) => one !== undefined)
  const [least] = figures.toSorted((p, q) => (p.value ?? 0) - (q.value ?? 0))
  return least === undefined ? '–' : figureText(least)
}

/** `9.4 dB`, of several the most. */
function lostText(all: readonly (number | undefined)[]): string {
  const known = all.filter((one) => one !== undefined)
  return known.length === 0 ? '–' : `${formatNumber(Math.max(...known), 2)} dB`
}

/** What the columns are. */
export const PAIR_LEGEND =
  'both handsets up, of sets that are alike the worst: what each gets; how much less of its send and receive the set passes on than alone; short: how far below the least that is to be left, its transmitter being fed with less; `--whole` has each pair in words'
