/** Curves of speech as rows by frequency, both sides beside each other. Pure. */
import { type Figure, figureText } from '../../../index.ts'

/** One column: a quantity of one side. */
export interface Column {
  readonly heading: string
  /** Text by frequency. */
  readonly cells: ReadonlyMap<number, string>
}

export interface SpeechTable {
  readonly title: string
  readonly frequencies: readonly number[]
  readonly columns: readonly Column[]
}

export interface Sides {
  readonly found: readonly Figure[]
  /** Absent where no move was made: both sides are one. */
  readonly proposed?: readonly Figure[]
}

const QUANTITIES = [
  ['speech.send', 'send', 'mA'],
  ['speech.receive', 'receive', 'mA'],
  ['speech.sidetone', 'sidetone', 'mA'],
  ['speech.impedance', 'impedance', 'Ω'],
] as const
const LOSS = 'speech.return-loss'
const AGAINST = ' against '

/** Tables of currents and impedance, and of return loss; one of each for the set alone and, where there is one, beside another. */
export function speechTables(sides: Sides, wordsOf: (figure: Figure) => string): readonly SpeechTable[] {
  const all = [...sides.found, ...(sides.proposed ?? [])].filter(({ frequency }) => frequency !== undefined)
  const conditions = [...new Set(all.map(wordsOf))]
  return conditions.flatMap((words) => {
    const own = (figures: readonly Figure[]): readonly Figure[] =>
      figures.filter((figure) => figure.frequency !== undefined && wordsOf(figure) === words)
    const columns = (heading: string, picks: (figure: Figure) => boolean): Column[] =>
      sideNames(sides).flatMap(([side, figures]) => {
        const some = own(figures).filter(picks)
        if (some.length === 0) return []
        const cells = new Map(some.map((figure) => [figure.frequency ?? 0, cellText(figure)]))
        return [{ heading: side === '' ? heading : `${heading}, ${side}`, cells }]
      })
    const networks = [
      ...new Set(
        own(all)
          .filter(({ id }) => id === LOSS)
          .map(({ subject }) => subject.slice(subject.indexOf(AGAINST) + AGAINST.length)),
      ),
    ]
    const currents = QUANTITIES.flatMap(([id, heading]) => columns(heading, (one) => one.id === id))
    const losses = networks.flatMap((network) =>
      columns(network, (one) => one.id === LOSS && one.subject.endsWith(AGAINST + network)),
    )
    const frequencies = [...new Set(own(all).map(({ frequency }) => frequency ?? 0))].sort((p, q) => p - q)
    return [
      ...(currents.length === 0
        ? []
        : [{ title: `Currents for 1 V, and impedance: ${words}`, frequencies, columns: currents }]),
      ...(losses.length === 0
        ? []
        : [{ title: `Return loss against: ${words}`, frequencies, columns: losses }]),
    ]
  })
}

function sideNames({ found, proposed }: Sides): readonly (readonly [string, readonly Figure[]])[] {
  return proposed === undefined
    ? [['', found]]
    : [
        ['as found', found],
        ['as proposed', proposed],
      ]
}

/** Below this a current for 1 V is what rounding leaves of nothing, A. */
const LEAST = 1e-9

function cellText(figure: Figure): string {
  const { phasor, id, value } = figure
  if (id === LOSS && value === null && figure.state === 'beyond-range') return '∞'
  if (value !== null && value < LEAST && id !== LOSS) return '0'
  const text = figureText(figure)
  if (id !== 'speech.impedance' || phasor === undefined) return text
  const degrees = Math.round((Math.atan2(phasor.im, phasor.re) * 180) / Math.PI)
  return `${text}, ${degrees < 0 ? '−' : ''}${Math.abs(degrees)}°`
}

/** The tables as text with tabs, for a spreadsheet. */
export function copyText(tables: readonly SpeechTable[]): string {
  return tables
    .map(({ title, frequencies, columns }) =>
      [
        title,
        ['Hz', ...columns.map(({ heading }) => heading)].join('\t'),
        ...frequencies.map((hz) =>
          [String(hz), ...columns.map(({ cells }) => cells.get(hz) ?? '')].join('\t'),
        ),
      ].join('\n'),
    )
    .join('\n\n')
}
