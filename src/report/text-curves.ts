/** Speech by frequency: one row a frequency, in place of one row a figure. */
import type { Figure } from '../figures/figure.ts'
import { formatNumber } from '../quantities/format.ts'
import { ABOUT } from './amounts.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { type Column, table } from './table.ts'
import { conditionWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Figures of one place in one condition over frequency. */
interface Curve {
  readonly place: string
  readonly condition: Figure['condition']
  readonly figures: Figure[]
}

/** Ids of currents for 1 V, with the heads of their columns. */
const CURRENTS = [
  ['speech.send', 'send'],
  ['speech.receive', 'receive'],
  ['speech.sidetone', 'sidetone'],
] as const

const IMPEDANCE = 'speech.impedance'
const LOSS = 'speech.return-loss'
const AGAINST = ' against '
const IN_CURVES: ReadonlySet<string> = new Set([...CURRENTS.map(([id]) => id), IMPEDANCE, LOSS])

/** Fewer frequencies than this are no curve, and stay in the table of figures. */
const LEAST = 3

/** Letters that stand for the networks at the heads of their columns. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** The figures that curves show, and all others. */
export function curvesOf(figures: readonly Figure[]): {
  readonly curves: readonly Curve[]
  readonly others: readonly Figure[]
} {
  const groups = new Map<string, Curve>()
  for (const figure of figures) {
    if (figure.frequency === undefined || !IN_CURVES.has(figure.id)) continue
    const place = placeOf(figure)
    const key = JSON.stringify([place, figure.condition])
    const known = groups.get(key) ?? { place, condition: figure.condition, figures: [] }
    known.figures.push(figure)
    groups.set(key, known)
  }
  const curves = [...groups.values()].filter((one) => frequenciesOf(one).length >= LEAST)
  const shown = new Set(curves.flatMap((one) => one.figures))
  return { curves, others: figures.filter((figure) => !shown.has(figure)) }
}

/** `kiosk` of `kiosk/transmitter` and of `kiosk against 600 Ω`. */
function placeOf({ id, subject }: Figure): string {
  const end = subject.indexOf(id === LOSS ? AGAINST : '/')
  return end < 0 ? subject : subject.slice(0, end)
}

function frequenciesOf({ figures }: Curve): readonly number[] {
  return [...new Set(figures.map(({ frequency }) => frequency ?? 0))].sort((p, q) => p - q)
}

function networksOf({ figures }: Curve): readonly string[] {
  const losses = figures.filter(({ id }) => id === LOSS)
  return [...new Set(losses.map(({ subject }) => subject.slice(subject.indexOf(AGAINST) + AGAINST.length)))]
}

/** A page that is narrower than this takes two tables, columns. */
const ROOM = 78

/** The curves of all places, each under a line that says whose and when, and what the columns are. */
export function curveTables(
  curves: readonly Curve[],
  place: string | undefined,
  page: Page,
): readonly string[] {
  if (curves.length === 0) return []
  const networks = [...new Set(curves.flatMap(networksOf))]
  return [
    ...curves.flatMap((curve) => curveTable(curve, networks, place, page)),
    ...legend(curves, page),
    ...goodLines(curves, page),
    ...networks.flatMap((network, k) =>
      hanging(`${LETTERS[k] ?? ''}  `, `return loss, dB, against ${network}`, page.width),
    ),
    '',
  ]
}

/** What the columns of currents and of the impedance are, those that there are. */
function legend(curves: readonly Curve[], page: Page): string[] {
  const currents = CURRENTS.filter(([id]) => curves.some((curve) => has(curve, id))).map(([, word]) => word)
  const parts = [
    ...(currents.length === 0 ? [] : [`${currents.join(', ')}: mA for 1 V`]),
    ...(curves.some((curve) => has(curve, IMPEDANCE)) ? ['Ω, phase: impedance between the line wires'] : []),
  ]
  return parts.length === 0 ? [] : wrap(parts.join('; '), page.width)
}

/** What is good, and what decibels below nothing mean. */
function goodLines(curves: readonly Curve[], page: Page): string[] {
  const currents = curves.some((curve) => has(curve, CURRENTS[0][0]))
  const losses = curves.flatMap(({ figures }) => figures.filter(({ id }) => id === LOSS))
  const parts = [
    ...(currents ? ['more send and receive is better, less sidetone is'] : []),
    ...(losses.length > 0
      ? ['more return loss is better: the nearer the set is to that network; 0 dB is as bad as an open pair']
      : []),
    ...(losses.some(({ value }) => value !== null && value < 0)
      ? [
          'below 0 dB more comes back than arrives at that network, since its reactance and the set’s resonate',
        ]
      : []),
  ]
  return parts.length === 0 ? [] : wrap(`Good: ${parts.join('; ')}.`, page.width)
}

function has({ figures }: Curve, id: Figure['id']): boolean {
  return figures.some((figure) => figure.id === id)
}

function curveTable(
  curve: Curve,
  all: readonly string[],
  place: string | undefined,
  page: Page,
): readonly string[] {
  const own = networksOf(curve)
  const networks = all.filter((network) => own.includes(network))
  const frequencies = frequenciesOf(curve)
  const at = (id: Figure['id'], frequency: number, network?: string): Figure | undefined =>
    curve.figures.find(
      (figure) =>
        figure.id === id &&
        figure.frequency === frequency &&
        (network === undefined || figure.subject.endsWith(AGAINST + network)),
    )
  const first: readonly Column[] = [right('Hz')]
  const currents = CURRENTS.filter(([id]) => has(curve, id))
  const impedance = has(curve, IMPEDANCE)
  const speech = [...currents.map(([, word]) => word), ...(impedance ? ['Ω', 'phase'] : [])].map(right)
  const losses: readonly Column[] = networks.map((network) => right(LETTERS[all.indexOf(network)] ?? ''))
  const speechCells = (frequency: number): string[] => [
    ...currents.map(([id]) => thousandths(at(id, frequency))),
    ...(impedance ? [sizeText(at(IMPEDANCE, frequency)), phaseText(at(IMPEDANCE, frequency))] : []),
  ]
  const lossCells = (frequency: number): string[] =>
    networks.map((network) => decibelText(at(LOSS, frequency, network)))
  const rows = (...cells: readonly ((frequency: number) => string[])[]): string[][] =>
    frequencies.map((frequency) => [String(frequency), ...cells.flatMap((one) => one(frequency))])
  const isAbout = curve.figures.some(({ approximate }) => approximate !== undefined)
  const wide = page.width >= ROOM || networks.length === 0 || speech.length === 0
  const whose = place === curve.place ? '' : `${shortId(curve.place, place)}: `
  return [
    ...wrap(
      `${isAbout ? ABOUT : ''}Speech by frequency, ${whose}${conditionWords(curve.condition)}`,
      page.width,
    ),
    '',
    ...(wide
      ? table([...first, ...speech, ...losses], rows(speechCells, lossCells), page)
      : [
          ...table([...first, ...speech], rows(speechCells), page),
          '',
          ...table([...first, ...losses], rows(lossCells), page),
        ]),
    '',
  ]
}

function right(heading: string): Column {
  return { heading, align: 'right' }
}

/** Words for what has no number, short enough for a column. */
function noNumber(figure: Figure | undefined): string {
  if (figure === undefined) return ''
  return figure.state === 'open' ? 'open' : '–'
}

/** Below this many mA for 1 V a current is what rounding leaves of nothing. */
const LEAST_CURRENT = 1e-6

function thousandths(figure: Figure | undefined): string {
  if (figure === undefined || figure.value === null) return noNumber(figure)
  const value = figure.value * 1000
  return value < LEAST_CURRENT ? '0' : formatNumber(value, 3)
}

function sizeText(figure: Figure | undefined): string {
  if (figure === undefined || figure.value === null) return noNumber(figure)
  return formatNumber(figure.value, 3)
}

function phaseText(figure: Figure | undefined): string {
  const phasor = figure?.phasor
  if (phasor === undefined) return ''
  const degrees = Math.round((Math.atan2(phasor.im, phasor.re) * 180) / Math.PI)
  return `${degrees < 0 ? '−' : ''}${Math.abs(degrees)}°`
}

/** Decibels to a tenth; `∞` where nothing returns. */
function decibelText(figure: Figure | undefined): string {
  if (figure === undefined) return ''
  if (figure.value === null) return figure.state === 'beyond-range' ? '∞' : noNumber(figure)
  const text = Math.abs(figure.value).toFixed(1)
  return figure.value < 0 && Number(text) > 0 ? `−${text}` : text
}
