/** Who stands where on premises, and who rings there and how much. */
import type { CheckAnswer } from '../answer/answer.ts'
import type { StandingPlace, Stands } from '../answer/stands.ts'
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { formatExactly } from '../quantities/format.ts'
import { placeAbout } from './about-place.ts'
import { ABOUT, figureText, silentBells } from './amounts.ts'
import type { Page } from './paint.ts'
import { type Column, table } from './table.ts'
import { hanging } from './wrap.ts'

const HEADS: readonly Column[] = [
  { heading: 'place' },
  { heading: 'set' },
  { heading: 'socket' },
  { heading: 'handset' },
  { heading: 'gets', align: 'right' },
  { heading: 'needs', align: 'right' },
  { heading: 'rings' },
  { heading: 'alone' },
  { heading: 'share', align: 'right' },
  { heading: 'fails', align: 'right' },
]

/** A bell that gets nothing is not about anything. */
const NOTHING = '0 A'

/** Where a row says what its bell gets. */
const GETS = 4

/** Whether a bell rings, in a word. */
const RINGS: Readonly<Record<Verdict['state'], string>> = {
  holds: 'yes',
  marginal: 'just',
  fails: 'no',
  unknown: '?',
}

/** A row for each bell of each set; columns in which nothing stands are left out. */
export function setTable(answer: CheckAnswer, stands: Stands, page: Page): string[] {
  const places = stands.sets.map(({ place }) => place)
  const marked = stands.sets.flatMap((one) => rowsOf(one, answer, places))
  // one mark above a column of which every cell has it
  const gets = marked.map((row) => row[GETS] ?? '').filter((cell) => cell !== '')
  const isAbout = gets.length > 0 && gets.every((cell) => cell.startsWith(ABOUT) || cell === NOTHING)
  const rows = isAbout
    ? marked.map((row) => row.map((cell, at) => (at === GETS ? cell.replace(ABOUT, '') : cell)))
    : marked
  const heads = HEADS.map((one, at) =>
    isAbout && at === GETS ? { ...one, heading: ABOUT + one.heading } : one,
  )
  const some = (columns: readonly number[]): string[] => {
    const filled = columns.filter((at) => at < STANDS || rows.some((row) => (row[at] ?? '') !== ''))
    const chosen = <T>(all: readonly T[]): T[] =>
      filled.flatMap((at) => {
        const one = all[at]
        return one === undefined ? [] : [one]
      })
    return table(chosen(heads), rows.map(chosen), page)
  }
  const all = [...HEADS.keys()]
  const body =
    page.width >= ROOMY
      ? some(all)
      : [...some(all.filter((at) => at <= STANDS)), ...some(all.filter((at) => at === 0 || at > STANDS))]
  return [page.paint.bold('Who stands where, and who rings'), ...body, ...legend(rows, stands, page)]
}

/** The first columns say who stands where; they are never left out. */
const STANDS = 3

/** Pages of fewer columns take the table in two. */
const ROOMY = 76

function rowsOf(one: StandingPlace, answer: CheckAnswer, places: readonly string[]): string[][] {
  const mine = answer.verdicts.filter((verdict) => placeAbout(verdict, places) === one.place)
  const fails = mine.filter(({ state }) => state === 'fails').length
  const handset =
    one.rests === 'on-hook' ? '' : one.rests.replace('off-hook', 'up').replace('on-hook', 'down')
  const head = [
    one.place,
    one.rewire ?? one.set,
    `${one.socket ?? 'none'}${one.reversed ? ', reversed' : ''}`,
  ]
  const bells = bellsOf(one.place, answer)
  const ringing = (bells.length === 0 ? [undefined] : bells).map((bell) => bellCells(bell, one, mine, answer))
  return ringing.map((cells, k) => [
    ...(k === 0 ? [...head, handset] : ['', '', '', '']),
    ...cells,
    k === 0 && fails > 0 ? String(fails) : '',
  ])
}

const isOf = (place: string, { subject }: { readonly subject: string }): boolean =>
  subject === place || subject.startsWith(`${place}/`)

/** Bells of a place by the ids under which the figures of ringing name them. */
function bellsOf(place: string, { figures }: CheckAnswer): readonly string[] {
  const own = figures.filter((figure) => figure.id === 'ringing.current' && isOf(place, figure))
  return [...new Set(own.map(({ subject }) => subject))]
}

function bellCells(
  bell: string | undefined,
  { place }: StandingPlace,
  verdicts: readonly Verdict[],
  { figures }: CheckAnswer,
): string[] {
  const about = (check: string): Verdict | undefined => {
    const all = verdicts.filter((one) => one.check === check)
    return all.find(({ subject }) => subject === bell) ?? (all.length === 1 ? all[0] : undefined)
  }
  const figure = (id: Figure['id']): Figure | undefined =>
    figures.find((one) => one.id === id && (one.subject === bell || (bell === undefined && isOf(place, one))))
  const all = about('bell.rings-with-all')
  const alone = about('bell.rings-alone')
  const gets = all?.figure ?? figure('ringing.current')
  const limit = all?.limit ?? alone?.limit
  const share = figure('ringing.share')?.value
  return [
    gets === undefined || gets === null ? '' : figureText(gets),
    limit === undefined || limit === null ? '' : formatExactly(limit.value, limit.unit),
    ringsWord(all),
    ringsWord(alone),
    share === undefined || share === null
      ? ''
      : silentBells(figures).has(bell ?? '')
        ? '–'
        : `${Math.round(100 * share)} %`,
  ]
}

function ringsWord(verdict: Verdict | undefined): string {
  if (verdict === undefined || (verdict.state === 'unknown' && verdict.reason === 'not-modelled')) return ''
  return RINGS[verdict.state]
}

function legend(rows: readonly (readonly string[])[], { sets }: Stands, page: Page): string[] {
  const words = new Set(rows.flatMap((row) => [row[6], row[7]]))
  const says = [
    ...(sets.every(({ rests }) => rests === 'on-hook') ? ['all handsets down'] : []),
    ...(sets.some(({ rewire }) => rewire !== undefined) ? ['a rewire stands for its set'] : []),
    ...(words.has('just') ? ['just: enough, by less than 5 % of what is needed'] : []),
    ...(words.has('?') ? ['?: not known'] : []),
    ...(rows.some((row) => row[6] !== '') ? ['rings: with everything plugged in; alone: with it alone'] : []),
  ]
  return says.length === 0 ? [] : hanging('  ', says.join('; '), page.width)
}
