/** Ringing of several sets: a row for each place, in place of one row a figure. */
import type { Figure } from '../figures/figure.ts'
import { ABOUT, figureText, silentBells } from './amounts.ts'
import type { Page } from './paint.ts'
import { type Column, table } from './table.ts'
import { conditionWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Figures of the ringing with the heads of their columns, in their order. */
const RINGING: Readonly<Partial<Record<Figure['id'], string>>> = {
  'ringing.current': 'bell',
  'ringing.voltage': 'across',
  'ringing.power': 'power',
  'ringing.share': 'share',
  'ringing.socket-voltage': 'socket',
  'leakage.ringing': 'direct',
}
const RINGING_SAYS: Readonly<Record<string, string>> = {
  bell: 'ringing current in the bell',
  across: 'the voltage at it',
  power: 'its apparent power',
  share: 'of the ringing current of all bells',
  socket: 'ringing voltage there',
  direct: 'direct current while it rings',
}
const ringingLegend = (heads: readonly string[]): string =>
  heads.map((head) => `${head}: ${RINGING_SAYS[head] ?? head}`).join('; ')

/** Loads by each published definition, with the heads of their columns. */
const LOADS: Readonly<Partial<Record<Figure['id'], string>>> = {
  'ringing.load.four-kilohm-unit': '4 kΩ',
  'ringing.load.unit-ringer': 'unit',
  'ringing.load.type-a': 'A',
  'ringing.load.type-b': 'B',
  'ringing.load.older-european': 'older',
  'ringing.load.sixteen-kilohm': '16 kΩ',
}
const loadsLegend = (): string =>
  'units of 4 kΩ; unit ringers; type A; type B; the older unit; units of 16 kΩ: each by its own definition, never added across; `ringproof list ringing-loads` says where each is from'

/** Fewer places than this are no table of places. */
const LEAST = 2

/** The tables, each ended by an empty line, and the figures that are in none of them. */
export function placeTables(
  figures: readonly Figure[],
  page: Page,
): { readonly tables: readonly string[]; readonly others: readonly Figure[] } {
  const all = [
    pivot(figures, RINGING, 'Ringing by place', ringingLegend, page),
    pivot(figures, LOADS, 'Ringing load by place', loadsLegend, page),
  ]
  const shown = new Set(all.flatMap((one) => one.shown))
  return {
    tables: all.flatMap(({ lines }) => lines),
    others: figures.filter((figure) => !shown.has(figure)),
  }
}

interface Pivot {
  readonly lines: readonly string[]
  readonly shown: readonly Figure[]
}

const placeOf = ({ subject }: Figure): string => subject.split('/')[0] ?? subject

function pivot(
  figures: readonly Figure[],
  heads: Readonly<Partial<Record<Figure['id'], string>>>,
  title: string,
  legend: (heads: readonly string[]) => string,
  page: Page,
): Pivot {
  // of the line as a whole there is one figure and no place
  const mine = figures.filter(
    ({ id, condition, subject }) =>
      heads[id] !== undefined && Object.hasOwn(condition.sets, subject.split('/')[0] ?? ''),
  )
  const places = [...new Set(mine.map(placeOf))]
  if (places.length < LEAST) return { lines: [], shown: [] }
  const ids = (Object.keys(heads) as Figure['id'][]).filter((id) => mine.some((one) => one.id === id))
  const silent = silentBells(mine)
  const isAbout = (id: Figure['id']): boolean =>
    mine.every((one) => one.id !== id || figureText(one).startsWith(ABOUT))
  const columns: readonly Column[] = [
    { heading: 'place' },
    ...ids.map((id): Column => ({ heading: (isAbout(id) ? ABOUT : '') + (heads[id] ?? ''), align: 'right' })),
  ]
  const rows = places.flatMap((place) => {
    const own = mine.filter((one) => placeOf(one) === place)
    const bells = [...new Set(own.flatMap(({ id, subject }) => (id === 'ringing.current' ? [subject] : [])))]
    const subjects = bells.length > 1 ? bells : [bells[0] ?? place]
    return subjects.map((subject, k) => [
      bells.length > 1 ? subject : place,
      ...ids.map((id) => {
        const figure = own.find(
          (one) => one.id === id && (one.subject === subject || (k === 0 && one.subject === place)),
        )
        const text = figure === undefined ? '' : figureText(figure, silent)
        return isAbout(id) ? text.replace(ABOUT, '') : text
      }),
    ])
  })
  const [first] = mine
  const when = first === undefined ? '' : `, ${conditionWords({ line: first.condition.line, sets: {} })}`
  return {
    lines: [
      ...wrap(`${title}${when}`, page.width),
      ...table(columns, rows, page),
      ...hanging('  ', legend(ids.map((id) => heads[id] ?? '')), page.width),
      '',
    ],
    shown: mine,
  }
}
